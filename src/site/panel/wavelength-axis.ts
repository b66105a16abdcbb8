/** Peak wavelengths as ticks on one axis, the same for all panels. */
import { type PieceElement, piece } from '../shared/browser/pieces.ts';

/** The part of the spectrum that panels work in, nm; the eye sees next to nothing from 700 nm on. */
const [FROM, TO, SEEN_TO] = [600, 900, 700];
/** Its height is in the style sheet too, and how its labels lie to their places. */
const HEIGHT = 34;
const LINE = 16;

/** The axis with a tick a peak: full where the eye sees it, broken where it can't. */
export function wavelengthAxis(peaks: readonly number[]): PieceElement {
  const at = (nm: number) => `${Number(((100 * (Math.min(TO, Math.max(FROM, nm)) - FROM)) / (TO - FROM)).toFixed(1))}%`;
  return piece(
    'svg',
    { class: 'waves', 'aria-hidden': 'true' },
    piece('line', { class: 'axis', x2: '100%', y1: LINE, y2: LINE }),
    piece('line', { class: 'seen', x2: at(SEEN_TO), y1: LINE, y2: LINE }),
    ...[FROM, SEEN_TO, 800, TO].map((nm) => piece('text', { x: at(nm), y: HEIGHT - 3 }, String(nm))),
    ...peaks.map((nm) =>
      piece('line', {
        class: nm < SEEN_TO ? 'peak' : 'peak unseen-light',
        x1: at(nm),
        x2: at(nm),
        y1: 1,
        y2: LINE + 5,
      }),
    ),
  );
}
