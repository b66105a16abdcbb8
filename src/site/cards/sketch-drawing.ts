import type { Sketch } from '../methods/sketches/sketch.ts';
import { type Piece, type PieceElement, piece } from '../shared/browser/pieces.ts';
import type { Drawing } from './drawing.ts';
import { INK, LIGHT } from './drawing-ink.ts';

/** Letter size in sketches, in their units. As in the pages' style sheet. */
const LETTERS = 13;

/** Styles of a sketch as attributes, since a card has no style sheet. As in `methods/sketch.css`. */
const STYLES: Readonly<Record<string, Record<string, string | number>>> = {
  ink: { fill: 'none', stroke: INK.ink, 'stroke-width': 1.5 },
  soft: { fill: 'none', stroke: INK.soft, 'stroke-width': 1 },
  dash: { fill: 'none', stroke: INK.soft, 'stroke-width': 1.5, 'stroke-dasharray': '4 4' },
  accent: { fill: 'none', stroke: INK.accent, 'stroke-width': 3 },
  'accent-fill': { fill: INK.accent },
  light: { fill: INK.accent, 'fill-opacity': LIGHT },
};

/**
 * A sketch as large as a box holds, in its middle: shapes by their styles, words as outlines.
 *
 * @param least letter size; a small sketch has larger letters for its size than on a page
 */
export function drawSketch(
  drawing: Drawing,
  { width, height, pieces }: Sketch,
  box: { x: number; y: number; width: number; height: number },
  least: number,
): void {
  const scale = Math.min(box.width / width, box.height / height);
  const [left, top] = [box.x + (box.width - width * scale) / 2, box.y + (box.height - height * scale) / 2];
  const isText = (it: PieceElement) => it.tag === 'text';
  const shapes = pieces.filter((it) => !isText(it)).map(styled);
  drawing.add({ kind: 'shapes', pieces: shapes, x: left, y: top, scale });
  for (const it of pieces.filter(isText)) {
    const { x, y, 'text-anchor': anchor } = it.attributes;
    drawing.write(textOf(it.pieces), left + Number(x) * scale, top + Number(y) * scale, {
      size: Math.max(least, LETTERS * scale),
      anchor: anchor === 'middle' || anchor === 'end' ? anchor : 'start',
    });
  }
}

function styled({ tag, attributes: { class: style, ...rest }, pieces }: PieceElement): PieceElement {
  return piece(
    tag,
    { ...rest, ...STYLES[String(style)] },
    ...pieces.map((it) => (typeof it === 'string' ? it : styled(it))),
  );
}

const textOf = (pieces: readonly Piece[]): string =>
  pieces.map((it) => (typeof it === 'string' ? it : textOf(it.pieces))).join('');
