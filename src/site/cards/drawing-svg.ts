import { type PieceElement, piece } from '../shared/browser/pieces.ts';
import { html, piecesHtml } from '../shared/html.ts';
import { INK } from './drawing-ink.ts';
import { letterOutline } from './lettering.ts';
import type { Mark, Shapes, Squares, Words } from './marks.ts';

/**
 * A drawing as a file, with what it says to who can't see it. Each letter's outline is there once and used wherever it
 * stands, which makes the file a third of one with outlines in every place. `xlink:href`, since programs for slides and
 * labels may not know the newer name.
 */
export function drawingSvg(
  { width, height, marks }: { width: number; height: number; marks: readonly Mark[] },
  title: string,
  description: string,
): string {
  const outlines = new Map<string, PieceElement>();
  const body = piecesHtml(marks.flatMap((it) => piecesOf(it, outlines)));
  const size = html`viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"`;
  return html`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${size} role="img" aria-labelledby="t d"><title id="t">${title}</title><desc id="d">${description}</desc><defs>${piecesHtml([...outlines.values()])}</defs>${body}</svg>
`.text;
}

function piecesOf(mark: Mark, outlines: Map<string, PieceElement>): readonly PieceElement[] {
  switch (mark.kind) {
    case 'bar': {
      const { x, y, width, height, fill } = mark;
      return [piece('rect', { x: tenths(x), y: tenths(y), width: tenths(width), height: tenths(height), fill })];
    }
    case 'words':
      return [wordsPiece(mark, outlines)];
    case 'squares':
      return [squaresPiece(mark)];
    case 'shapes':
      return [shapesPiece(mark)];
  }
}

/** Letters in units of their typeface, whole numbers, in a group that is as large as the line. */
function wordsPiece({ letters, x, y, size, fill }: Words, outlines: Map<string, PieceElement>): PieceElement {
  const units = letters[0]?.letter.units ?? 1;
  const uses = letters.flatMap(({ letter, at }) => {
    const known = outlines.get(letter.key) ?? outlinePiece(letter, outlines.size);
    if (!known) return [];
    outlines.set(letter.key, known);
    return [piece('use', { 'xlink:href': `#${known.attributes.id}`, x: Math.round(at * units) || undefined })];
  });
  return piece(
    'g',
    { fill, transform: `translate(${tenths(x)} ${tenths(y)}) scale(${Number((size / units).toPrecision(5))})` },
    ...uses,
  );
}

/** A letter's outline with a name; undefined for a blank. */
function outlinePiece(letter: Words['letters'][number]['letter'], count: number): PieceElement | undefined {
  const d = letterOutline(letter);
  return d === '' ? undefined : piece('path', { id: `l${count}`, d });
}

/** Runs of dark squares in each row, in squares: whole numbers leave no seams. */
function squaresPiece({ rows, x, y, side }: Squares): PieceElement {
  const d = rows.flatMap((row, top) =>
    darkRuns(row).map(({ start, length }) => `M${start} ${top}h${length}v1h-${length}z`),
  );
  return piece('path', {
    d: d.join(''),
    fill: INK.ink,
    transform: `translate(${x} ${y}) scale(${side})`,
    'shape-rendering': 'crispEdges',
  });
}

/** Where runs of dark squares begin in a row, and how long they are. */
export function darkRuns(row: readonly boolean[]): Array<{ start: number; length: number }> {
  return row.flatMap((dark, start) => {
    if (!dark || row[start - 1]) return [];
    const end = row.indexOf(false, start);
    return [{ start, length: (end < 0 ? row.length : end) - start }];
  });
}

/** Shapes keep their own units, in a group that puts them in their place. */
function shapesPiece({ pieces, x, y, scale }: Shapes): PieceElement {
  const transform = `translate(${tenths(x)} ${tenths(y)}) scale(${Number(scale.toFixed(4))})`;
  return piece('g', { transform: scale === 1 && x === 0 && y === 0 ? undefined : transform }, ...pieces);
}

const tenths = (value: number) => Math.round(value * 10) / 10;
