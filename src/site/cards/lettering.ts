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

/** A character in the face that has it. */
export interface Letter {
  /** Stands for the outline: the same letter of the same face, the same key. */
  key: string;
  font: Font;
  glyph: Glyph;
  /** Of the typeface to a letter size. */
  units: number;
}

const letters = new Map<string, Letter>();

/** A character with the face that has it; what none has becomes the mark for that. */
function letterOf(character: string, face: Face): Letter {
  const key = `${face} ${character}`;
  const known = letters.get(key) ?? findLetter(character, face, key);
  letters.set(key, known);
  return known;
}

function findLetter(character: string, face: Face, key: string): Letter {
  for (const alphabet of ALPHABETS) {
    const font = fontOf(face, alphabet);
    const index = font.charToGlyphIndex(character);
    if (index > 0) return { key, font, glyph: font.glyphs.get(index), units: font.unitsPerEm };
  }
  const font = fontOf(face, 'latin');
  return { key: `${face} none`, font, glyph: font.glyphs.get(0), units: font.unitsPerEm };
}

/** A letter of a line, and where it begins, in letter sizes. */
export interface SetLetter {
  letter: Letter;
  at: number;
}

/** A line of text, set. */
export interface SetLine {
  letters: readonly SetLetter[];
  /** In letter sizes. */
  width: number;
}

/** A text is measured at many sizes until it fits, and stands on a card in every format. */
const lines = new Map<string, SetLine>();
/** Lines that are kept: all of many panels’ cards, a few megabytes. A thousand panels have far more. */
const MOST_LINES = 1000;

/** The letters of a text with where each begins; set once. */
export function setLine(text: string, face: Face): SetLine {
  const key = `${face} ${text}`;
  const known = lines.get(key) ?? newLine(text, face);
  if (lines.size >= MOST_LINES) lines.clear();
  lines.set(key, known);
  return known;
}

function newLine(text: string, face: Face): SetLine {
  let x = 0;
  let before: Letter | undefined;
  const set = [...text.normalize('NFC')].map((character) => {
    const letter = letterOf(character, face);
    if (before?.font === letter.font) x += letter.font.getKerningValue(before.glyph, letter.glyph) / letter.units;
    const at = x;
    x += (letter.glyph.advanceWidth ?? 0) / letter.units;
    before = letter;
    return { letter, at };
  });
  return { letters: set, width: x };
}

/** How wide a text is at a letter size, in its unit. */
export function letterWidth(text: string, face: Face, size: number): number {
  return setLine(text, face).width * size;
}

const outlines = new Map<string, string>();

/** How a letter is drawn, as data of a path in units of its typeface, downwards from the base line; empty for a blank. */
export function letterOutline(letter: Letter): string {
  const known = outlines.get(letter.key) ?? outlineOf(letter);
  outlines.set(letter.key, known);
  return known;
}

/** Each step from the one before, to a tenth of the typeface's unit: shorter than places would be. */
function outlineOf({ glyph, units }: Letter): string {
  let [atX, atY] = [0, 0];
  let [startX, startY] = [0, 0];
  let data = '';
  for (const it of glyph.getPath(0, 0, units).commands) {
    if (it.type === 'Z') {
      [atX, atY] = [startX, startY];
      data += 'z';
      continue;
    }
    const steps = placesOf(it).map((place, i) => Math.round(place * 10) - (i % 2 === 0 ? atX : atY));
    // Outlines may begin with a line that goes nowhere.
    if (steps.every((step) => step === 0) && it.type !== 'M') continue;
    data += it.type.toLowerCase() + steps.map((step, i) => (i > 0 && step >= 0 ? ' ' : '') + step / 10).join('');
    atX += steps.at(-2) ?? 0;
    atY += steps.at(-1) ?? 0;
    if (it.type === 'M') [startX, startY] = [atX, atY];
  }
  return data;
}

function placesOf(it: Exclude<PathCommand, { type: 'Z' }>): number[] {
  if (it.type === 'C') return [it.x1, it.y1, it.x2, it.y2, it.x, it.y];
  return it.type === 'Q' ? [it.x1, it.y1, it.x, it.y] : [it.x, it.y];
}
