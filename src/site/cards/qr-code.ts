import encodeQR from 'qr';

/** Modules of paper around a code that readers need: ISO/IEC 18004 asks for four (from memory). */
export const QUIET = 4;

/** An address as a QR code. */
export interface QrCode {
  /** Modules on a side, without the quiet zone. */
  count: number;
  /** Where dark modules stand. The paper around them has to be as light as white. */
  dark: readonly DarkRun[];
  /** The same as data of a path, in modules: whole numbers leave no seams. */
  path: string;
}

/** Dark modules of a row beside one another, from the code's upper left corner. */
export interface DarkRun {
  start: number;
  top: number;
  length: number;
}

/** The last one, which all cards of a panel or a method have, one after the other. */
let last: { address: string; code: QrCode } | undefined;

/** The code of an address, made once for all its cards: of the least size there is for it, and of that the one that can lose most of its modules. */
export function qrCode(address: string): QrCode {
  if (last?.address !== address) last = { address, code: madeCode(address) };
  return last.code;
}

function madeCode(address: string): QrCode {
  const levels = (['low', 'medium', 'quartile', 'high'] as const).map((ecc) =>
    withoutBorder(encodeQR(address, 'raw', { ecc, border: 1 })),
  );
  const count = levels[0]?.length ?? 0;
  const dark = darkRuns(levels.findLast((it) => it.length === count) ?? []);
  return {
    count,
    dark,
    path: dark.map(({ start, top, length }) => `M${start} ${top}h${length}v1h-${length}z`).join(''),
  };
}

function darkRuns(rows: ReadonlyArray<readonly boolean[]>): DarkRun[] {
  return rows.flatMap((row, top) =>
    row.flatMap((dark, start) => {
      if (!dark || row[start - 1]) return [];
      const end = row.indexOf(false, start);
      return [{ start, top, length: (end < 0 ? row.length : end) - start }];
    }),
  );
}

const withoutBorder = (rows: boolean[][]) => rows.slice(1, -1).map((row) => row.slice(1, -1));
