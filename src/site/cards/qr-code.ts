import encodeQR from 'qr';

/** Modules of paper around a code that readers need: ISO/IEC 18004 asks for four (from memory). */
export const QUIET = 4;

/** An address as a QR code. */
export interface QrCode {
  /** Modules on a side, without the quiet zone. */
  count: number;
  /** Of each row from the top, which modules are dark. The paper that they stand on has to be as light as white. */
  rows: ReadonlyArray<readonly boolean[]>;
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
  const rows = levels.findLast((it) => it.length === count) ?? [];
  return { count, rows };
}

const withoutBorder = (rows: boolean[][]) => rows.slice(1, -1).map((row) => row.slice(1, -1));
