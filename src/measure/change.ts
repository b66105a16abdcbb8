import { scatterUnknown } from './difference.ts';
import type { Figure } from './figure.ts';
import type { MetricId } from './metrics.ts';
import { number } from './numbers.ts';
import { makeFigure, productFigure } from './uncertainty.ts';

/**
 * Change of a figure from an earlier session to a later one, % of the earlier. What both sessions share (the
 * same instrument under the same calibration, the LED area) cancels; the interval is of the change itself. It has none where
 * how readings scatter is not known and would be all that is left.
 */
export function changeFigure(session: string, metric: MetricId, later: Figure, earlier: Figure): Figure {
  const ratio = productFigure(
    {
      id: `${session}/${metric}`,
      metric,
      unit: '%',
      basis: 'derived',
      method: later.method,
      lowest: Number.NEGATIVE_INFINITY,
      calculation: `100 × (${number(later.value)} ÷ ${number(earlier.value)} − 1) = ${number(100 * (later.value / earlier.value - 1))} %`,
    },
    [
      { figure: later, power: 1 },
      { figure: earlier, power: -1 },
    ],
    100,
  );
  const absent = scatterUnknown(later, earlier);
  if (absent !== undefined) {
    const identity = { ...ratio, lowest: Number.NEGATIVE_INFINITY, calculation: ratio.calculation ?? '' };
    return makeFigure(identity, ratio.value - 100, { absent });
  }
  const { interval95 } = ratio;
  return {
    ...ratio,
    value: ratio.value - 100,
    interval95: interval95 && [interval95[0] - 100, interval95[1] - 100],
  };
}
