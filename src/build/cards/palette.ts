import { INK, LIGHT } from '../../site/cards/drawing-ink.ts';

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

const PAPER = colourOf(INK.paper);

const onPaper = (ink: string, part: number): Colour => {
  const [red, green, blue] = colourOf(ink);
  const mixed = (under: number, over: number) => Math.round(under + (over - under) * part);
  return [mixed(PAPER[0], red), mixed(PAPER[1], green), mixed(PAPER[2], blue)];
};

/** Every colour of a picture by its number; the paper is 0. */
export const PALETTE: readonly Colour[] = [
  ...Object.values(INK).map(colourOf),
  ...STEPS.flatMap(([ink, parts]) => parts.map((part) => onPaper(ink, part))),
];

/** Steps of red, green and blue that are told apart: a tint and a step of the ink lie nearer than 32 would part them. */
const STEPS_APART = 64;
const UNKNOWN = 255;

/** The numbers of colours that pixels were found to be most like. */
export const KNOWN_NUMBERS = new Uint8Array(STEPS_APART ** 3).fill(UNKNOWN);

/**
 * The number of the colour that is most like a pixel.
 *
 * @param pixel red, green, blue and opacity from the lowest byte up; its opacity is passed over
 * @param known handed over by who asks for two million: a third faster than to look for it each time
 */
export function colourNumber(pixel: number, known = KNOWN_NUMBERS): number {
  const place = ((pixel & 0xfc) << 10) | ((pixel >> 4) & 0xfc0) | ((pixel >> 18) & 0x3f);
  const number = known[place] as number;
  if (number !== UNKNOWN) return number;
  const nearest = nearestTo(pixel & 0xfc, (pixel >> 8) & 0xfc, (pixel >> 16) & 0xfc);
  known[place] = nearest;
  return nearest;
}

/** Of all pixels that stand for one another the middle is compared: the colour does not hang on which came first. */
function nearestTo(...least: Colour): number {
  const [red, green, blue] = least.map((it) => it + 1.5) as unknown as Colour;
  let [best, shortest] = [0, Number.POSITIVE_INFINITY];
  for (const [i, colour] of PALETTE.entries()) {
    // The eye sees differences of green best (weights of luma, ITU-R BT.601; from memory).
    const far = 0.299 * (colour[0] - red) ** 2 + 0.587 * (colour[1] - green) ** 2 + 0.114 * (colour[2] - blue) ** 2;
    if (far < shortest) [best, shortest] = [i, far];
  }
  return best;
}
