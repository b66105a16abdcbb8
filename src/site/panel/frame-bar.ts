/** How much of the light passes the frame, drawn as a part of all of it. */
import { type PieceElement, piece } from '../shared/browser/pieces.ts';

/** Where the band lies; the style sheet has it, and the drawing's own size, since they are the same on every page. */
const BAND = { y: 18, height: 14 };

/** The part in the frame full, the rest open; the interval of the edge between them as a line. All in %. */
export function frameBar({ value, low, high }: { value: number; low: number; high: number }): PieceElement {
  const at = (share: number) => `${Number(Math.min(100, Math.max(0, share)).toFixed(1))}%`;
  const middle = BAND.y + BAND.height / 2;
  return piece(
    'svg',
    { class: 'frame-bar', 'aria-hidden': 'true' },
    piece('text', { x: 0, y: 12 }, 'in the frame'),
    piece('text', { x: '100%', y: 12, 'text-anchor': 'end' }, 'past it'),
    piece('rect', { class: 'past' }),
    piece('rect', { class: 'in', width: at(value) }),
    piece('line', { x1: at(low), x2: at(high), y1: middle, y2: middle }),
    ...[low, high].map((end) =>
      piece('line', { x1: at(end), x2: at(end), y1: BAND.y - 2, y2: BAND.y + BAND.height + 2 }),
    ),
  );
}
