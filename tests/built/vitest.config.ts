import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { longestFirst } from '../support/longest-first.ts';
import { NODE_LOADS } from '../support/node-loads.ts';
import { ROOMY } from '../support/roomy.ts';

/** Tests of the built site: the demonstration is built first. */
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    // Every processor; left to itself vitest spares one, which is half of a small machine.
    maxWorkers: availableParallelism(),
    execArgv: [...ROOMY],
    include: ['tests/built/**/*.test.ts'],
    sequence: {
      sequencer: longestFirst([
        'built/builds.test.ts',
        'built/accessibility.test.ts',
        'built/sub-path.test.ts',
        'built/journeys.test.ts',
        'built/paper.test.ts',
        'built/search.test.ts',
        'built/compare.test.ts',
        'built/bench-pad.test.ts',
        'built/guide-tools.test.ts',
        'built/reading.test.ts',
      ]),
    },
    globalSetup: 'tests/built/build-demo.ts',
    // They only read the site, which is parsed once a worker.
    isolate: false,
    experimental: NODE_LOADS,
    // Pages that are looked at side by side; more of them would only wait for each other.
    maxConcurrency: 3,
    // Nothing is judged by its time; a busy machine gets the time it needs.
    testTimeout: 900_000,
    hookTimeout: 900_000,
    expect: { poll: { timeout: 60_000 } },
  },
});
