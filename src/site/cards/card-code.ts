import type { CardLayout } from './card-formats.ts';
import type { Drawing } from './drawing.ts';
import { INK } from './drawing-ink.ts';
import { QUIET, qrCode } from './qr-code.ts';

/** Of a card's width, at most: the code of a long address gets smaller modules rather than leave no room. */
const MOST = 0.36;

/** The code in a card's lower right corner, where its margins are two sides of the quiet zone. */
export interface CardCode {
  /** Side without the quiet zone, and how wide that is. */
  size: number;
  quiet: number;
  /** Its upper left corner. */
  x: number;
  y: number;
  /** @param words what it leads to, over it; where there is room */
  draw(drawing: Drawing, words?: string): void;
}

/** The code of an address as it stands on a card; undefined where the layout has none. */
export function cardCode(address: string, { module, width, height, margin, small }: CardLayout): CardCode | undefined {
  if (module === undefined) return undefined;
  const code = qrCode(address);
  const side = Math.min(module, (MOST * width) / code.count);
  const size = code.count * side;
  const quiet = QUIET * side;
  const edge = Math.max(margin, quiet);
  const [x, y] = [width - edge - size, height - edge - size];
  return {
    size,
    quiet,
    x,
    y,
    draw(drawing, words) {
      const at = { x: Math.round(x), y: Math.round(y), side: Number(side.toFixed(2)) };
      drawing.add({ kind: 'squares', code, ...at });
      if (words) drawing.write(words, x, y - quiet - 0.1 * small, { size: small, fill: INK.soft });
      drawing.keepFree({
        what: 'the code',
        x: x - quiet,
        y: y - quiet,
        width: size + 2 * quiet,
        height: size + 2 * quiet,
      });
    },
  };
}
