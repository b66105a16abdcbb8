import { createReadStream } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname } from 'node:path';
import type { Ledger } from '../../ledger/ledger.ts';
import { closeFiles } from '../../site/files/close-plots.ts';
import { wallPictures } from './wall-pictures.ts';
import { downloads } from './write-bench-files.ts';

/** Files that a browser shows by itself; of all others it is told nothing, and keeps them. */
const TYPES: Readonly<Record<string, string>> = {
  '.csv': 'text/csv; charset=utf-8',
  '.jpeg': 'image/jpeg',
  '.jpg': 'image/jpeg',
  '.json': 'application/json',
  '.pdf': 'application/pdf',
  '.png': 'image/png',
  '.txt': 'text/plain; charset=utf-8',
  '.wav': 'audio/wav',
};

/** Answers for files from the bench while the tester writes; other addresses are left to the next in line. */
export function serveBenchFiles(ledger: () => Ledger) {
  return (request: IncomingMessage, response: ServerResponse, next: (error?: unknown) => void): void => {
    const address = (request.url ?? '').replace(/[?#].*/s, '');
    if (!/^\/panels\/[^/]+\/files\/(?:(?:wall|plots)\/)?[^/]+$/.test(address)) {
      next();
      return;
    }
    let path: string | undefined;
    let made: Uint8Array | string | undefined;
    try {
      made = madeAt(ledger(), address);
      path = downloads(ledger()).find((it) => it.address === address)?.path;
    } catch {
      // A panel's page tells of problems itself.
    }
    if (made !== undefined) {
      response.setHeader('content-type', TYPES[extname(address)] ?? '');
      response.end(made);
      return;
    }
    if (path === undefined) {
      next();
      return;
    }
    response.setHeader('content-type', TYPES[extname(path).toLowerCase()] ?? 'application/octet-stream');
    createReadStream(path).on('error', next).pipe(response);
  };
}

/** What the build makes of files: pictures of walls, and the data of plots. */
function madeAt(ledger: Ledger, address: string): Uint8Array | string | undefined {
  const picture = wallPictures(ledger).find((it) => it.address === address);
  if (picture) return picture.bytes();
  const plot = [...ledger.panels.values()].flatMap(closeFiles).find((it) => it.address === address);
  return plot && JSON.stringify(plot.plot());
}
