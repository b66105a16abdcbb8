/** Times on one strip, from half a minute to an hour, on a scale of equal ratios: how long until a limit. No DOM. */
import { type PieceElement, piece } from './pieces.ts';

/** A time on the strip, s, with what it belongs to: `15 cm`, `limit`. */
export interface StripMark {
  seconds: number;
  label: string;
}

/** The strip is the same for all panels, so that they can be compared: a drawing that rescales itself lies. */
const SHORTEST = 30;
const LONGEST = 3600;
const TICKS: ReadonlyArray<readonly [seconds: number, label: string]> = [
  [30, '30 s'],
  [60, '1 min'],
  [300, '5 min'],
  [1200, '20 min'],
  [3600, '1 h'],
];

const WIDTH = 360;
const LEFT = 14;
const RIGHT = 14;
const LINE = 34;
const BAND = 5;
/** Room for a letter at the size of labels, in units of the drawing. */
const LETTER = 7.2;
/** Between two labels of one row, or they would be read as one. */
const APART = 2 * LETTER;
const ROW = 14;

/**
 * The strip as a drawing.
 *
 * @param marks times; what lies beyond an end stands at it with an arrow's word: `under 30 s`, `over 1 h`
 * @param from the strip is drawn full from this time on, s: what is longer than the shortest limit
 * @param description what the drawing says, for those who don't see it
 */
export function timeStrip(marks: readonly StripMark[], from: number | undefined, description: string): PieceElement {
  const placed = placeLabels(marks);
  const rows = Math.max(1, ...placed.map((it) => it.row + 1));
  const line = LINE + ROW * (rows - 1);
  return piece(
    'svg',
    {
      class: 'time-strip',
      viewBox: `0 0 ${WIDTH} ${line + 26}`,
      width: WIDTH,
      height: line + 26,
      role: 'img',
      'aria-label': description,
    },
    piece('line', { class: 'axis', x1: LEFT, x2: WIDTH - RIGHT, y1: line, y2: line }),
    from !== undefined &&
      from < LONGEST &&
      piece('rect', {
        class: 'over',
        x: placeOf(from),
        y: line - BAND / 2,
        width: round(WIDTH - RIGHT - placeOf(from)),
        height: BAND,
      }),
    piece('path', { class: 'tick', d: TICKS.map(([seconds]) => `M${placeOf(seconds)} ${line - 4}v8`).join('') }),
    ...TICKS.map(([seconds, label]) =>
      piece('text', { x: placeOf(seconds), y: line + 20, 'text-anchor': anchorOf(seconds) }, label),
    ),
    // Labels last: the line of one above passes behind them.
    ...placed.map((it) =>
      piece('line', { class: 'mark', x1: it.x, x2: it.x, y1: line - 8 - ROW * it.row, y2: line + 8 }),
    ),
    ...placed.map((it) => piece('text', { class: 'mark', x: it.textX, y: line - 13 - ROW * it.row }, it.text)),
  );
}

/** Labels beside each other where there is room, and above each other where there is none. */
function placeLabels(marks: readonly StripMark[]) {
  const ends: number[] = [];
  return marks
    .toSorted((a, b) => a.seconds - b.seconds)
    .map(({ seconds, label }) => {
      const x = placeOf(seconds);
      const text = seconds < SHORTEST ? `${label}: under 30 s` : seconds > LONGEST ? `${label}: over 1 h` : label;
      const half = (LETTER * text.length) / 2;
      const textX = round(Math.min(WIDTH - half, Math.max(half, x)));
      let row = ends.findIndex((end) => end <= textX - half - APART);
      if (row < 0) row = ends.length;
      ends[row] = textX + half;
      return { x, textX, text, row };
    });
}

/** Place of a time, in units of the drawing; an end for what lies beyond it. */
function placeOf(seconds: number): number {
  const held = Math.min(LONGEST, Math.max(SHORTEST, seconds));
  return round(LEFT + ((WIDTH - LEFT - RIGHT) * Math.log(held / SHORTEST)) / Math.log(LONGEST / SHORTEST));
}

const anchorOf = (seconds: number) => (seconds === SHORTEST ? 'start' : seconds === LONGEST ? 'end' : 'middle');

const round = (value: number) => Number(value.toFixed(1));
