import type { Figure } from './figure.ts';
import { REPEATABILITY } from './meter.ts';
import { linearFigure, productFigure } from './uncertainty.ts';

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
  | { kind: 'unknown'; reason: string };

/**
 * Ratios closer to 1, and relative uncertainties of them smaller, than this are those of equal exact figures: figures
 * that were kept to six digits differ by as much.
 */
const EQUAL = 5e-6;

/**
 * Ratio of a figure to another one, with its 95 % interval (JCGM 100:2008, 5.1.6 and 5.2.2: errors that both share
 * cancel). The interval is taken evenly about the logarithm of the ratio, exp(ln r ± k u(r)/r), so that it is never
 * below zero and the ratio the other way round has the reciprocal interval: who is compared with whom changes nothing.
 *
 * Unknown where either has no known uncertainty, is a bound, or is not above zero, and where only the scatter that is
 * not known would tell the two apart (`scatterUnknown`).
 */
export function ratioTo(figure: Figure, other: Figure): Difference {
  const missing = missingFrom(figure, other);
  if (missing) return { kind: 'unknown', reason: missing };
  if (!(figure.value > 0 && other.value > 0)) return { kind: 'unknown', reason: 'there is no ratio to nought' };
  const ratio = productFigure(identityOf(figure, other, '1'), [
    { figure, power: 1 },
    { figure: other, power: -1 },
  ]);
  const { value, standardUncertainty, coverageFactor } = ratio;
  const reach = ((coverageFactor as number) * (standardUncertainty as number)) / value;
  if (reach <= EQUAL) {
    const isSame = Math.abs(value - 1) <= EQUAL;
    return { kind: isSame ? 'same' : 'apart', value, interval95: [value, value] };
  }
  const interval95 = [value * Math.exp(-reach), value * Math.exp(reach)] as const;
  // The logarithm decides, which is the same both ways.
  return { kind: Math.abs(Math.log(value)) > reach ? 'apart' : 'tie', value, interval95 };
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
  const reach = (coverageFactor as number) * (standardUncertainty as number);
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

/** Why two figures can't be held against each other; undefined where they can. */
function missingFrom(figure: Figure, other: Figure): string | undefined {
  for (const it of [figure, other]) {
    if (it.bound) return 'one of the two is only a bound';
    if (it.standardUncertainty === null) return it.uncertaintyAbsent ?? 'an uncertainty is not known';
  }
  return scatterUnknown(figure, other);
}

/**
 * Why the uncertainty of a difference or a ratio is not known although that of both figures is: how the readings behind
 * one of them scatter is in no budget, and an error that both share cancels. What is left, the steps of a display as a
 * rule, would make the two look far surer apart than they are. Where they share nothing, both calibrations stand in
 * full, and outweigh the scatter as they do in the figures themselves.
 */
export function scatterUnknown(figure: Figure, other: Figure): string | undefined {
  if (figure === other) return undefined;
  const silent = [...figure.unassessed, ...other.unassessed].find((it) => it.source === REPEATABILITY);
  if (!silent) return undefined;
  const keys = new Set(figure.budget.map((line) => line.key));
  return other.budget.some((line) => keys.has(line.key)) ? silent.reason : undefined;
}
