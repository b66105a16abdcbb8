import { readFile } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.avif': 'image/avif',
  '.webp': 'image/webp',
  '.jpg': 'image/jpeg',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
};

/**
 * Answers for the pictures while the tester writes, each made when it is first asked for; other addresses are left to
 * the next in line.
 *
 * @param fileOf the file of a picture's address, where there is one; what it throws becomes the answer's error
 * @param folder that the pictures have addresses in
 */
export function servePhotos(fileOf: (address: string) => Promise<string | undefined>, folder = '/photos/') {
  return async (request: IncomingMessage, response: ServerResponse, next: (error?: unknown) => void): Promise<void> => {
    const address = (request.url ?? '').replace(/[?#].*/s, '');
    const type = TYPES[extname(address)];
    if (!address.startsWith(folder) || !type) return next();
    try {
      const file = await fileOf(address);
      if (!file) return next();
      response.setHeader('content-type', type);
      response.end(await readFile(file));
    } catch (error) {
      next(error);
    }
  };
}
