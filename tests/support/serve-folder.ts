import { readFile, stat } from 'node:fs/promises';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';

/** A folder that is being served. */
export interface ServedFolder {
  /** `http://127.0.0.1:40123`, without a slash at its end. */
  origin: string;
  close(): Promise<void>;
}

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

/**
 * Files that are named by their hash may be kept, as the guide's recipes have hosts say: a window fetches and compiles the
 * same styles and scripts once for all pages, which is a third of what loading them takes.
 */
const HASHED = '/_astro/';
const KEPT = { 'cache-control': 'public, max-age=31536000, immutable' };

/**
 * Serves a folder as a plain static host does: a folder's `index.html` at its address, `404.html` for what is not
 * there. Listens on this machine alone, on a port that is free.
 *
 * @param extra pages that are not in the folder, by their path
 * @param isCompressed texts go out by gzip
 */
export async function serveFolder(
  folder: string,
  extra: Readonly<Record<string, string>> = {},
  { isCompressed = false } = {},
): Promise<ServedFolder> {
  const server = createServer((request, response) => {
    answer(request.url ?? '/', response).catch((error) => response.writeHead(500).end(String(error)));
  });

  async function answer(url: string, response: ServerResponse): Promise<void> {
    const path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
    const page = extra[path];
    if (page !== undefined) {
      response.writeHead(200, { 'content-type': TYPES['.html'] }).end(page);
      return;
    }
    // Joined to "/" first, so that no ".." leads out of the folder.
    const file = join(folder, normalize(join('/', path)), path.endsWith('/') ? 'index.html' : '');
    const found = await stat(file).then(
      (it) => it.isFile(),
      () => false,
    );
    const body = await readFile(found ? file : join(folder, '404.html'));
    const type = found ? (TYPES[extname(file)] ?? 'application/octet-stream') : TYPES['.html'];
    const isText = isCompressed && !type?.startsWith('font') && !type?.startsWith('application/octet');
    const encoding = isText ? { 'content-encoding': 'gzip' } : {};
    const keeping = found && path.includes(HASHED) ? KEPT : {};
    const headers = { 'content-type': type, ...encoding, ...keeping };
    response.writeHead(found ? 200 : 404, headers).end(isText ? gzipSync(body) : body);
  }

  await new Promise<void>((resolve, reject) => {
    server.once('error', reject).listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () =>
      new Promise((resolve, reject) => {
        server.close((error) => (error ? reject(error) : resolve()));
        server.closeAllConnections();
      }),
  };
}
