import type { IncomingMessage, ServerResponse } from 'node:http';
import type { PublishedFile } from '../site/export/published-file.ts';

/**
 * Answers for the files that a build writes itself while the tester writes, from the content as it stands at each request; other addresses
 * are left to the next in line.
 *
 * @param files of the guide as it is now; what it throws becomes the answer's error
 */
export function serveFiles(files: () => readonly PublishedFile[]) {
  return (request: IncomingMessage, response: ServerResponse, next: (error?: unknown) => void): void => {
    const path = (request.url ?? '').replace(/[?#].*/s, '').slice(1);
    try {
      const file = isOurs(path) && files().find((it) => it.path === path || it.path === `${path}index.html`);
      if (file) {
        response.setHeader('content-type', `${file.type}; charset=utf-8`);
        for (const piece of file.text()) response.write(String(piece));
        response.end();
      } else next();
    } catch (error) {
      // A panel's page tells of problems itself.
      next(path.startsWith('data/') ? error : undefined);
    }
  };
}

/** Whether the ledger is to be asked at all: only under these addresses is there anything of it besides Astro's pages. */
const isOurs = (path: string) =>
  /^(data\/|cards\/|panels\/[^/]+\/|(moved\.js|changes\.xml|sitemap\.xml|robots\.txt)$)/.test(path);
