import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import opentype, { type Font, type Glyph, type PathCommand } from 'opentype.js';

/*
 * Text as outlines, in the guide's own typefaces: a card looks alike wherever it is opened, and what makes pictures of
 * drawings needs no typeface installed. The packages of static faces are read, since the library reads no variable one
 * in the web's newest packing.
 */

/** What text is set in: running text, figures, and the heading. */
export type Face = 'text' | 'strong' | 'title';

/** Alphabets that the packages have in files of their own; a character is taken from the first that has it. */
const ALPHABETS = ['latin', 'latin-ext', 'greek', 'cyrillic', 'vietnamese'] as const;

const FACES: Readonly<Record<Face, { package: string; weight: number }>> = {
  text: { package: 'source-sans-3', weight: 400 },
  strong: { package: 'source-sans-3', weight: 600 },
  title: { package: 'source-serif-4', weight: 600 },
};

const packages = createRequire(import.meta.url);
const fonts = new Map<string, Font>();

/** A file of a typeface, read once, when the first character asks for it. */
function fontOf(face: Face, alphabet: (typeof ALPHABETS)[number]): Font {
  const { package: name, weight } = FACES[face];
  const file = `@fontsource/${name}/files/${name}-${alphabet}-${weight}-normal.woff`;
  const known = fonts.get(file);
  if (known) return known;
  const bytes = readFileSync(packages.resolve(file));
  const font = opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  fonts.set(file, font);
  return font;
}

/** Whether a face has a letter for a character. */
export const hasLetter = (character: string, face: Face) => letterOf(character, face).glyph.index > 0;

interface Letter {
  font: Font;
  glyph: Glyph;
}

const letters = new Map<string, Letter>();

/** A character with the face that has it; what none has becomes the mark for that. */
function letterOf(character: string, face: Face): Letter {
  const key = `${face} ${character}`;
  const known = letters.get(key) ?? findLetter(character, face);
  letters.set(key, known);
  return known;
}

function findLetter(character: string, face: Face): Letter {
  for (const alphabet of ALPHABETS) {
    const font = fontOf(face, alphabet);
    const index = font.charToGlyphIndex(character);
    if (index > 0) return { font, glyph: font.glyphs.get(index) };
  }
  const font = fontOf(face, 'latin');
  return { font, glyph: font.glyphs.get(0) };
}

/** The letters of a text with where each begins, at a size; and where the last one ends. */
function setLetters(text: string, face: Face, size: number) {
  let x = 0;
  let before: Letter | undefined;
  const set = [...text.normalize('NFC')].map((character) => {
    const letter = letterOf(character, face);
    const scale = size / letter.font.unitsPerEm;
    if (before?.font === letter.font) x += letter.font.getKerningValue(before.glyph, letter.glyph) * scale;
    const at = x;
    x += (letter.glyph.advanceWidth ?? 0) * scale;
    before = letter;
    return { ...letter, at };
  });
  return { letters: set, width: x };
}

/** Of letter size 1: a text is measured at many sizes until it fits. */
const widths = new Map<string, number>();

/** How wide a text is at a letter size, in its unit. */
export function letterWidth(text: string, face: Face, size: number): number {
  const key = `${face} ${text}`;
  const known = widths.get(key) ?? setLetters(text, face, 1).width;
  widths.set(key, known);
  return known * size;
}

/** The outlines of a text as the data of a path, from a point on its base line. */
export function letterPath(text: string, face: Face, size: number, x: number, y: number): string {
  const { letters: set } = setLetters(text, face, size);
  const characters = [...text.normalize('NFC')];
  return set
    .map(({ glyph, at }, i) => {
      const { left, top, rest } = outlineOf(glyph, `${face} ${size} ${characters[i]}`, size);
      return rest === '' ? '' : `M${tenths(x + at + left)} ${tenths(y + top)}${rest}`;
    })
    .join('');
}

const tenths = (value: number) => Math.round(value * 10) / 10;

/** Where a letter's outline begins, from its place on the base line, and how it goes on. */
interface Outline {
  left: number;
  top: number;
  rest: string;
}

/** Of every letter at every size: a guide's cards have the same ones over and over. */
const outlines = new Map<string, Outline>();

function outlineOf(glyph: Glyph, key: string, size: number): Outline {
  const known = outlines.get(key);
  if (known) return known;
  const { commands } = glyph.getPath(0, 0, size);
  const [first] = commands;
  const outline =
    first?.type === 'M'
      ? { left: first.x, top: first.y, rest: pathData(commands).replace(/^m-?[\d.]+ ?-?[\d.]+/, '') }
      : { left: 0, top: 0, rest: '' };
  outlines.set(key, outline);
  return outline;
}

/** Each step from the one before, to a tenth of the drawing's unit, which no one sees: half as long as places would be. */
function pathData(commands: readonly PathCommand[]): string {
  let [atX, atY] = [0, 0];
  let [startX, startY] = [0, 0];
  let data = '';
  for (const it of commands) {
    if (it.type === 'Z') {
      [atX, atY] = [startX, startY];
      data += 'z';
      continue;
    }
    const places =
      it.type === 'C'
        ? [it.x1, it.y1, it.x2, it.y2, it.x, it.y]
        : it.type === 'Q'
          ? [it.x1, it.y1, it.x, it.y]
          : [it.x, it.y];
    const steps = places.map((place, i) => Math.round(place * 10) - (i % 2 === 0 ? atX : atY));
    data += it.type.toLowerCase() + steps.map((step, i) => (i > 0 && step >= 0 ? ' ' : '') + step / 10).join('');
    atX += steps.at(-2) ?? 0;
    atY += steps.at(-1) ?? 0;
    if (it.type === 'M') [startX, startY] = [atX, atY];
  }
  return data;
}
