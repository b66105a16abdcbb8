import type { Readings, SharedError } from './error-sources.ts';
import type { OrderNodes } from './gaussian-sum.ts';
import { orderNodes } from './gaussian-sum.ts';
import { type FitCurve, type FitData, fitCurve, lowestStep, MODEL_UNCERTAINTY } from './order-fit.ts';
import { type OrderTable, slopeAt } from './order-table.ts';
import { type Answers, GEOMETRY } from './panel-quantities.ts';

/** The readings that give the emitted power, and their quantities in the table. */
export interface Scale {
  readings: Readings;
  quantities: readonly number[];
  /** Quantity of their mean. */
  mean: number;
}

/** A fit made ready. */
export interface Fitted {
  data: FitData;
  curve: FitCurve;
  /** Step of the table from which to walk downhill. */
  from: number;
}

/**
 * Makes the fit of some readings ready. How errors act depends on the order, so a first fit without the shared ones
 * says at which order to look at them.
 *
 * @param answers how the quantities answer to the geometry, for an order
 */
export function prepareFit(
  readings: Readings,
  quantities: readonly number[],
  table: OrderTable,
  errors: readonly SharedError[],
  scale: Scale,
  answers: (of: OrderNodes) => Answers,
): Fitted {
  const logs = Float64Array.from(readings.values, Math.log);
  const independent = Float64Array.from(readings.values, (_, j) =>
    Math.hypot(readings.scatter[j] as number, readings.rounding[j] as number, MODEL_UNCERTAINTY),
  );
  const first = fitCurve({ logs, quantities, table, independent, shared: [] });
  const x = first.settle(logs, lowestStep(first.chiSquares(logs)));
  const at = answers(orderNodes(Math.exp(x)));
  const oblique = angularShares(scale, quantities, table, x);
  const shared = errors.map(({ effect }) =>
    Float64Array.from(readings.values, (value, j) => {
      const q = quantities[j] as number;
      let sum = (effect.reading ?? 0) + (effect.offset ?? 0) / value + (effect.angular ?? 0) * (oblique[j] as number);
      for (const side of GEOMETRY) sum -= (effect[side] ?? 0) * (at[side][q] as number);
      return sum;
    }),
  );
  const data = { logs, quantities, table, independent, shared };
  const curve = fitCurve(data);
  return { data, curve, from: lowestStep(curve.chiSquares(logs)) };
}

/**
 * How an oblique response shows in readings, relative to its effect on the mean of those that give the power. It is
 * taken for a sensor whose response falls as a slightly higher power of the cosine, cos^(1 + k): our own choice. That
 * multiplies the model by cos^k at each reading, which is the model of order m + k without its factor (m + k + 1), so
 * that its effect for each k is d ln g / dm - 1 / (m + 1).
 */
function angularShares(scale: Scale, quantities: readonly number[], table: OrderTable, x: number): number[] {
  const m = Math.exp(x);
  const loss = (q: number) => slopeAt(table, q, x) / m - 1 / (m + 1);
  const shares = meanShares(scale.readings.values);
  const mean = scale.quantities.reduce((sum, q, j) => sum + (shares[j] as number) * loss(q), 0);
  return quantities.map((q) => loss(q) / mean);
}

/** The share of each reading in their mean. */
export function meanShares(values: readonly number[]): number[] {
  const total = values.reduce((sum, value) => sum + value, 0);
  return values.map((value) => value / total);
}
