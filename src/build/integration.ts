import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { loadLedger } from '../ledger/load-ledger.ts';
import { replaceFolder } from './replace-folder.ts';
import { indexPages } from './search-index.ts';

/** Where a build grows before it takes the place of `dist/`. */
const GROWING = '.build/site/';

/**
 * Checks the content before Astro renders anything, builds into a folder of its own, indexes it for search and
 * only then lets it take the place of the last good output. A build that fails leaves that one as it was.
 */
export function panelLedger(): AstroIntegration {
  let target: string;
  return {
    name: 'panel-ledger',
    hooks: {
      'astro:config:setup': ({ command, config, updateConfig }) => {
        target = fileURLToPath(config.outDir);
        if (command === 'build') updateConfig({ outDir: new URL(GROWING, config.root) });
      },
      'astro:build:start': () => {
        loadLedger();
      },
      'astro:build:done': async ({ dir, logger }) => {
        const grown = fileURLToPath(dir);
        const pages = await indexPages(grown);
        logger.info(`${pages} pages are searchable`);
        replaceFolder(grown, target);
      },
    },
  };
}
