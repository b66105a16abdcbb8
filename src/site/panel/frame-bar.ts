/** How much of the light passes the frame, drawn as a part of all of it. */
import { type PieceElement, piece } from '../shared/browser/pieces.ts';

const HEIGHT = 40;
const BAND = { y: 18, height: 14 };

/** The part in the frame full, the rest open; the interval of the edge between them as a line. All in %. */
export function frameBar({ value, low, high }: { value: number; low: number; high: number }): PieceElement {
  const at = (share: number) => `${Number(Math.min(100, Math.max(0, share)).toFixed(1))}%`;
  const middle = BAND.y + BAND.height / 2;
  return piece(
    'svg',
    { class: 'frame-bar', width: '100%', height: HEIGHT, 'aria-hidden': 'true' },
    piece('text', { x: 0, y: 12 }, 'in the frame'),
    piece('text', { x: '100%', y: 12, 'text-anchor': 'end' }, 'past it'),
    piece('rect', { class: 'past', x: 0, width: '100%', y: BAND.y, height: BAND.height }),
    piece('rect', { class: 'in', x: 0, width: at(value), y: BAND.y, height: BAND.height }),
    piece('line', { class: 'interval', x1: at(low), x2: at(high), y1: middle, y2: middle }),
    ...[low, high].map((end) =>
      piece('line', { class: 'interval', x1: at(end), x2: at(end), y1: BAND.y - 2, y2: BAND.y + BAND.height + 2 }),
    ),
  );
}
