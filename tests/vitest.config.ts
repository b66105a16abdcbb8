import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { longestFirst } from './support/longest-first.ts';

/** Tests of what is a function of its arguments alone. */
const STATELESS = ['tests/measure/**/*.test.ts', 'tests/words/**/*.test.ts', 'tests/references/**/*.test.ts'];
/** The built site is tested after a build, by its own step of `npm test`. */
const NOT_HERE = ['tests/built/**', 'node_modules/**'];

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    // Every processor; left to itself vitest spares one, which is half of a small machine.
    maxWorkers: availableParallelism(),
    sequence: {
      sequencer: longestFirst([
        'build/two-builds.test.ts',
        'rules/one-slip.test.ts',
        'ledger/coverage.test.ts',
        'beam/coverage.test.ts',
        'ledger/build-ledger.test.ts',
        'rules/field-faults.test.ts',
      ]),
    },
    globalSetup: 'tests/support/lay-demo.ts',
    // Calculations and words have no state, so their files share a worker; a fresh one each is a fifth of their time.
    projects: [
      { extends: true, test: { name: 'measure', isolate: false, include: STATELESS } },
      { extends: true, test: { name: 'rest', include: ['tests/**/*.test.ts'], exclude: [...NOT_HERE, ...STATELESS] } },
    ],
    // Nothing is judged by its time; a slow machine gets the time it needs.
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
