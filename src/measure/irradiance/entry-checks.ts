import { median } from 'simple-statistics';
import type { Statement } from '../statement.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Ends of the meter's range, in the reading's unit, as the content writes it. */
    'entry-above-range': { value: number; unit: string; instrument: string; highest: number };
    'entry-below-range': { value: number; unit: string; instrument: string; lowest: number };
    /** A reading that is others of its kind times a factor that units differ by. */
    'entry-unit-slip': { value: number; usual: number; unit: string; factor: number };
    'entry-repeats-apart': { value: number; others: number; unit: string; percent: number };
    'entry-beyond-above-field': { value: number; edge: number };
    'entry-rises-outwards': { value: number; distance: number; nearer: number; nearerDistance: number };
    'entry-read-twice': { counts: string };
    'entry-no-place': { path: string };
    'entry-warm-up-missing': object;
  }
}

/** Factors that a slip makes: a digit or a decimal point, W/m² for mW/cm², milliwatts for watts. */
const FACTORS = [10, 100, 1000];
/** How near to a factor the ratio of a reading to its like lies where it is taken for a slip. Our own choice. */
const NEAR = 0.5;
/** How far others may differ among themselves for one to be held against them: with a slip among them none tells. */
const ALIKE = 5;
/** What a reading may rise by chance where it should fall, and repeats may differ. Our own choices. */
const RISE = 0.05;
export const REPEATS_APART = 0.1;
/** What converting a unit may leave of a reading at the very end of the range. */
const DUST = 1e-9;

/** A reading that the meter can't show, or that lies under what it can. Its range in the reading's unit. */
export function rangeFinding(
  value: number,
  unit: string,
  { name, range }: { name: string; range: { from: number; to: number } },
  isBound: boolean,
): Statement | undefined {
  if (value > range.to * (1 + DUST))
    return { code: 'entry-above-range', value, unit, instrument: name, highest: range.to };
  if (!isBound && value > 0 && value < range.from * (1 - DUST)) {
    return { code: 'entry-below-range', value, unit, instrument: name, lowest: range.from };
  }
  return undefined;
}

/**
 * A reading that is others of its kind times a factor between units or a slipped digit.
 *
 * @param others readings that should be like it; of fewer than two nothing is said
 */
export function unitSlipFinding(value: number, others: readonly number[], unit: string): Statement | undefined {
  if (others.length < 2 || value <= 0) return undefined;
  // Of two others, one may be the slip, and half of the two is like nothing.
  if (others.length === 2 && Math.max(...others) > ALIKE * Math.min(...others)) return undefined;
  const usual = median([...others]);
  if (usual <= 0) return undefined;
  const ratio = value / usual;
  // Corners and middle of a panel differ by two or three; ten times they do not.
  const factor = FACTORS.flatMap((it) => [it, 1 / it]).find(
    (it) => Math.abs(Math.log(ratio / it)) < Math.log(1 + NEAR),
  );
  if (factor === undefined) return undefined;
  return { code: 'entry-unit-slip', value, usual, unit, factor };
}

/** A repeat that is far from the other readings of its place. */
export function repeatFinding(value: number, others: readonly number[], unit: string): Statement | undefined {
  if (others.length === 0) return undefined;
  const middle = median([...others]);
  const apart = middle === 0 ? 0 : value / middle - 1;
  if (Math.abs(apart) <= REPEATS_APART) return undefined;
  return { code: 'entry-repeats-apart', value, others: middle, unit, percent: 100 * apart };
}

/**
 * A reading past an edge that is more than the grid has along that edge: outside the LEDs there is less light.
 *
 * @param edge mean of the grid's outer points there, mW/cm2
 */
export function beyondFinding(value: number, edge: number): Statement | undefined {
  return value > edge * (1 + RISE) ? { code: 'entry-beyond-above-field', value, edge } : undefined;
}

/** A reading farther out that is more than one nearer in; distances in cm. */
export function risingFinding(
  { value, distance }: { value: number; distance: number },
  nearer: ReadonlyArray<{ value: number; distance: number }>,
): Statement | undefined {
  const [next] = nearer.filter((it) => it.distance < distance).toSorted((a, b) => b.distance - a.distance);
  if (!next || value <= next.value * (1 + RISE)) return undefined;
  return { code: 'entry-rises-outwards', value, distance, nearer: next.value, nearerDistance: next.distance };
}
