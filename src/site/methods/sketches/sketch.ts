/** What sketches are made of. One line width, one accent; words carry what colour shows. Lengths in units of the drawing. */
import { type PieceElement, piece } from '../../shared/browser/pieces.ts';

/** A sketch of a method: a drawing of our own, to no scale unless it says so. */
export interface Sketch {
  width: number;
  height: number;
  /** What it shows, for those who don't see it, and as its caption. */
  words: string;
  pieces: readonly PieceElement[];
}

/** Lengths of a drawing need no more than a tenth. */
export const round = (value: number) => Number(value.toFixed(1));

type Style = 'ink' | 'soft' | 'dash' | 'accent' | 'light' | 'accent-fill';

export const line = (style: Style, x1: number, y1: number, x2: number, y2: number) =>
  piece('line', { class: style, x1, y1, x2, y2 });

export const path = (style: Style, d: string) => piece('path', { class: style, d });

export const box = (style: Style, x: number, y: number, width: number, height: number) =>
  piece('rect', { class: style, x, y, width, height });

export const dot = (style: Style, cx: number, cy: number, r: number) => piece('circle', { class: style, cx, cy, r });

/** Words in a sketch, from a point on, around it or up to it. */
export const text = (x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end' = 'start') =>
  piece('text', { x, y, 'text-anchor': anchor }, words);

/** A length with its ends marked. */
export const measure = (x1: number, y1: number, x2: number, y2: number): PieceElement[] => {
  const [dx, dy] = x1 === x2 ? [4, 0] : [0, 4];
  return [
    line('soft', x1, y1, x2, y2),
    line('soft', x1 - dx, y1 - dy, x1 + dx, y1 + dy),
    line('soft', x2 - dx, y2 - dy, x2 + dx, y2 + dy),
  ];
};

/** An interval with its value, lying. */
export const interval = (y: number, from: number, to: number, at: number): PieceElement[] => [
  line('accent', from, y, to, y),
  line('ink', at, y - 7, at, y + 7),
];

/** An arrow from one point to another, lying or standing. */
export function arrow(style: Style, x1: number, y1: number, x2: number, y2: number): PieceElement {
  const [dx, dy] = [Math.sign(x2 - x1), Math.sign(y2 - y1)];
  const barb = (side: 1 | -1) => `${x2 - 5 * dx + 4 * side * dy} ${y2 - 5 * dy + 4 * side * dx}`;
  return path(style, `M${x1} ${y1}L${x2} ${y2}M${barb(1)}L${x2} ${y2}L${barb(-1)}`);
}

/** Where values stand on an even scale: from one value at one place to another at another. */
export const scale =
  (from: number, to: number, start: number, end: number) =>
  (value: number): number =>
    round(start + ((value - from) / (to - from)) * (end - start));

/** The same on a scale of equal ratios. */
export const ratioScale = (from: number, to: number, start: number, end: number) => {
  const at = scale(Math.log(from), Math.log(to), start, end);
  return (value: number): number => at(Math.log(value));
};

/** A line through points. */
export const through = (style: Style, points: ReadonlyArray<readonly [x: number, y: number]>): PieceElement =>
  path(style, `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join('L')}`);

/** A curve through points of a function, from one place to another. */
export function curve(style: Style, from: number, to: number, y: (x: number) => number): PieceElement {
  const steps = Math.ceil((to - from) / 4);
  const xs = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
  return through(
    style,
    xs.map((x) => [x, y(x)]),
  );
}

/** Between a number and its unit, and about the sign of an interval. */
const BEFORE_UNIT = /(?<=[\d±]) (?=(?:\d|±|%|µT|µW|mW|nm|cm|dB|W|V|Hz|kHz|J|in|s|min|h)(?!\p{L}))/gu;

/** What a sketch shows, as its caption: no line ends between a number and its unit. */
export const captionOf = ({ words }: Pick<Sketch, 'words'>): string => words.replaceAll(BEFORE_UNIT, '\u00a0');

/** A sketch as a drawing. */
export function sketchDrawing({ width, height, words, pieces }: Sketch): PieceElement {
  return piece(
    'svg',
    { class: 'sketch', viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-label': words },
    ...pieces,
  );
}
