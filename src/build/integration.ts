import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { AstroIntegration } from 'astro';
import { ContentError } from '../content/read/problem-list.ts';
import { contentFolder, loadLedger } from '../ledger/load-ledger.ts';
import { publishedFiles } from '../site/export/published-files.ts';
import { sitePath } from '../site/shared/site-address.ts';
import { tellWarnings } from '../site/warnings/tell-warnings.ts';
import { ensureAddresses } from './address-record.ts';
import { sourceFolder } from './astro-root.ts';
import { writeBenchFiles } from './bench-files/write-bench-files.ts';
import { writeBenchWorker } from './bench-worker-file.ts';
import { releaseBuildLock, takeBuildLock } from './build-lock.ts';
import { writeCards } from './cards/card-store.ts';
import { handOver } from './content-source.ts';
import { deskRoutes, deskScript } from './dev/desk-routes.ts';
import { serveLive } from './dev/serve-live.ts';
import { tryEditorSchemas } from './editor-schemas.ts';
import { keptPages } from './kept-pages.ts';
import { NOTES } from './notes-loader.ts';
import { ensureWritable, outputFault } from './output-fault.ts';
import { ensurePhotos } from './photos/photo-problems.ts';
import { writePhotos } from './photos/photo-store.ts';
import { tellStage } from './progress.ts';
import { replaceFolder } from './replace-folder.ts';
import { indexPages } from './search-index.ts';
import { builtPath } from './serve/built-path.ts';
import { prefixPages } from './serve/prefix-pages.ts';
import { sourceStamp } from './source-stamp.ts';
import { writeFiles } from './write-files.ts';

/** What builds keep to themselves; one at a time has it. */
const OWN = '.build';

/** Where a build grows before it takes the place of `dist/`. */
const GROWING = `${OWN}/site`;

/** What stays from build to build; under the same lock. */
const KEPT = `${OWN}/kept`;

/**
 * Checks the content before Astro renders anything, builds into a folder of its own, indexes it for search, writes
 * the data files meanwhile, and only then lets it take the place of the last good output. A build that
 * fails leaves that one as it was. A build that finds another at work is refused. Pages of which nothing has changed
 * are taken from the build before; `LEDGER_FRESH=1` leaves them aside.
 */
export function panelLedger(): AstroIntegration {
  let target: string;
  let own: string;
  let base = '/';
  let assets: string;
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
        assets = config.build.assets;
        pages = keptPages(fileURLToPath(cacheDir), base);
        pages.open(Boolean(process.env.LEDGER_FRESH));
        updateConfig({ base, outDir, cacheDir, experimental: { incrementalBuild: true } });
      },
      'astro:server:setup': ({ server, refreshContent }) => {
        serveLive(server, async () => refreshContent?.({ loaders: [NOTES] }));
      },
      'astro:build:start': async ({ setPrerenderer }) => {
        const loaded = loadLedger();
        ensureAddresses(loaded, contentFolder());
        tellWarnings(loaded);
        await ensurePhotos(loaded);
        pages.name(loaded);
        setPrerenderer(pages.watch);
      },
      'astro:build:generated': () => {
        pages.close(loadLedger());
      },
      'astro:build:done': async ({ dir }) => {
        const grown = fileURLToPath(dir);
        try {
          tellStage('Search index and data files', true);
          const indexed = indexPages(grown);
          try {
            // The indexer is a process of its own, and reads none of these.
            await writeFiles(publishedFiles(loadLedger(), { code: sourceStamp(), isTester: false }), grown);
            await writePhotos(loadLedger().ledger, grown);
            await writeBenchFiles(loadLedger().ledger, grown);
            await writeCards(loadLedger().ledger, grown);
          } finally {
            await indexed;
          }
          writeBenchWorker(grown);
          await prefixPages(grown, base, assets);
          tellStage('Putting the guide in its place', true);
          await replaceFolder(grown, target);
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

/** Where the guide lies on its host; its top where the content has problems, which the build tells of next. */
function publishedPath(): string {
  try {
    return sitePath(loadLedger().ledger.guide.site);
  } catch (error) {
    if (error instanceof ContentError) return '/';
    throw error;
  }
}
