import type { Figure, Unit } from '../figure.ts';
import type { Statement } from '../statement.ts';
import { WAVELENGTH_TOLERANCE_NM } from '../thresholds.ts';
import { sameDistance } from './same-distance.ts';

/** Factors for the two ends of an interval. */
export interface DistanceReach {
  low: number;
  high: number;
}

const EXACT: DistanceReach = { low: 1, high: 1 };

/** A claim for a distance further off than this, of its own, is not compared. Our own choice. */
export const NEAR_CLAIM = 0.05;

/**
 * What a peak irradiance can be at the distance that a claim is for, as factors of what was read: between the reading
 * and what the inverse square makes of it, since on the axis of LEDs that shine straight ahead nothing changes faster
 * than the light of a point. So a claim "at 15 cm" can be held against a reading at 6 in. Exactly 1 where the two are
 * one distance; undefined where they are too far apart.
 *
 * @param read distance of the reading, cm
 * @param claimed distance of the claim, cm
 */
export function distanceReach(read: number, claimed: number): DistanceReach | undefined {
  if (sameDistance(read, claimed)) return EXACT;
  if (Math.abs(read - claimed) > NEAR_CLAIM * claimed) return undefined;
  const steepest = (read / claimed) ** 2;
  return { low: Math.min(1, steepest), high: Math.max(1, steepest) };
}

/** The side on which a buyer loses by a claim: light by getting less, mains draw by paying for more. */
export type LosingSide = 'under' | 'over';

/** What a maker claims. */
export type ClaimSubject = 'irradiance' | 'mains-draw' | 'wavelength';

interface Claim {
  subject: ClaimSubject;
  claimed: number;
  /** Of the claim and of the figure. */
  unit: Unit;
}

/**
 * How a claim held up. `missed`: the panel differs from it to the buyer's loss; `apart`: it differs, and the buyer
 * loses nothing by it; `off`: a wavelength beyond the tolerance, on either side.
 */
export type ComparedOutcome = 'within' | 'missed' | 'apart' | 'off';

/** A claim beside what was measured. */
export interface ComparedClaim extends Claim {
  measured: Figure;
  outcome: ComparedOutcome;
  /** Measured over claimed, less one, in %; for wavelengths the distance from the claim, nm. */
  difference: number;
  /** How far a wavelength may be from its claim, nm; of wavelengths alone. */
  tolerance?: number;
}

/** A claim that can't be held against a measurement. */
export interface UncomparedClaim extends Claim {
  /** There where its uncertainty is not known. */
  measured: Figure | null;
  outcome: 'not-comparable';
  difference: null;
  because: Statement;
}

export type ClaimCheck = ComparedClaim | UncomparedClaim;

/**
 * Compares a claimed quantity with its figure: within, where the claim lies in the figure's 95 % interval; otherwise
 * under or over it, and missed where that is the side on which the buyer loses. Unknown uncertainty: not comparable.
 *
 * @param reach what the interval is widened by where the claim is for a distance close by (`distanceReach`)
 * @example checkQuantity('mains-draw', 700, 680 W ± 10 W, 'over') // apart, by -2.9 %
 */
export function checkQuantity(
  subject: Exclude<ClaimSubject, 'wavelength'>,
  claimed: number,
  measured: Figure,
  loss: LosingSide,
  reach: DistanceReach = EXACT,
): ClaimCheck {
  const claim = { subject, claimed, unit: measured.unit };
  if (!measured.interval95) {
    const because = measured.uncertaintyAbsent ?? { code: 'uncertainty-not-known' };
    return { ...claim, measured, outcome: 'not-comparable', difference: null, because };
  }
  const difference = (100 * (measured.value - claimed)) / claimed;
  const [low, high] = [reach.low * measured.interval95[0], reach.high * measured.interval95[1]];
  if (claimed >= low && claimed <= high) return { ...claim, measured, outcome: 'within', difference };
  const side: LosingSide = claimed > high ? 'under' : 'over';
  return { ...claim, measured, outcome: side === loss ? 'missed' : 'apart', difference };
}

/** A claim that there is nothing to hold against, with the reason. */
export function notComparable(subject: ClaimSubject, claimed: number, unit: Unit, because: Statement): UncomparedClaim {
  return { subject, claimed, unit, measured: null, outcome: 'not-comparable', difference: null, because };
}

/** Light of this wavelength, nm, and longer is infrared (IR-A from 700 nm, CIE vocabulary, from memory). */
export const INFRARED_FROM_NM = 700;

/**
 * Holds a measured peak wavelength against the nearest one claimed for its channel. Further than the
 * tolerance from it is off.
 *
 * @param claimed peak wavelengths of all channels, nm
 * @param tolerance nm
 * @returns undefined where nothing is claimed for the channel
 */
export function checkWavelength(
  claimed: readonly number[],
  measured: Figure,
  tolerance: number = WAVELENGTH_TOLERANCE_NM,
): ComparedClaim | undefined {
  const infrared = measured.value >= INFRARED_FROM_NM;
  const candidates = claimed.filter((it) => it >= INFRARED_FROM_NM === infrared);
  if (candidates.length === 0) return undefined;
  const nearest = candidates.reduce((best, it) =>
    Math.abs(it - measured.value) < Math.abs(best - measured.value) ? it : best,
  );
  const difference = measured.value - nearest;
  const outcome = Math.abs(difference) > tolerance ? 'off' : 'within';
  return { subject: 'wavelength', claimed: nearest, unit: 'nm', measured, outcome, difference, tolerance };
}
