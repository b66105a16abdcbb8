/** Files whose tests build the site anew: the others must not find dist/ in the middle of that. */
export const REBUILDING = ['tests/built/repeat.test.ts', 'tests/built/failed-build.test.ts'];
