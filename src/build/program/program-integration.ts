import { cpSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { AstroIntegration } from 'astro';
import { handOver } from '../content-source.ts';
import { ASSETS } from '../places.ts';
import { PARTS, type PagesOfAstro } from './kept-programs.ts';
import type { ProgramOrder } from './program-order.ts';

/** Where Astro puts the program that renders pages, below the output; it goes when they are written. */
const SERVER = '.prerender';

/** Has Astro bundle everything and render nothing: the program that renders pages is what is wanted. */
export function programIntegration({ draft, base }: ProgramOrder): AstroIntegration {
  let pages: PagesOfAstro;
  return {
    name: 'panel-ledger',
    hooks: {
      'astro:config:setup': ({ updateConfig }) => {
        handOver();
        const [outDir, cacheDir] = [PARTS.assets, 'astro'].map((it) => pathToFileURL(`${join(draft, it)}/`));
        updateConfig({ base, outDir, cacheDir, build: { assets: ASSETS } } as Parameters<typeof updateConfig>[0]);
      },
      'astro:build:start': ({ setPrerenderer }) => {
        setPrerenderer({
          name: 'none',
          getStaticPaths: async () => [],
          render: () => Promise.reject(new Error('no page was asked for')),
        });
      },
      'astro:build:setup': (setup) => {
        pages = setup.pages;
      },
      'astro:build:generated': ({ dir }) => {
        cpSync(join(fileURLToPath(dir), SERVER), join(draft, PARTS.server), { recursive: true });
        const styles = [...pages].map(([page, { styles }]) => [page, { styles }] as const);
        writeFileSync(join(draft, PARTS.styles), JSON.stringify(styles));
      },
    },
  };
}
