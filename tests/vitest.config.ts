import { globSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { longestFirst } from './support/longest-first.ts';
import { NODE_LOADS } from './support/node-loads.ts';
import { ROOMY } from './support/roomy.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
/** The built site is tested after a build, by its own step of `npm test`. */
const NOT_HERE = ['tests/built/**', 'node_modules/**'];
/** Files that put something in a module's place, which others have loaded already: each needs a worker of its own. */
const ALONE = globSync('tests/**/*.test.ts', { cwd: ROOT, exclude: NOT_HERE }).filter((it) =>
  /\bvi\.(?:mock|doMock)\(/.test(readFileSync(join(ROOT, it), 'utf8')),
);

export default defineConfig({
  root: ROOT,
  test: {
    // Every processor; left to itself vitest spares one, which is half of a small machine.
    maxWorkers: availableParallelism(),
    execArgv: [...ROOMY],
    sequence: {
      sequencer: longestFirst([
        'build/package.test.ts',
        'measure/beam/coverage.test.ts',
        'rules/one-slip.test.ts',
        'ledger/demo-ledger.test.ts',
        'cli/cli.test.ts',
        'beam/estimate.test.ts',
        'build/kept-pieces.test.ts',
        'templates/new-files.test.ts',
        'ledger/optics-store.test.ts',
        'exposure/infrared-simulation.test.ts',
      ]),
    },
    globalSetup: 'tests/support/lay-demo.ts',
    // What a test puts into the environment is gone before the next one, whichever file that is in.
    unstubEnvs: true,
    unstubGlobals: true,
    // All others share their workers: to load the same modules again for each file was a third of the run.
    projects: [
      {
        extends: true,
        test: {
          name: 'shared',
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: [...NOT_HERE, ...ALONE],
          experimental: NODE_LOADS,
        },
      },
      // Last of all: between the others they would take the place of a worker, and the next one loads everything again.
      { extends: true, test: { name: 'alone', include: ALONE, sequence: { groupOrder: 1 } } },
    ],
    // Nothing is judged by its time; a slow machine gets the time it needs.
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
