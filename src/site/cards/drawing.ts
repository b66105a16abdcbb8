import type { PieceElement } from '../shared/browser/pieces.ts';
import { piece } from '../shared/browser/pieces.ts';
import { html, piecesHtml } from '../shared/html.ts';
import { INK } from './drawing-ink.ts';
import { fittedLines } from './fitted-lines.ts';
import { type Face, letterPath, letterWidth } from './lettering.ts';

/** How text is set. */
export interface Setting {
  size: number;
  face?: Face;
  fill?: string;
  anchor?: 'start' | 'middle' | 'end';
}

/** A line of text as it stands: its left end, base line, width and letter size. */
export interface Run {
  text: string;
  x: number;
  y: number;
  width: number;
  size: number;
}

/** A part of a drawing that no text may lie on. */
export interface FreePlace {
  what: string;
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A drawing that grows piece by piece, and knows where its text stands. */
export class Drawing {
  readonly width: number;
  readonly height: number;
  readonly runs: Run[] = [];
  readonly free: FreePlace[] = [];
  readonly #pieces: PieceElement[] = [];

  constructor(width: number, height: number) {
    this.width = width;
    this.height = height;
    this.add(piece('rect', { width, height, fill: INK.paper }));
  }

  add(...pieces: PieceElement[]): void {
    this.#pieces.push(...pieces);
  }

  /** Says that no text may lie on a place: a code can't be read then. */
  keepFree(place: FreePlace): void {
    this.free.push(place);
  }

  /** A straight line. */
  rule(x1: number, y1: number, x2: number, y2: number, stroke: string = INK.rule, width = 3): void {
    const at = { x1: round(x1), y1: round(y1), x2: round(x2), y2: round(y2) };
    this.add(piece('line', { ...at, stroke, 'stroke-width': width }));
  }

  /** One line of text from, around or up to a point of its base line; the width that it takes. */
  write(
    text: string,
    x: number,
    y: number,
    { size, face = 'text', fill = INK.ink, anchor = 'start' }: Setting,
  ): number {
    const width = letterWidth(text, face, size);
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    this.add(piece('path', { d: letterPath(text, face, size, left, y), fill }));
    this.runs.push({ text, x: left, y, width, size });
    return width;
  }

  /**
   * Text in lines within a width, smaller where it needs it; cut with an ellipsis where even the smallest is too long.
   *
   * @param y of the top of the first line
   * @returns where the next thing may begin
   */
  lines(
    text: string,
    x: number,
    y: number,
    width: number,
    { most, least, leading = 1.2, ...setting }: Setting & { most: number; least?: number; leading?: number },
  ): number {
    const face = setting.face ?? 'text';
    const { size, lines } = fittedLines(
      text,
      (it, at) => letterWidth(it, face, at),
      width,
      most,
      setting.size,
      least ?? setting.size,
    );
    for (const [i, line] of lines.entries()) this.write(line, x, y + size * (0.9 + i * leading), { ...setting, size });
    return y + size * leading * lines.length;
  }

  /** A text in as many lines as it takes at a letter size. */
  inLines(text: string, width: number, { size, face = 'text' }: Pick<Setting, 'size' | 'face'>): string[] {
    return fittedLines(text, (it, at) => letterWidth(it, face, at), width, Number.POSITIVE_INFINITY, size, size).lines;
  }

  /** How many lines a text takes at a letter size. */
  countLines(text: string, width: number, setting: Pick<Setting, 'size' | 'face'>): number {
    return this.inLines(text, width, setting).length;
  }

  /** The drawing as a file, with what it says to who can't see it. */
  svg(title: string, description: string): string {
    const size = html`viewBox="0 0 ${this.width} ${this.height}" width="${this.width}" height="${this.height}"`;
    const body = piecesHtml(this.#pieces);
    return html`<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img" aria-labelledby="t d"><title id="t">${title}</title><desc id="d">${description}</desc>${body}</svg>
`.text;
  }
}

export const round = (value: number) => Number(value.toFixed(1));
