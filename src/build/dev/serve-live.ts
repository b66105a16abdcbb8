import { join } from 'node:path';
import type { ViteDevServer } from 'vite';
import { liveLedger } from '../../ledger/load-ledger.ts';
import { publishedFiles } from '../../site/export/published-files.ts';
import { sourceFolder } from '../astro-root.ts';
import { serveBenchFiles } from '../bench-files/serve-bench-files.ts';
import { cardAt } from '../cards/card-store.ts';
import { areRendered } from '../notes-loader.ts';
import { photoAt } from '../photos/photo-store.ts';
import { servePhotos } from '../photos/serve-photos.ts';
import { serveFiles } from '../serve-files.ts';
import { sourceStamp } from '../source-stamp.ts';
import { liveContent } from './live-content.ts';
import { serveProblems } from './serve-problems.ts';

/**
 * What the development server does besides making pages: it follows the content, tells of problems, and answers for
 * photos, cards and data files.
 *
 * @param refreshNotes has Astro render notes that have changed
 */
export function serveLive(server: ViteDevServer, refreshNotes: () => Promise<void>): void {
  const { hot } = server.environments.client;
  // Code that is changed while the server runs comes with a reload of the page; data goes by the content then.
  const code = sourceStamp();
  const state = liveContent({
    watcher: server.watcher,
    send: (message) => hot.send(message),
    refreshNotes,
    areRendered,
    print: (text) => console.warn(text),
  });
  const hasLedger = () => {
    if (state().problems.length === 0) return true;
    try {
      return Boolean(liveLedger());
    } catch {
      return false;
    }
  };
  server.middlewares.use(
    serveProblems({
      state,
      hasLedger,
      withScripts: (address, page) => server.transformIndexHtml(address, page),
      script: addressOf('site/desk/browser/desk-bar.ts'),
      styles: ['styles/tokens.css', 'styles/base.css', 'site/desk/browser/desk-bar.css'].map(
        (it) => `${addressOf(it)}?direct`,
      ),
    }),
  );
  server.middlewares.use(servePhotos((address) => photoAt(liveLedger().ledger, address)));
  server.middlewares.use(serveBenchFiles(() => liveLedger().ledger));
  server.middlewares.use(servePhotos((address) => cardAt(liveLedger().ledger, address), '/cards/'));
  server.middlewares.use(serveFiles(() => publishedFiles(liveLedger(), { code, isTester: true })));
}

/** Where the development server has a file of the code that lies in no page's own folder. */
function addressOf(path: string): string {
  return `/@fs/${join(sourceFolder(), path).replaceAll('\\', '/').replace(/^\//, '')}`;
}
