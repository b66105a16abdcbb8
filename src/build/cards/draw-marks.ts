import type { Canvas, CanvasKit, Paint, Path } from 'canvaskit-wasm';
import { INK } from '../../site/cards/drawing-ink.ts';
import { darkRuns } from '../../site/cards/drawing-svg.ts';
import { type Letter, letterOutline } from '../../site/cards/lettering.ts';
import type { Bar, Ink, Mark, Shapes, Squares, Words } from '../../site/cards/marks.ts';
import type { PieceElement } from '../../site/shared/browser/pieces.ts';

/** Draws the marks of drawings with a library's canvas, whose shapes and strokes mean what SVG's do. */
export class MarkDrawer {
  readonly #kit: CanvasKit;
  /** Each ink once, and each letter's outline. What the library makes lies in its own memory until it is deleted. */
  readonly #inks = new Map<string, Paint>();
  readonly #letters = new Map<string, Path | undefined>();

  constructor(kit: CanvasKit) {
    this.#kit = kit;
  }

  /** @throws where a mark has what is not drawn here */
  draw(canvas: Canvas, marks: readonly Mark[]): void {
    for (const it of marks) {
      canvas.save();
      if (it.kind === 'bar') this.#bar(canvas, it);
      else if (it.kind === 'words') this.#words(canvas, it);
      else if (it.kind === 'squares') this.#squares(canvas, it);
      else this.#shapes(canvas, it);
      canvas.restore();
    }
  }

  #bar(canvas: Canvas, { x, y, width, height, fill }: Bar): void {
    canvas.drawRect4f(x, y, x + width, y + height, this.#ink(fill));
  }

  #words(canvas: Canvas, { letters, x, y, size, fill }: Words): void {
    const units = letters[0]?.letter.units ?? 1;
    canvas.translate(x, y);
    canvas.scale(size / units, size / units);
    let here = 0;
    for (const { letter, at } of letters) {
      const outline = this.#outline(letter);
      if (!outline) continue;
      canvas.translate(at * units - here, 0);
      here = at * units;
      canvas.drawPath(outline, this.#ink(fill));
    }
  }

  /** Whole pixels: modules with soft edges would have seams between them. */
  #squares(canvas: Canvas, { rows, x, y, side }: Squares): void {
    canvas.translate(x, y);
    canvas.scale(side, side);
    const ink = this.#ink(INK.ink).copy();
    ink.setAntiAlias(false);
    for (const [top, row] of rows.entries()) {
      for (const { start, length } of darkRuns(row)) canvas.drawRect4f(start, top, start + length, top + 1, ink);
    }
    ink.delete();
  }

  #shapes(canvas: Canvas, { pieces, x, y, scale }: Shapes): void {
    canvas.translate(x, y);
    canvas.scale(scale, scale);
    for (const it of pieces) {
      const { fill, stroke, 'fill-opacity': opacity } = it.attributes;
      if (isInk(fill)) this.#shape(canvas, it, this.#ink(fill, Number(opacity ?? 1)));
      if (isInk(stroke)) this.#line(canvas, it, this.#ink(stroke));
    }
  }

  /** A shape's edge, whole or broken. */
  #line(canvas: Canvas, it: PieceElement, ink: Paint): void {
    const line = ink.copy();
    line.setStyle(this.#kit.PaintStyle.Stroke);
    line.setStrokeWidth(Number(it.attributes['stroke-width'] ?? 1));
    const broken = String(it.attributes['stroke-dasharray'] ?? '').split(/[\s,]+/);
    const dashes = broken.length > 1 ? this.#kit.PathEffect.MakeDash(broken.map(Number)) : undefined;
    if (dashes) line.setPathEffect(dashes);
    this.#shape(canvas, it, line);
    dashes?.delete();
    line.delete();
  }

  #shape(canvas: Canvas, { tag, attributes }: PieceElement, ink: Paint): void {
    const at = (name: string) => Number(attributes[name] ?? 0);
    const round = (across: number, down: number) =>
      this.#kit.LTRBRect(at('cx') - across, at('cy') - down, at('cx') + across, at('cy') + down);
    switch (tag) {
      case 'line':
        canvas.drawLine(at('x1'), at('y1'), at('x2'), at('y2'), ink);
        return;
      case 'rect':
        canvas.drawRect4f(at('x'), at('y'), at('x') + at('width'), at('y') + at('height'), ink);
        return;
      case 'circle':
        canvas.drawOval(round(at('r'), at('r')), ink);
        return;
      case 'ellipse':
        canvas.drawOval(round(at('rx'), at('ry')), ink);
        return;
      case 'path': {
        const path = this.#path(String(attributes.d));
        canvas.drawPath(path, ink);
        path.delete();
        return;
      }
      default:
        throw new Error(`pictures of cards have no ${tag}: draw it in draw-marks.ts`);
    }
  }

  /** An ink so strong. */
  #ink(colour: string, strength = 1): Paint {
    const key = `${colour} ${strength}`;
    const known = this.#inks.get(key);
    if (known) return known;
    const ink = new this.#kit.Paint();
    const [red = 0, green = 0, blue = 0] = this.#kit.parseColorString(colour);
    ink.setColor(this.#kit.Color4f(red, green, blue, strength));
    ink.setAntiAlias(true);
    this.#inks.set(key, ink);
    return ink;
  }

  /** A letter in units of its typeface; undefined for a blank. */
  #outline(letter: Letter): Path | undefined {
    if (this.#letters.has(letter.key)) return this.#letters.get(letter.key);
    const data = letterOutline(letter);
    const outline = data === '' ? undefined : this.#path(data);
    this.#letters.set(letter.key, outline);
    return outline;
  }

  #path(data: string): Path {
    const path = this.#kit.Path.MakeFromSVGString(data);
    if (!path) throw new Error(`not the data of a path: ${data.slice(0, 60)}`);
    return path;
  }
}

const isInk = (it: PieceElement['attributes'][string]): it is Ink => it !== undefined && it !== 'none';
