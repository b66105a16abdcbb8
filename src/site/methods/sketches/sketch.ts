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

/** A curve through points of a function, from one place to another. */
export function curve(style: Style, from: number, to: number, y: (x: number) => number): PieceElement {
  const steps = Math.ceil((to - from) / 4);
  const points = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
  return path(style, `M${points.map((x) => `${round(x)} ${round(y(x))}`).join('L')}`);
}

const round = (value: number) => Number(value.toFixed(1));

/** A sketch as a drawing. */
export function sketchDrawing({ width, height, words, pieces }: Sketch): PieceElement {
  return piece(
    'svg',
    { class: 'sketch', viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-label': words },
    ...pieces,
  );
}
