import type { Figure } from '../figure.ts';
import { WAVELENGTH_TOLERANCE_NM } from '../thresholds.ts';
import { sameDistance } from './same-distance.ts';

/**
 * How a claim held up. `missed`: the panel differs from it to the buyer's loss; `apart`: it differs, and the buyer
 * loses nothing by it; `off`: a wavelength beyond the tolerance, on either side.
 */
export type ClaimOutcome = 'within' | 'missed' | 'apart' | 'off' | 'not comparable';

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

/** A maker's claim beside what was measured. */
export interface ClaimCheck {
  /** What is claimed: `irradiance`, `mains draw`, `wavelength 660 nm`. */
  subject: string;
  claimed: number;
  /** Canonical unit of both. */
  unit: string;
  measured: Figure | null;
  outcome: ClaimOutcome;
  /** Measured over claimed, less one, in %; null where it can't be compared. For wavelengths: the distance in nm. */
  difference: number | null;
  /** The outcome as a sentence part, with its number: "41 % under the claim: missed". */
  text: string;
}

/**
 * Compares a claimed quantity with its figure: within, where the claim lies in the figure's 95 % interval; otherwise
 * so much under or over it, and missed where that is the side on which the buyer loses. Unknown uncertainty: not
 * comparable.
 *
 * @param reach what the interval is widened by where the claim is for a distance close by (`distanceReach`)
 * @example checkQuantity('mains draw', 700, 680 W ± 10 W, 'over').text // '2.9 % under the claim'
 */
export function checkQuantity(
  subject: string,
  claimed: number,
  measured: Figure,
  loss: LosingSide,
  reach: DistanceReach = EXACT,
): ClaimCheck {
  const base = { subject, claimed, unit: measured.unit, measured };
  const difference = (100 * (measured.value - claimed)) / claimed;
  if (!measured.interval95) {
    return {
      ...base,
      outcome: 'not comparable',
      difference: null,
      text: `not comparable: ${measured.uncertaintyAbsent}`,
    };
  }
  const [low, high] = [reach.low * measured.interval95[0], reach.high * measured.interval95[1]];
  const size = `${Number(Math.abs(difference).toPrecision(2))} %`;
  if (claimed >= low && claimed <= high) {
    return { ...base, outcome: 'within', difference, text: 'held, within the uncertainty' };
  }
  const side: LosingSide = claimed > high ? 'under' : 'over';
  const words = `${size} ${side} the claim`;
  return side === loss
    ? { ...base, outcome: 'missed', difference, text: `${words}: missed` }
    : { ...base, outcome: 'apart', difference, text: words };
}

/** A claim that there is nothing to hold against, with the reason. */
export function notComparable(subject: string, claimed: number, unit: string, reason: string): ClaimCheck {
  return {
    subject,
    claimed,
    unit,
    measured: null,
    outcome: 'not comparable',
    difference: null,
    text: `not comparable: ${reason}`,
  };
}

/** Light of this wavelength, nm, and longer is infrared (IR-A from 700 nm, CIE vocabulary, from memory). */
export const INFRARED_FROM_NM = 700;

/**
 * Holds a measured peak wavelength against the nearest one claimed for its channel. Further than 10 nm from it
 * (our own tolerance) is off.
 *
 * @param claimed peak wavelengths of all channels, nm
 * @returns undefined where nothing is claimed for the channel
 */
export function checkWavelength(claimed: readonly number[], measured: Figure): ClaimCheck | undefined {
  const infrared = measured.value >= INFRARED_FROM_NM;
  const candidates = claimed.filter((it) => it >= INFRARED_FROM_NM === infrared);
  if (candidates.length === 0) return undefined;
  const nearest = candidates.reduce((best, it) =>
    Math.abs(it - measured.value) < Math.abs(best - measured.value) ? it : best,
  );
  const difference = measured.value - nearest;
  const off = Math.abs(difference) > WAVELENGTH_TOLERANCE_NM;
  const size = `${Number(Math.abs(difference).toPrecision(3))} nm`;
  return {
    subject: `wavelength ${nearest} nm`,
    claimed: nearest,
    unit: 'nm',
    measured,
    outcome: off ? 'off' : 'within',
    difference,
    text: off
      ? `off by ${size}, to the ${difference > 0 ? 'longer' : 'shorter'} side`
      : `held, ${size} from it (tolerance ${WAVELENGTH_TOLERANCE_NM} nm)`,
  };
}
