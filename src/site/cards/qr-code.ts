import encodeQR from 'qr';
import { type PieceElement, piece } from '../shared/browser/pieces.ts';
import { INK } from './drawing-ink.ts';

/** Modules of paper around a code that readers need: ISO/IEC 18004 asks for four (from memory). */
export const QUIET = 4;

/** An address as a QR code. */
export interface QrCode {
  /** Modules on a side, without the quiet zone. */
  count: number;
  /** The dark modules from the top left one, each so wide. The paper that they stand on has to be as light as white. */
  pieces(x: number, y: number, module: number): PieceElement[];
}

const codes = new Map<string, QrCode>();

/** The code of an address, made once for all its cards: of the least size there is for it, and of that the one that can lose most of its modules. */
export function qrCode(address: string): QrCode {
  const known = codes.get(address) ?? madeCode(address);
  codes.set(address, known);
  return known;
}

function madeCode(address: string): QrCode {
  const levels = (['low', 'medium', 'quartile', 'high'] as const).map((ecc) =>
    withoutBorder(encodeQR(address, 'raw', { ecc, border: 1 })),
  );
  const count = levels[0]?.length ?? 0;
  const rows = levels.findLast((it) => it.length === count) ?? [];
  return {
    count,
    pieces: (x, y, module) => [
      piece('path', {
        d: darkRuns(rows),
        fill: INK.ink,
        transform: `translate(${Math.round(x)} ${Math.round(y)}) scale(${Number(module.toFixed(2))})`,
        'shape-rendering': 'crispEdges',
      }),
    ],
  };
}

const withoutBorder = (rows: boolean[][]) => rows.slice(1, -1).map((row) => row.slice(1, -1));

/** Runs of dark modules in each row, in modules: whole numbers leave no seams. */
function darkRuns(rows: boolean[][]): string {
  return rows
    .flatMap((row, top) => {
      const starts = row.flatMap((dark, i) => (dark && !row[i - 1] ? [i] : []));
      return starts.map((start) => {
        const end = row.indexOf(false, start);
        const length = (end < 0 ? row.length : end) - start;
        return `M${start} ${top}h${length}v1h-${length}z`;
      });
    })
    .join('');
}
