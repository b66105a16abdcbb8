import type { Figure } from './figure.ts';
import { unassessedScatter } from './instrument/instrument.ts';
import { type ErrorShares, errorShares, type SharedErrors, togetherIn } from './shared-errors.ts';
import type { Statement } from './statement.ts';
import { coverageFactor, linearFigure } from './uncertainty.ts';

declare module './statement.ts' {
  interface StatementData {
    /** Why two figures can't be held against each other. */
    'one-only-a-bound': object;
    'an-uncertainty-not-known': object;
    'no-ratio-to-nought': object;
  }
}

/** How one figure lies to another of the same kind. */
export type Difference =
  | {
      /** `apart`: the 95 % interval leaves out "no difference"; `tie`: it holds it; `same`: both are exact and equal. */
      kind: 'apart' | 'tie' | 'same';
      /** The ratio, or the difference in the figures' unit. */
      value: number;
      /** 95 %; both ends are the value where the two are exact. */
      interval95: readonly [number, number];
    }
  | { kind: 'unknown'; reason: Statement };

/**
 * Ratios closer to 1, and relative uncertainties of them smaller, than this are those of equal exact figures: far less
 * than any reading tells, far more than what packing a figure for the browser takes off it.
 */
const EQUAL = 5e-6;

/**
 * Ratio of a figure to another one, with its 95 % interval (JCGM 100:2008, 5.2.2: errors that both share cancel as far
 * as they move both alike). The interval is Fieller's (Fieller 1954, Journal of the Royal Statistical Society B
 * 16(2):175-185, from memory): the ratios q for which figure - q other is no further from nought than its own 95 %
 * uncertainty. That is the 2.5 to 97.5 % range of the ratio where both are drawn with their errors, however unlike the
 * two uncertainties are. The ratio the other way round has the reciprocal interval: who is compared with whom changes
 * nothing.
 *
 * Unknown where either has no known uncertainty, is a bound, or is not above zero, and where only the scatter that is
 * not known would tell the two apart (`scatterUnknown`).
 */
export function ratioTo(figure: Figure, other: Figure): Difference {
  const missing = ratioMissing(figure, other);
  if (missing) return { kind: 'unknown', reason: missing };
  const [own, others] = errorShares([figure, other]);
  return ratioOf(figure.value / other.value, own, others);
}

/** True where readings do not tell which of two is more: the interval holds "no difference", or there is none at all. */
export function isTie({ kind }: Difference): boolean {
  return kind === 'tie' || kind === 'same';
}

/** A ratio with its interval from the errors of what is above and below its line. */
export function ratioOf(value: number, above: ErrorShares, below: ErrorShares): Difference {
  const errors = togetherIn(above, below);
  const k = coverageFactor(errors.degreesOfFreedom);
  const reach = k * errors.difference;
  if (reach <= EQUAL) {
    const isSame = Math.abs(value - 1) <= EQUAL;
    return { kind: isSame ? 'same' : 'apart', value, interval95: [value, value] };
  }
  const [low, high] = fieller(k, errors);
  const interval95 = [value * low, value * high] as const;
  return { kind: interval95[0] > 1 || interval95[1] < 1 ? 'apart' : 'tie', value, interval95 };
}

/**
 * Ends of Fieller's interval over the ratio itself: the roots q of (1 - q)^2 = k^2 (a - 2 q c + q^2 b), with the relative
 * variances a above and b below the line and their covariance c. Where either figure's own interval reaches nought there
 * are no two ends; then the interval is taken evenly about the logarithm, which has the same value both ways round too.
 */
function fieller(k: number, { above, below, shared, difference }: SharedErrors): readonly [number, number] {
  const k2 = k * k;
  if (k2 * above >= 1 || k2 * below >= 1) return [Math.exp(-k * difference), Math.exp(k * difference)];
  const middle = 1 - k2 * shared;
  const root = k * Math.sqrt(difference ** 2 - k2 * Math.max(0, above * below - shared ** 2));
  return [(middle - root) / (1 - k2 * below), (middle + root) / (1 - k2 * below)];
}

/**
 * A figure less another one, in their unit, with its 95 % interval (JCGM 100:2008, 5.1.2 and 5.2.2: errors that both
 * share cancel as far as they move both alike). For figures that are no quantities to be divided: angles, levels in
 * decibels, shares in percent.
 *
 * Unknown where either has no known uncertainty or is a bound, and where only the scatter that is not known would tell
 * the two apart (`scatterUnknown`).
 */
export function differenceFrom(figure: Figure, other: Figure): Difference {
  const missing = missingFrom(figure, other);
  if (missing) return { kind: 'unknown', reason: missing };
  const difference = linearFigure({ ...identityOf(figure, other, figure.unit), lowest: Number.NEGATIVE_INFINITY }, [
    { figure, sensitivity: 1 },
    { figure: other, sensitivity: -1 },
  ]);
  const { value, standardUncertainty, coverageFactor } = difference;
  if (standardUncertainty === null || coverageFactor === null) {
    return { kind: 'unknown', reason: difference.uncertaintyAbsent ?? { code: 'an-uncertainty-not-known' } };
  }
  const reach = coverageFactor * standardUncertainty;
  const equal = EQUAL * Math.max(Math.abs(figure.value), Math.abs(other.value));
  if (reach <= equal) {
    return { kind: Math.abs(value) <= equal ? 'same' : 'apart', value, interval95: [value, value] };
  }
  return { kind: Math.abs(value) > reach ? 'apart' : 'tie', value, interval95: [value - reach, value + reach] };
}

const identityOf = (figure: Figure, other: Figure, unit: Figure['unit']) => ({
  id: `${figure.id}/against/${other.id}`,
  metric: figure.metric,
  unit,
  basis: 'derived' as const,
  method: figure.method,
});

/** Why there is no ratio of two figures; undefined where there is one. */
export function ratioMissing(figure: Figure, other: Figure): Statement | undefined {
  const missing = missingFrom(figure, other);
  return missing ?? (figure.value > 0 && other.value > 0 ? undefined : { code: 'no-ratio-to-nought' });
}

/** Why two figures can't be held against each other; undefined where they can. */
function missingFrom(figure: Figure, other: Figure): Statement | undefined {
  for (const it of [figure, other]) {
    if (it.bound) return { code: 'one-only-a-bound' };
    if (it.standardUncertainty === null) return it.uncertaintyAbsent ?? { code: 'an-uncertainty-not-known' };
  }
  return scatterUnknown(figure, other);
}

/**
 * Why the uncertainty of a difference or a ratio is not known although that of both figures is: how the readings behind
 * one of them scatter is in no budget, and an error that both share cancels. What is left, the steps of a display as a
 * rule, would make the two look far surer apart than they are. Where they share nothing, both calibrations stand in
 * full, and outweigh the scatter as they do in the figures themselves.
 */
export function scatterUnknown(figure: Figure, other: Figure): Statement | undefined {
  if (figure === other) return undefined;
  const silent = unassessedScatter([...figure.unassessed, ...other.unassessed]);
  if (!silent) return undefined;
  const keys = new Set(figure.budget.map((it) => it.source.key));
  return other.budget.some((it) => keys.has(it.source.key)) ? silent.reason : undefined;
}
