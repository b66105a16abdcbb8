/** Files whose tests build the site anew: the others must not find dist/ in the middle of that. */
export const REBUILDING = ['tests/site/repeat.test.ts', 'tests/site/failed-build.test.ts'];
