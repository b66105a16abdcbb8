import encodeQR from 'qr';
import { type PieceElement, piece } from '../shared/browser/pieces.ts';
import { round } from './drawing.ts';
import { INK } from './drawing-ink.ts';

/** Modules of white around a code that readers need: ISO/IEC 18004 asks for four (from memory). */
const QUIET = 4;

/**
 * An address as a QR code, a square with its quiet zone, dark on light. It can be read with 15 % of it gone (level M).
 *
 * @param size of the side with the quiet zone
 */
export function qrCode(address: string, x: number, y: number, size: number): PieceElement[] {
  const rows = encodeQR(address, 'raw', { ecc: 'medium', border: QUIET });
  const scale = size / rows.length;
  // Runs of dark modules in each row, in modules: whole numbers leave no seams.
  const path = rows
    .flatMap((row, top) => {
      const starts = row.flatMap((dark, i) => (dark && !row[i - 1] ? [i] : []));
      return starts.map((start) => {
        const end = row.indexOf(false, start);
        const length = (end < 0 ? row.length : end) - start;
        return `M${start} ${top}h${length}v1h-${length}z`;
      });
    })
    .join('');
  return [
    piece('rect', { x: round(x), y: round(y), width: round(size), height: round(size), fill: '#ffffff' }),
    piece('path', {
      d: path,
      fill: INK.ink,
      transform: `translate(${round(x)} ${round(y)}) scale(${Number(scale.toFixed(4))})`,
      'shape-rendering': 'crispEdges',
    }),
  ];
}
