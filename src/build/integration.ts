import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { AstroIntegration } from 'astro';
import { contentFolder, loadLedger } from '../ledger/load-ledger.ts';
import { tellWarnings } from '../site/warnings/tell-warnings.ts';
import { ensureAddresses } from './address-record.ts';
import { sourceFolder } from './astro-root.ts';
import { releaseBuildLock, takeBuildLock } from './build-lock.ts';
import { handOver } from './content-source.ts';
import { deskRoutes, deskScript } from './dev/desk-routes.ts';
import { serveLive } from './dev/serve-live.ts';
import { tryEditorSchemas } from './editor-schemas.ts';
import { finishSite } from './finish-site.ts';
import { keeping, keptPages } from './kept-pages.ts';
import { NOTES } from './notes-loader.ts';
import { ensureWritable, outputFault } from './output-fault.ts';
import { ensurePhotos } from './photos/photo-problems.ts';
import { ASSETS, GROWING, KEPT, OWN, publishedPath } from './places.ts';
import { programIntegration } from './program/program-integration.ts';
import { programOrder } from './program/program-order.ts';
import { builtPath } from './serve/built-path.ts';

/**
 * Checks the content before Astro renders anything, builds into a folder of its own, indexes it for search, writes
 * the data files meanwhile, and only then lets it take the place of the last good output. A build that
 * fails leaves that one as it was. A build that finds another at work is refused. Pages of which nothing has changed
 * are taken from the build before; `LEDGER_FRESH=1` leaves them aside.
 */
export function panelLedger(): AstroIntegration {
  const order = programOrder();
  return order ? programIntegration(order) : guideIntegration();
}

function guideIntegration(): AstroIntegration {
  let target: string;
  let own: string;
  let base = '/';
  let pages: ReturnType<typeof keptPages>;
  return {
    name: 'panel-ledger',
    hooks: {
      'astro:config:setup': ({ command, config, updateConfig, injectRoute, injectScript }) => {
        target = fileURLToPath(config.outDir);
        tryEditorSchemas(contentFolder());
        if (command === 'dev') {
          for (const it of deskRoutes(sourceFolder())) injectRoute(it);
          injectScript('page', deskScript(sourceFolder()));
        }
        // While the tester writes, the guide lies at the top; what was built is looked at where it will lie.
        if (command === 'preview') updateConfig({ base: builtPath(target) });
        if (command !== 'build') return;
        handOver();
        own = resolve(OWN);
        ensureWritable(target, own);
        takeBuildLock(own);
        const [outDir, cacheDir] = [GROWING, KEPT].map((it) => pathToFileURL(`${resolve(it)}/`)) as [URL, URL];
        // What a build that was stopped has left.
        rmSync(outDir, { recursive: true, force: true });
        base = publishedPath();
        pages = keptPages(resolve(KEPT));
        updateConfig({ base, outDir, cacheDir, build: { assets: ASSETS } });
      },
      'astro:server:setup': ({ server, refreshContent }) => {
        serveLive(server, async () => refreshContent?.({ loaders: [NOTES] }));
      },
      'astro:build:start': async ({ setPrerenderer }) => {
        const loaded = loadLedger();
        ensureAddresses(loaded, contentFolder());
        tellWarnings(loaded);
        await ensurePhotos(loaded);
        pages.open(loaded, Boolean(process.env.LEDGER_FRESH));
        setPrerenderer(keeping(pages, base));
      },
      'astro:build:done': async ({ dir }) => {
        try {
          await finishSite(loadLedger(), pages, { grown: fileURLToPath(dir), target, base });
        } catch (error) {
          const fault = outputFault(error, [target, own]);
          if (!fault) throw error;
          // Thrown from here it would come with lines of Astro's; there is nothing left to be done.
          console.error(fault.message);
          process.exit(1);
        }
        releaseBuildLock(own);
      },
    },
  };
}
