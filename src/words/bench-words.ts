/** What a run sheet tells the person at the bench. No DOM, no ledger. */

import { type BetterGrid, type BiasRange, TYPICAL_HALF_ANGLES, worstOf } from '../measure/beam/expected-bias.ts';
import { CM_PER_INCH } from '../measure/unit-factors.ts';
import { fixed, listed } from './format.ts';

/** Usual cautions of a workshop, no source; the bench procedure has them at length. */
export const BENCH_CAUTIONS = [
  [
    'Eyes',
    'Wear eyewear of stated attenuation at the wavelengths present, past the edges too; sunglasses prove nothing. Near-infrared is hardly seen. Stand behind or beside the panel, and keep mirrors and bright tools away.',
  ],
  [
    'Mains',
    'Earthed outlet with a residual-current device, dry hands, meters that only plug in. Open no housing or lead; its inside is for licensed people. Stop at damage, a burnt smell or a tingle.',
  ],
  ['Heat', 'Hands out of the beam while you set the sensor. Housings get hot: let one cool before you carry it.'],
  [
    'Weight',
    'Hang or stand it as its maker says, on what bears its weight with room to spare, secured against tipping; lift a large one with somebody.',
  ],
  [
    'People',
    'Nobody in the room whom flicker has given seizures; with a pacemaker or another active implant, ask its clinic first.',
  ],
] as const;

export const BENCH_DEFERS = 'Local codes, the maker’s instructions and licensed practice come before this sheet.';

const percent = (fraction: number) => {
  const text = fixed(100 * fraction, Math.abs(fraction) < 0.0995 ? 1 : 0);
  return `${fraction > 0 && !/^[0.]+$/.test(text) ? '+' : ''}${text}\u00a0%`;
};

/** `−15 % to −8.2 %` */
export const biasRangeWords = ({ from, to }: BiasRange) => `${percent(from)} to ${percent(to)}`;

/** Readings that the procedure asks for at a point. */
const REPEATS = 3;
/** Below this a grid does what is asked of it, and nothing else is proposed: our own choice. */
const WORTH_IT = 0.03;

const gridWords = ({ columns, rows }: { columns: number; rows: number }) => `${columns} × ${rows}`;

/** What a grid is expected to miss, on what assumption, and what would halve it. */
export function biasWords(
  grid: { columns: number; rows: number },
  bias: BiasRange,
  { inset, points }: { inset?: BetterGrid; points?: BetterGrid },
): { answer: string; better: string[]; basis: string } {
  const angles = listed(TYPICAL_HALF_ANGLES.map((it) => `${it}°`));
  const basis = `Worked out for an evenly lit field of this size, with beams of half angle ${angles}; an uneven panel differs. A mean that is not read as the other panels’ were no longer compares with theirs; the emitted power takes this bias out whichever grid is read.`;
  const answer = `The mean of ${gridWords(grid)} points is expected to be off by ${biasRangeWords(bias)}.`;
  if (worstOf(bias) < WORTH_IT) return { answer, better: ['That is little; no denser grid is worth its time.'], basis };
  const better = [
    points &&
      `${gridWords(points.grid)} points at the same inset leave ${biasRangeWords(points.bias)}, for ${points.extra} more ${points.extra === 1 ? 'point' : 'points'}: ${REPEATS * points.extra} readings at ${REPEATS} a point.`,
    inset &&
      `An inset of ${fixed(inset.grid.inset, 1)} cm (${fixed(inset.grid.inset / CM_PER_INCH, 2)} in) leaves ${biasRangeWords(inset.bias)}, for no more points.`,
  ].filter((it) => it !== undefined);
  return {
    answer,
    better: better.length > 0 ? better : ['No grid of up to 40 points at this inset halves it, nor another inset.'],
    basis,
  };
}
