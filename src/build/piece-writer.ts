import { writeFileSync } from 'node:fs';

/** Bytes that go to the disk at one time: a call for each of a panel's small pieces would take longer. */
const AT_ONCE = 1 << 20;

/** Bytes of UTF-8 that a letter, as texts count them, has at most. */
const MOST_EACH = 3;

/** Where pieces are held until they go to the disk; for one file after another. */
export const holder = (): Buffer => Buffer.allocUnsafe(AT_ONCE);

/**
 * Puts pieces one after another into a file that is open, of which little is held at any time.
 *
 * @param held by a `holder`
 */
export function pieceWriter(file: number, held: Buffer) {
  let [filled, written] = [0, 0];

  function flush(): void {
    writeFileSync(file, held.subarray(0, filled));
    written += filled;
    filled = 0;
  }

  return {
    /** How many bytes there are before the next piece. */
    at: () => written + filled,

    add(piece: string | Uint8Array): void {
      const most = typeof piece === 'string' ? MOST_EACH * piece.length : piece.length;
      if (most > AT_ONCE - filled) flush();
      if (most > AT_ONCE) {
        const bytes = Buffer.from(piece);
        writeFileSync(file, bytes);
        written += bytes.length;
      } else if (typeof piece === 'string') filled += held.write(piece, filled);
      else {
        held.set(piece, filled);
        filled += piece.length;
      }
    },

    /** When there are no more. */
    end: flush,
  };
}
export type PieceWriter = ReturnType<typeof pieceWriter>;
