import type { CanvasKit } from 'canvaskit-wasm';
import { INK } from '../../site/cards/drawing-ink.ts';
import type { Bar, Ink, Mark, Shapes, Squares, Words } from '../../site/cards/marks.ts';
import type { PieceElement } from '../../site/shared/browser/pieces.ts';
import { type Edge, StencilCutter } from './cut-stencils.ts';
import { LetterStencils } from './letter-stencils.ts';
import { coatOf } from './palette.ts';
import { ShapeStencils } from './shape-stencils.ts';
import type { Sheet } from './sheet.ts';

/** Draws the marks of drawings on sheets. What is no rectangle a library draws: its shapes and edges mean what SVG's do. */
export class MarkDrawer {
  readonly #letters: LetterStencils;
  readonly #shapes: ShapeStencils;

  constructor(kit: CanvasKit) {
    const cutter = new StencilCutter(kit);
    this.#letters = new LetterStencils(cutter);
    this.#shapes = new ShapeStencils(cutter);
  }

  /** @param scale px to a unit of the drawing @throws where a mark has what is not drawn here */
  draw(sheet: Sheet, marks: readonly Mark[], scale: number): void {
    for (const it of marks) {
      if (it.kind === 'bar') drawBar(sheet, it, scale);
      else if (it.kind === 'words') this.#drawWords(sheet, it, scale);
      else if (it.kind === 'squares') drawSquares(sheet, it, scale);
      else this.#drawShapes(sheet, it, scale);
    }
  }

  /** Base lines are whole pixels: a letter stands at one height then, and its feet are sharp. */
  #drawWords(sheet: Sheet, { letters, x, y, size, fill }: Words, scale: number): void {
    const coat = coatOf(fill);
    const below = Math.round(y * scale);
    const sized = this.#letters.ofSize(size * scale);
    for (const { letter, at } of letters) {
      const { stencil, right } = this.#letters.at(sized, letter, size * scale, (x + at * size) * scale);
      if (stencil) sheet.lay(stencil, right, below, coat);
    }
  }

  #drawShapes(sheet: Sheet, { pieces, x, y, scale: unit }: Shapes, scale: number): void {
    const standing = { x: x * scale, y: y * scale, scale: unit * scale };
    for (const it of pieces) {
      const { fill, stroke, 'stroke-width': width, 'fill-opacity': opacity } = it.attributes;
      const lay = (ink: Ink, strength?: number, edge?: Edge) => {
        const stencil = this.#shapes.at(outlineOf(it), standing, sheet, edge);
        if (stencil) sheet.lay(stencil, 0, 0, coatOf(ink, strength));
      };
      if (isInk(fill)) lay(fill, Number(opacity ?? 1));
      if (isInk(stroke)) lay(stroke, 1, { width: Number(width ?? 1), dashes: dashesOf(it) });
    }
  }
}

function drawBar(sheet: Sheet, { x, y, width, height, fill }: Bar, scale: number): void {
  // A sheet is paper to begin with.
  if (sheet.isBlank && fill === INK.paper) return;
  sheet.bar(x * scale, y * scale, (x + width) * scale, (y + height) * scale, coatOf(fill));
}

/** Whole pixels: modules with soft edges would have seams between them. */
function drawSquares(sheet: Sheet, { code, x, y, side }: Squares, scale: number): void {
  const coat = coatOf(INK.ink);
  const across = (count: number) => Math.round((x + count * side) * scale);
  const down = (count: number) => Math.round((y + count * side) * scale);
  for (const { start, top, length } of code.dark)
    sheet.bar(across(start), down(top), across(start + length), down(top + 1), coat);
}

/** The outline of a shape as data of a path. */
function outlineOf({ tag, attributes }: PieceElement): string {
  const at = (name: string) => Number(attributes[name] ?? 0);
  const round = (across: number, down: number) => {
    const half = (to: number) => `a${across} ${down} 0 0 1 ${to} 0`;
    return `M${at('cx') - across} ${at('cy')}${half(2 * across)}${half(-2 * across)}z`;
  };
  switch (tag) {
    case 'line':
      return `M${at('x1')} ${at('y1')}L${at('x2')} ${at('y2')}`;
    case 'rect':
      return `M${at('x')} ${at('y')}h${at('width')}v${at('height')}h${-at('width')}z`;
    case 'circle':
      return round(at('r'), at('r'));
    case 'ellipse':
      return round(at('rx'), at('ry'));
    case 'path':
      return String(attributes.d);
    default:
      throw new Error(`pictures of cards have no ${tag}: draw it in draw-marks.ts`);
  }
}

/** Dashes and gaps of a broken edge. */
function dashesOf({ attributes }: PieceElement): number[] | undefined {
  const lengths = String(attributes['stroke-dasharray'] ?? '').split(/[\s,]+/);
  return lengths.length > 1 ? lengths.map(Number) : undefined;
}

const isInk = (it: PieceElement['attributes'][string]): it is Ink => it !== undefined && it !== 'none';
