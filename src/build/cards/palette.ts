import { INK, LIGHT } from '../../site/cards/drawing-ink.ts';
import type { Ink } from '../../site/cards/marks.ts';

/*
 * The colours of a picture: the guide's inks and its tints as they are, and between them and the paper as many steps as
 * letters need to have smooth edges. Sixteen in all, so that two pixels share a byte. The same ones for every card: to
 * look for the colours that suit a picture best takes longer than to draw it, and those that it found were no nearer.
 */

/** Parts of red, green and blue, of 255. */
export type Colour = readonly [red: number, green: number, blue: number];

/**
 * Parts of an ink between it and the paper. Soft ink is three quarters of the ink's way, so its steps are the ink's too.
 * Those of the accent are up to four tints on one another; the first of these is an ink of its own.
 */
const STEPS: ReadonlyArray<readonly [ink: string, parts: readonly number[]]> = [
  [INK.soft, [1 / 6, 2 / 6, 3 / 6, 4 / 6, 5 / 6]],
  [INK.ink, [7 / 8]],
  [INK.accent, [...[2, 3, 4].map((count) => 1 - (1 - LIGHT) ** count), 0.7]],
];

const colourOf = (hex: string): Colour => [
  Number.parseInt(hex.slice(1, 3), 16),
  Number.parseInt(hex.slice(3, 5), 16),
  Number.parseInt(hex.slice(5, 7), 16),
];

/** So much of a colour over another. */
const over = (under: Colour, upper: Colour, part: number): Colour => {
  const mixed = (i: 0 | 1 | 2) => under[i] + (upper[i] - under[i]) * part;
  return [mixed(0), mixed(1), mixed(2)];
};

const onPaper = (ink: string, part: number): Colour => {
  const [red, green, blue] = over(colourOf(INK.paper), colourOf(ink), part);
  return [Math.round(red), Math.round(green), Math.round(blue)];
};

/** Every colour of a picture by its number; the paper is 0. */
export const PALETTE: readonly Colour[] = [
  ...Object.values(INK).map(colourOf),
  ...STEPS.flatMap(([ink, parts]) => parts.map((part) => onPaper(ink, part))),
];

/** How much of a pixel something covers is told in steps up to all of it: as many as there are numbers of colours. */
export const FULL = 15;

/** The number of a colour that a pixel gets: by how much of it an ink covers (times sixteen), and by the number it had. */
export type Coat = Uint8Array;

const coats = new Map<string, Coat>();

/** An ink so strong, as what it makes of each colour. Always the same object: by it two inks are told apart. */
export function coatOf(ink: Ink, strength = 1): Coat {
  const key = `${ink} ${strength}`;
  const coat = coats.get(key) ?? newCoat(colourOf(ink), strength);
  coats.set(key, coat);
  return coat;
}

const newCoat = (ink: Colour, strength: number): Coat =>
  Uint8Array.from({ length: (FULL + 1) * PALETTE.length }, (_, i) => {
    const under = i % PALETTE.length;
    const part = Math.floor(i / PALETTE.length) / FULL;
    // What is not covered stays as it is, whatever else looks like it.
    return part === 0 ? under : nearestTo(over(PALETTE[under] as Colour, ink, part * strength));
  });

/** The number of the colour that is most like another. */
export function nearestTo([red, green, blue]: Colour): number {
  let [best, shortest] = [0, Number.POSITIVE_INFINITY];
  for (const [i, colour] of PALETTE.entries()) {
    // The eye sees differences of green best (weights of luma, ITU-R BT.601; from memory).
    const far = 0.299 * (colour[0] - red) ** 2 + 0.587 * (colour[1] - green) ** 2 + 0.114 * (colour[2] - blue) ** 2;
    if (far < shortest) [best, shortest] = [i, far];
  }
  return best;
}
