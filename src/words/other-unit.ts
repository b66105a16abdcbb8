import type { Figure, Unit } from '../measure/figure.ts';
import { CM_PER_INCH } from '../measure/unit-factors.ts';
import { fixed, type Shown, showFigure } from './format.ts';

/** Units that readers may prefer, and how much of the other one is one of ours. */
const OTHERS: Partial<Record<Unit, { unit: string; factor: number }>> = {
  cm: { unit: 'in', factor: 1 / CM_PER_INCH },
  'cm²': { unit: 'in²', factor: 1 / CM_PER_INCH ** 2 },
  // 1 µT = 10 mG.
  µT: { unit: 'mG', factor: 10 },
};

/** A length in cm as readers of inches write it: `5.9 in`. */
export const inInches = (cm: number) => `${fixed(cm / CM_PER_INCH, 1)} in`;

/** A figure in the unit that some readers prefer; undefined where there is none other. */
export function inOtherUnit(figure: Figure, currency: string): Shown | undefined {
  const other = OTHERS[figure.unit];
  if (!other) return undefined;
  const { factor, unit } = other;
  const { interval95, standardUncertainty } = figure;
  const shown = showFigure(
    {
      ...figure,
      value: factor * figure.value,
      standardUncertainty: standardUncertainty === null ? null : factor * standardUncertainty,
      interval95: interval95 && [factor * interval95[0], factor * interval95[1]],
    },
    currency,
  );
  return { ...shown, unit, text: shown.text.replace(figure.unit, unit) };
}

/** How the script that switches units tells the two ways apart: areas go with lengths. */
export function unitKeys(own: string, other: string): { unitKey: string; otherKey: string } {
  if (own === 'currency') return { unitKey: 'base', otherKey: 'priced' };
  return { unitKey: own.replace('²', ''), otherKey: other.replace('²', '') };
}
