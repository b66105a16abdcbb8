import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Tests of the built site: run after a build, on the folder dist/. */
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/site/**/*.test.ts'],
    // Two of the files build anew, and the others should not find dist/ in the middle of that.
    fileParallelism: false,
    // Pages that are looked at side by side; more of them would only wait for each other.
    maxConcurrency: 3,
    // Nothing is judged by its time; a busy machine gets the time it needs.
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
