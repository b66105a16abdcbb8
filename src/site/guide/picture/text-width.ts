/**
 * Widths of characters as parts of the letter size, where nothing can measure them. They are those of a wide face, so
 * that words in any other take no more room than was kept for them; measured in DejaVu Sans and rounded up.
 */
const WIDTHS: ReadonlyArray<readonly [characters: string, width: number]> = [
  ["'IJijl", 0.3],
  [' ,./:;\\|’‘', 0.35],
  ['()-[]ft', 0.4],
  ['!r', 0.45],
  ['"*_`†‡–', 0.5],
  ['?csz', 0.55],
  ['FLkvxy', 0.6],
  ['$0123456789EPSTYabdeghnopqu{}€£µ', 0.65],
  ['ABCKRVXZ', 0.7],
  ['NU', 0.75],
  ['&DGHOQ', 0.8],
  ['#+<=>^w~', 0.85],
  ['M', 0.9],
  ['%@Wm', 1],
];

const OF_CHARACTER = new Map(WIDTHS.flatMap(([characters, width]) => [...characters].map((it) => [it, width])));

/** A character that the list has not. */
const UNKNOWN = 1.1;

/** Room that words need at a letter size, in its unit. Accents take none. */
export function textWidth(text: string, size: number): number {
  let width = 0;
  for (const it of text.normalize('NFD').replace(/\p{M}/gu, '')) width += OF_CHARACTER.get(it) ?? UNKNOWN;
  return width * size;
}
