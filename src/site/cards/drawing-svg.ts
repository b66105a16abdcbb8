import { piece } from '../shared/browser/pieces.ts';
import { Html, html, piecesHtml } from '../shared/html.ts';
import { INK } from './drawing-ink.ts';
import { type Letter, letterOutline } from './lettering.ts';
import type { Bar, Mark, Shapes, Squares, Words } from './marks.ts';

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
  const letters: KnownLetters = new Map();
  const body = marks.map((it) => markHtml(it, letters));
  const outlines = [...letters.values()].map((it) => html`<path id="${it.id}" d="${it.outline}"/>`);
  const size = html`viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"`;
  return html`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${size} role="img" aria-labelledby="t d"><title id="t">${title}</title><desc id="d">${description}</desc><defs>${outlines}</defs>${body}</svg>
`.text;
}

/** Letters that the file has, by their keys, each with its name there. */
type KnownLetters = Map<Letter['key'], { id: string; outline: string }>;

function markHtml(mark: Mark, letters: KnownLetters): Html {
  switch (mark.kind) {
    case 'bar':
      return barHtml(mark);
    case 'words':
      return wordsHtml(mark, letters);
    case 'squares':
      return squaresHtml(mark);
    case 'shapes':
      return shapesHtml(mark);
  }
}

const barHtml = ({ x, y, width, height, fill }: Bar) =>
  html`<rect x="${tenths(x)}" y="${tenths(y)}" width="${tenths(width)}" height="${tenths(height)}" fill="${fill}"/>`;

/** Letters in units of their typeface, whole numbers, in a group that is as large as the line. */
function wordsHtml({ letters, x, y, size, fill }: Words, known: KnownLetters): Html {
  const units = letters[0]?.letter.units ?? 1;
  // Most of a file: names and numbers, which have nothing to escape.
  let uses = '';
  for (const { letter, at } of letters) {
    const it = knownLetter(letter, known);
    const right = Math.round(at * units);
    if (it) uses += `<use xlink:href="#${it.id}"${right === 0 ? '' : ` x="${right}"`}/>`;
  }
  if (uses === '') return new Html('');
  const scale = Number((size / units).toPrecision(5));
  return html`<g fill="${fill}" transform="translate(${tenths(x)} ${tenths(y)}) scale(${scale})">${new Html(uses)}</g>`;
}

/** A letter with its name, which it gets where it comes first; undefined for a blank. */
function knownLetter(letter: Letter, known: KnownLetters): { id: string; outline: string } | undefined {
  const named = known.get(letter.key);
  if (named) return named;
  const outline = letterOutline(letter);
  if (outline === '') return undefined;
  const it = { id: `l${known.size}`, outline };
  known.set(letter.key, it);
  return it;
}

/** Runs of dark squares, in squares. */
const squaresHtml = ({ code, x, y, side }: Squares) =>
  html`<path d="${code.path}" fill="${INK.ink}" transform="translate(${x} ${y}) scale(${side})" shape-rendering="crispEdges"/>`;

/** Shapes keep their own units, in a group that puts them in their place. */
function shapesHtml({ pieces, x, y, scale }: Shapes): Html {
  const transform = `translate(${tenths(x)} ${tenths(y)}) scale(${Number(scale.toFixed(4))})`;
  const isAtHome = scale === 1 && x === 0 && y === 0;
  return piecesHtml([piece('g', { transform: isAtHome ? undefined : transform }, ...pieces)]);
}

const tenths = (value: number) => Math.round(value * 10) / 10;
