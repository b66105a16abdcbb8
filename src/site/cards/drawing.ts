import { INK } from './drawing-ink.ts';
import { drawingSvg } from './drawing-svg.ts';
import { fittedLines } from './fitted-lines.ts';
import { type Face, letterWidth, setLine } from './lettering.ts';
import type { Ink, Mark, Place } from './marks.ts';

/** How text is set. */
export interface Setting {
  size: number;
  face?: Face;
  fill?: Ink;
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
export interface FreePlace extends Place {
  what: string;
}

/** A drawing that grows piece by piece, and knows where its text stands. */
export class Drawing {
  readonly width: number;
  readonly height: number;
  readonly runs: Run[] = [];
  readonly free: FreePlace[] = [];
  readonly marks: Mark[] = [];

  constructor(width: number, height: number) {
    this.width = width;
    this.height = height;
    this.bar({ x: 0, y: 0, width, height }, INK.paper);
  }

  add(mark: Mark): void {
    this.marks.push(mark);
  }

  /** A filled rectangle. */
  bar({ x, y, width, height }: Place, fill: Ink): void {
    this.add({ kind: 'bar', x, y, width, height, fill });
  }

  /** Says that no text may lie on a place: a code can't be read then. */
  keepFree(place: FreePlace): void {
    this.free.push(place);
  }

  /** A line from left to right, its middle at a height. */
  across(x1: number, x2: number, y: number, fill: Ink = INK.rule, width = 3): void {
    this.bar({ x: x1, y: y - width / 2, width: x2 - x1, height: width }, fill);
  }

  /** A line downwards, its middle so far from the left. */
  down(x: number, y1: number, y2: number, fill: Ink = INK.rule, width = 3): void {
    this.bar({ x: x - width / 2, y: y1, width, height: y2 - y1 }, fill);
  }

  /** One line of text from, around or up to a point of its base line; the width that it takes. */
  write(
    text: string,
    x: number,
    y: number,
    { size, face = 'text', fill = INK.ink, anchor = 'start' }: Setting,
  ): number {
    const line = setLine(text, face);
    const width = line.width * size;
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    this.add({ kind: 'words', letters: line.letters, x: left, y, size, fill });
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
    return drawingSvg(this, title, description);
  }
}
