import { defineConfig } from 'vitest/config';
import { REBUILDING } from './rebuilding.ts';
import site from './vitest.config.ts';

/** Tests that build the site anew, one file after the other, while nobody else looks at dist/. */
export default defineConfig({
  ...site,
  test: { ...site.test, include: REBUILDING, exclude: ['node_modules/**'], fileParallelism: false },
});
