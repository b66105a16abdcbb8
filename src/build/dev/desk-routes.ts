import { join } from 'node:path';

/** The tester's own pages, by their addresses: the development server has them, a build does not. */
export const DESK_PAGES = { '/desk/changes/': 'changes.astro', '/desk/stale/': 'stale.astro' } as const;

/**
 * Routes of the tester's pages.
 *
 * @param source the folder of the code that Astro makes pages from
 */
export function deskRoutes(source: string): Array<{ pattern: string; entrypoint: string }> {
  // Astro leaves files below a name with an underscore alone, unless they are named to it.
  return Object.entries(DESK_PAGES).map(([pattern, file]) => ({
    pattern,
    entrypoint: join(source, 'pages', '_desk', file),
  }));
}

/** What every page runs while the tester writes: a bar that leads to these pages, and tells of problems. */
export function deskScript(source: string): string {
  return ['desk-bar.css', 'desk-bar.ts']
    .map((it) => `import ${JSON.stringify(join(source, 'site', 'desk', 'browser', it))};`)
    .join('\n');
}
