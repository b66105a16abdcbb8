/** A difference drawn as a line, on the one scale that all rows of all comparisons have. No DOM. */

import type { Difference } from '../../../measure/difference.ts';
import { type PieceElement, piece } from '../../shared/browser/pieces.ts';

/** Percent either way to which the scale reaches: a drawing that rescales itself lies. */
export const SCALE_END = 40;

const WIDTH = 220;
const HEIGHT = 18;
const MIDDLE = WIDTH / 2;
const LINE = HEIGHT / 2;
/** Room for the arrow beyond either end of the scale. */
const ARROW = 10;

/** Where a difference lies on the drawing, and the ends of the scale past which it reaches. */
export interface DrawnDifference {
  from: number;
  to: number;
  /** The difference itself; left out where it lies past an end. */
  at?: number;
  isPastLow: boolean;
  isPastHigh: boolean;
}

/** Places of a ratio with its interval; undefined for what is no ratio, which has no place on a scale of percent. */
export function placeDifference(outcome: Difference, isSubtracted: boolean): DrawnDifference | undefined {
  if (isSubtracted || outcome.kind === 'unknown') return undefined;
  const percent = (ratio: number) => 100 * (ratio - 1);
  const [low, high] = [percent(outcome.interval95[0]), percent(outcome.interval95[1])];
  const at = percent(outcome.value);
  return {
    from: place(low),
    to: place(high),
    ...(Math.abs(at) <= SCALE_END && { at: place(at) }),
    isPastLow: low < -SCALE_END,
    isPastHigh: high > SCALE_END,
  };
}

/** Place of a percentage; an end for what lies beyond it. */
function place(percent: number): number {
  const held = Math.min(SCALE_END, Math.max(-SCALE_END, percent));
  return Number((MIDDLE + ((MIDDLE - ARROW) * held) / SCALE_END).toFixed(1));
}

/** The drawing; only the scale where nothing is given: the line of the panel that others are held against. */
export function differenceLine(drawn: DrawnDifference | undefined, isTie = false): PieceElement {
  return piece(
    'svg',
    { class: 'difference', viewBox: `0 0 ${WIDTH} ${HEIGHT}`, width: WIDTH, height: HEIGHT, 'aria-hidden': 'true' },
    piece('path', { class: 'axis', d: `M${ARROW} ${LINE}H${WIDTH - ARROW}` }),
    piece('path', { class: 'nought', d: `M${MIDDLE} 0V${HEIGHT}` }),
    ...(drawn ? marks(drawn, isTie) : []),
  );
}

function marks({ from, to, at, isPastLow, isPastHigh }: DrawnDifference, isTie: boolean): PieceElement[] {
  return [
    ...(to > from
      ? [
          piece('rect', {
            class: isTie ? 'interval tie' : 'interval',
            x: from,
            y: LINE - 3,
            width: Number((to - from).toFixed(1)),
            height: 6,
          }),
        ]
      : []),
    ...(isPastLow ? [piece('path', { class: 'past', d: `M${ARROW} ${LINE - 6}L2 ${LINE}l${ARROW - 2} 6z` })] : []),
    ...(isPastHigh
      ? [piece('path', { class: 'past', d: `M${WIDTH - ARROW} ${LINE - 6}l${ARROW - 2} 6l${2 - ARROW} 6z` })]
      : []),
    ...(at === undefined ? [] : [piece('path', { class: 'value', d: `M${at} ${LINE - 6}v12` })]),
  ];
}
