import { hash } from 'node:crypto';
import { readFileSync, type Stats } from 'node:fs';
import { isPanelPiece, type PanelPiece, type Piece } from '../site/export/panel-piece.ts';
import type { PlaceLists, SharedPlaces, UsedPlaces } from '../site/export/shared-places.ts';
import { noteReads } from '../site/shared/page-reads.ts';
import { type KeptNames, type KeptReads, readsOf } from './kept-names.ts';
import { isAsWritten, openStore, type Written, written } from './kept-store.ts';
import type { PieceWriter } from './piece-writer.ts';

/** Where a panel's piece stands in its file, in bytes. */
interface KeptPiece {
  name: string;
  reads: KeptReads;
  from: number;
  to: number;
  used?: UsedPlaces;
}

/** A long file of the build before. */
interface KeptFile extends Written {
  pieces: Record<string, KeptPiece>;
  /** What its pieces refer to by places. */
  lists?: PlaceLists | undefined;
}

/** What comes into a file as a panel's piece, and what is kept of it. */
interface Put {
  content: string | Uint8Array;
  kept?: Omit<KeptPiece, 'from' | 'to'>;
}

/** A long file that is being written. */
export interface LongFile {
  /** Where it is to be written. */
  file: string;
  /** Writes a piece; a panel's comes from the file before, where all that it rests on is as it was. */
  put(piece: Piece, writer: PieceWriter): void;
  /** It has been written. */
  end(stats: Pick<Stats, 'mtimeMs' | 'size'>): void;
}

/**
 * Panels' pieces of the long data files, which are kept as these files from one build to the next, each under a name that
 * follows from all that it rests on, as pages are (`kept-pages.ts`).
 *
 * @param isFresh what was kept is left aside
 */
export function keptPieces(cache: string, names: KeptNames, isFresh: boolean) {
  const store = openStore<KeptFile>(cache, 'pieces', isFresh);
  const now = new Map<string, KeptFile>();

  return {
    /** @param path of the file in the guide */
    begin(path: string): LongFile {
      const name = nameIn(path);
      const file = store.fileOf(name);
      const earlier = earlierFile(store.before[name], file);
      const pieces: Record<string, KeptPiece> = {};
      let places: SharedPlaces | undefined;
      const marks = new Map<string, string>();

      /** What tells pieces of this file, made with this, from all others. */
      function whatOf(given: string): string {
        const what = marks.get(given) ?? `${path} ${hash('sha256', given, 'base64url')}`;
        marks.set(given, what);
        return what;
      }

      function taken({ panel, given, places }: PanelPiece): Put | undefined {
        const kept = earlier?.pieces[panel];
        if (!kept || names.nameOf(whatOf(given), panel, kept.reads) !== kept.name) return undefined;
        if (places && !places.areKept(kept.used ?? [], earlier.lists ?? [])) return undefined;
        return { content: earlier.bytes.subarray(kept.from, kept.to), kept };
      }

      /** Made, with what is noted of it. Without a name it is made the next time too. */
      function made(piece: PanelPiece): Put {
        const { panel, given, places } = piece;
        const { result, reads: noted } = noteReads(() =>
          places ? places.noting(() => String(piece)) : { text: String(piece) },
        );
        const reads = readsOf(noted, panel);
        const name = names.nameOf(whatOf(given), panel, reads);
        const { text, ...used } = result;
        return name === undefined ? { content: text } : { content: text, kept: { name, reads, ...used } };
      }

      return {
        file,
        put(piece, writer) {
          if (!isPanelPiece(piece)) return writer.add(String(piece));
          const { content, kept } = taken(piece) ?? made(piece);
          const from = writer.at();
          writer.add(content);
          if (kept) pieces[piece.panel] = { ...kept, from, to: writer.at() };
          places ??= piece.places;
        },
        end(stats) {
          now.set(name, { ...written(stats), pieces, lists: places?.lists() });
        },
      };
    },

    /** When all of them are there. */
    close(): void {
      store.close(now, new Set(now.keys()));
    },
  };
}
export type KeptPieces = ReturnType<typeof keptPieces>;

const nameIn = (path: string) => path.replaceAll('/', '+');

/** What was written before, as it was; undefined where somebody has written into it. */
function earlierFile(kept: KeptFile | undefined, file: string): (KeptFile & { bytes: Buffer }) | undefined {
  return kept && isAsWritten(file, kept) ? { ...kept, bytes: readFileSync(file) } : undefined;
}
