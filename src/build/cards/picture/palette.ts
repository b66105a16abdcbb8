import { INK } from '../../../site/cards/drawing-ink.ts';
import type { Ink } from '../../../site/cards/marks.ts';

/*
 * The colours of a picture: the guide's inks as they are, and between each of them and the paper as many steps as its
 * letters and lines need to have smooth edges. Sixteen in all, so that two pixels share a byte.
 */

export type Colour = readonly [red: number, green: number, blue: number];

/** How finely a pixel is covered by a letter: 15 is wholly. */
export const COVERED = 15;

const colourOf = (hex: string): Colour => [
  Number.parseInt(hex.slice(1, 3), 16),
  Number.parseInt(hex.slice(3, 5), 16),
  Number.parseInt(hex.slice(5, 7), 16),
];

const mixed = (under: Colour, over: Colour, part: number): Colour => [
  Math.round(under[0] + (over[0] - under[0]) * part),
  Math.round(under[1] + (over[1] - under[1]) * part),
  Math.round(under[2] + (over[2] - under[2]) * part),
];

const PAPER = colourOf(INK.paper);
const INKS = Object.values(INK);

/** The tint is so much of the accent, and shows what lies under it: two, three and four of them on one another are darker. */
const TINT = 0.12;
const tints = (count: number) => 1 - (1 - TINT) ** count;

/** Parts of an ink in the steps between paper and ink; what has no letters needs fewer. */
const STEPS: ReadonlyArray<readonly [Ink, readonly number[]]> = [
  [INK.ink, [0.25, 0.5, 0.75]],
  [INK.soft, [0.25, 0.5, 0.75]],
  [INK.accent, [tints(2), tints(3), tints(4)]],
  [INK.rule, [0.5]],
];

/** The ink that a colour is a part of. */
const wholeOf = (ink: Ink) => (ink === INK.tint ? INK.accent : ink);

const all: ReadonlyArray<{ ink: Ink; colour: Colour }> = [
  ...INKS.map((ink) => ({ ink: wholeOf(ink), colour: colourOf(ink) })),
  ...STEPS.flatMap(([ink, parts]) => parts.map((part) => ({ ink, colour: mixed(PAPER, colourOf(ink), part) }))),
];

/** Every colour of a picture by its number; the paper is 0. */
export const PALETTE: readonly Colour[] = all.map((it) => it.colour);

/** The number of an ink. */
export const inkNumber = (ink: Ink): number => INKS.indexOf(ink);

const covering = new Map<string, Uint8Array>();

/**
 * What becomes of a colour under an ink: at 16 × its number and how far it is covered, the number of the new one.
 *
 * @param strength of the ink: less than 1 where what lies under it shows
 * @throws where it is none of the guide's
 */
export function coveredBy(ink: Ink, strength = 1): Uint8Array {
  const key = `${ink} ${strength}`;
  const known = covering.get(key);
  if (known) return known;
  if (!INKS.includes(ink)) throw new Error(`cards are drawn in ${INKS.join(', ')}, not in ${ink}`);
  const over = colourOf(ink);
  const table = Uint8Array.from({ length: 16 * all.length }, (_, i) => {
    const under = all[i >> 4];
    if (!under) return 0;
    // An edge between two inks has colours of these two alone: a grey letter gets no blue edges.
    const inks = [INK.paper, under.ink, wholeOf(ink)];
    return nearest(mixed(under.colour, over, (strength * (i & 15)) / COVERED), inks);
  });
  covering.set(key, table);
  return table;
}

/** The number of the colour that is most like one, among those of some inks. */
function nearest([red, green, blue]: Colour, inks: readonly Ink[]): number {
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  for (const [i, { ink, colour }] of all.entries()) {
    if (!inks.includes(ink)) continue;
    // The eye sees differences of green best (weights of luma, ITU-R BT.601; from memory).
    const far = 0.299 * (colour[0] - red) ** 2 + 0.587 * (colour[1] - green) ** 2 + 0.114 * (colour[2] - blue) ** 2;
    if (far < least) [best, least] = [i, far];
  }
  return best;
}
