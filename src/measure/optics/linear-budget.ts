import type { Contribution } from '../figure.ts';
import { lineWith } from '../uncertainty.ts';
import type { ErrorLine } from './error-sources.ts';
import { MODEL_UNCERTAINTY } from './order-fit.ts';
import { HIGHEST_X, LOWEST_X, STEP } from './order-table.ts';
import { meanShares } from './prepare-fit.ts';
import { BIAS, HALF_ANGLE, isRatio, type ResponseModel } from './response.ts';

/**
 * First-order budgets of all results: each shared error alone at plus and minus one standard uncertainty through the
 * whole calculation, order and all, and half the difference; the readings' own errors apart by what they do to the
 * mean and to the order. A contribution is the error of the stated value, so a meter that reads high has a positive
 * one, and so has it in the session's other figures.
 *
 * Source: numerical sensitivities, JCGM 100:2008, 5.1.3, note 2 (number from memory).
 *
 * @param values stated values of the results
 */
export function linearBudgets(model: ResponseModel, values: readonly number[], session: string): Contribution[][] {
  const { parts, outputs } = model;
  const { errors, scale, fitted, order } = parts;
  const count = fitted?.data.logs.length ?? 0;
  const shared = new Float64Array(errors.length);
  const own = new Float64Array(count);
  const budgets: Contribution[][] = values.map(() => []);
  /** @param moves what one standard uncertainty moves a result by: relative, or in degrees for the half angle */
  const add = (line: ErrorLine, moves: (output: number) => number) => {
    values.forEach((value, i) => {
      const contribution = (i === HALF_ANGLE ? -1 : -value) * moves(i);
      if (Math.abs(contribution) > 1e-9 * Math.abs(value)) budgets[i]?.push(lineWith(line, contribution));
    });
  };
  const up = new Float64Array(outputs);
  const down = new Float64Array(outputs);
  const none = new Float64Array(outputs);
  model.resultsFor(model.orderFor(shared, own), shared, 0, 0, none);
  // Of the values and not of their logarithms, so that a scale error of 5 % is one of 5 % and not of ln 1.05.
  const from = (i: number, to: Float64Array) => {
    const moved = (to[i] as number) - (none[i] as number);
    return i === HALF_ANGLE ? moved : Math.exp(moved);
  };
  const half = (i: number) => (from(i, up) - from(i, down)) / 2;

  errors.forEach(({ line }, k) => {
    shared[k] = 1;
    model.resultsFor(model.orderFor(shared, own), shared, 0, 0, up);
    shared[k] = -1;
    model.resultsFor(model.orderFor(shared, own), shared, 0, 0, down);
    shared[k] = 0;
    add(line, half);
  });

  if (scale) {
    const { values: read, scatter, rounding, scatterLine, roundingLine } = scale.readings;
    const shares = meanShares(read);
    const pooled = (each: readonly number[]) => Math.hypot(...each.map((u, j) => u * (shares[j] as number)));
    add(scatterLine, (i) => (isRatio(i) ? 0 : -pooled(scatter)));
    add(roundingLine, (i) => (isRatio(i) ? 0 : -pooled(rounding)));
    const misfit = pooled(shares.map(() => MODEL_UNCERTAINTY));
    const line = normalLine(
      `${session}/uneven-panel`,
      'Panel less even than its model',
      `${100 * MODEL_UNCERTAINTY} % at each reading on its own, normal; our own choice`,
    );
    add(line, (i) => (i === BIAS ? misfit : isRatio(i) ? 0 : -misfit));
  }

  if (fitted) {
    const { independent } = fitted.data;
    let square = 0;
    for (let j = 0; j < count; j++) {
      const u = independent[j] as number;
      own[j] = u;
      const above = model.orderFor(shared, own);
      own[j] = -u;
      square += ((above - model.orderFor(shared, own)) / 2) ** 2;
      own[j] = 0;
    }
    const x = Math.log(order.order);
    const step = Math.min(STEP, (HIGHEST_X - x) / 2, (x - LOWEST_X) / 2);
    model.resultsFor(x + step, shared, 0, 0, up);
    model.resultsFor(x - step, shared, 0, 0, down);
    const line = normalLine(
      `${session}/beam-order`,
      'Order of the beam',
      `from what the ${count} readings of the ${order.source} are off by on their own, by least squares over ln m`,
    );
    add(line, (i) => (half(i) / step) * Math.sqrt(square));
  }
  return budgets;
}

function normalLine(key: string, source: string, evaluation: string): ErrorLine {
  return {
    key,
    source,
    type: 'B',
    distribution: 'normal',
    degreesOfFreedom: Number.POSITIVE_INFINITY,
    evaluation,
  };
}
