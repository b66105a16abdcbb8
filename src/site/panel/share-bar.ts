/** A share of a limit, drawn. All bars of all panels have one scale: a drawing that rescales itself lies. */
import { type PieceElement, piece } from '../shared/browser/pieces.ts';

/** Where the scale ends, % of the limit; what goes beyond is drawn broken. */
const END = 500;
/** The limit itself, first, and its multiples that the head of the column names. */
const TICKS: ReadonlyArray<readonly [share: number, label: string]> = [
  [100, 'limit'],
  [200, '2 ×'],
  [300, '3 ×'],
  [400, '4 ×'],
  [500, '5 ×'],
];
/** CSS pixels; what all bars have alike is in their style sheet, since a page has ten of them. */
const HEIGHT = 16;

/** A share of a limit from the least to the most that it may be, %. */
export interface Share {
  least: number;
  most: number;
}

/** The bar of a share: full up to the least that it may be, an open end up to the most. */
export function shareBar({ least, most }: Share): PieceElement {
  const isBroken = most > END;
  const [from, to] = [Math.min(Math.max(0, least), END), Math.min(most, END)];
  return piece(
    'svg',
    { class: 'share-bar', 'aria-hidden': 'true' },
    // The axis, and the tip by which next to nothing is seen to be something; the style sheet knows parts by their order.
    piece('rect', {}),
    piece('rect', {}),
    piece('rect', { width: at(from) }),
    to > from && piece('rect', { x: at(from), width: at(to - from) }),
    // The limit, always the last.
    piece('rect', {}),
    ...(isBroken
      ? [95, 97].map((x) => piece('line', { class: 'break', x1: `${x}%`, x2: `${x + 1}%`, y1: HEIGHT - 2, y2: 2 }))
      : []),
  );
}

/** The scale over the bars. */
export function shareScale(): PieceElement {
  return piece(
    'svg',
    { class: 'share-bar scale', 'aria-hidden': 'true' },
    ...TICKS.flatMap(([share, label]) => [
      piece('text', { x: at(share), y: 11 }, label),
      piece('line', { x1: at(share), x2: at(share), y1: HEIGHT, y2: HEIGHT + 4 }),
    ]),
  );
}

const at = (share: number) => `${Number(((100 * share) / END).toFixed(2))}%`;
