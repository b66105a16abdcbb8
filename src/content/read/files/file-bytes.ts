import { closeSync, fstatSync, openSync, readSync } from 'node:fs';

/** Bytes that are asked for piece by piece. */
export interface Bytes {
  size: number;
  /** From a place on; fewer where they end before. Good until the next are asked for. */
  read(from: number, length: number): Uint8Array;
}

/** Opens a file for as long as something reads in it: one piece of it is in memory at a time. */
export function withBytes<Result>(path: string, use: (bytes: Bytes) => Result): Result {
  const file = openSync(path, 'r');
  let piece = Buffer.alloc(0);
  try {
    return use({
      size: fstatSync(file).size,
      read(from, length) {
        if (piece.length < length) piece = Buffer.allocUnsafeSlow(length);
        return piece.subarray(0, readSync(file, piece, 0, length, from));
      },
    });
  } finally {
    closeSync(file);
  }
}
