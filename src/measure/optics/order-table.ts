import { beamHalfAngle, beamOrder } from './beam.ts';
import { type OrderNodes, orderNodes } from './gaussian-sum.ts';

/**
 * Logarithms of positive quantities as functions of x = ln m, the logarithm of a beam's order. They are worked out
 * at the Chebyshev points of the range, since they are smooth in x, and spread from there over even steps, between
 * which a cubic through the four nearest is taken.
 *
 * Relative error of a quantity against working it out afresh: below 5e-5 for a continuous field, below 2e-4 for LEDs
 * up to 3 cm apart seen from 10 cm or more (tested).
 */

/** Range of the table, as half angles in degrees: a little wider than what a fit may find. */
export const TABLE_NARROWEST = 4;
export const TABLE_WIDEST = 86;
export const LOWEST_X = Math.log(beamOrder(TABLE_WIDEST));
export const HIGHEST_X = Math.log(beamOrder(TABLE_NARROWEST));

const CHEBYSHEV = 20;
/** Even steps of the table. */
export const STEPS = 160;
export const STEP = (HIGHEST_X - LOWEST_X) / STEPS;

/** The orders at which a quantity has to be worked out. */
export const TABLE_ORDERS: readonly OrderNodes[] = Array.from({ length: CHEBYSHEV }, (_, j) =>
  orderNodes(Math.exp(LOWEST_X + ((HIGHEST_X - LOWEST_X) * (1 - chebyshevPoint(j))) / 2)),
);

/** Points of the first kind, from 1 down to -1. */
function chebyshevPoint(j: number): number {
  return Math.cos((Math.PI * (j + 0.5)) / CHEBYSHEV);
}

/**
 * From values at the Chebyshev points to those at even steps: Lagrange's polynomials by the barycentric formula,
 * weights (-1)^j sin((j + 1/2) pi / n). Source: Berrut and Trefethen 2004, SIAM Review 46(3), 501 (from memory).
 */
const SPREAD = Float64Array.from({ length: (STEPS + 1) * CHEBYSHEV });
for (let k = 0; k <= STEPS; k++) {
  const u = 1 - (2 * k) / STEPS;
  let sum = 0;
  for (let j = 0; j < CHEBYSHEV; j++) {
    const weight = (j % 2 === 0 ? 1 : -1) * Math.sin((Math.PI * (j + 0.5)) / CHEBYSHEV);
    SPREAD[k * CHEBYSHEV + j] = weight / (u - chebyshevPoint(j));
    sum += SPREAD[k * CHEBYSHEV + j] as number;
  }
  for (let j = 0; j < CHEBYSHEV; j++) {
    SPREAD[k * CHEBYSHEV + j] = (SPREAD[k * CHEBYSHEV + j] as number) / sum;
  }
}

/** Several quantities; quantity q at step k is `logs[q * (STEPS + 1) + k]`. */
export interface OrderTable {
  quantities: number;
  logs: Float64Array;
}

/**
 * Makes a table.
 *
 * @param fill writes all quantities, each above zero, for one order
 */
export function orderTable(quantities: number, fill: (of: OrderNodes, out: Float64Array) => void): OrderTable {
  const out = new Float64Array(quantities);
  const nodes = new Float64Array(quantities * CHEBYSHEV);
  TABLE_ORDERS.forEach((of, j) => {
    fill(of, out);
    for (let q = 0; q < quantities; q++) nodes[q * CHEBYSHEV + j] = Math.log(out[q] as number);
  });
  const logs = new Float64Array(quantities * (STEPS + 1));
  for (let q = 0; q < quantities; q++) {
    for (let k = 0; k <= STEPS; k++) {
      let sum = 0;
      for (let j = 0; j < CHEBYSHEV; j++) {
        sum += (SPREAD[k * CHEBYSHEV + j] as number) * (nodes[q * CHEBYSHEV + j] as number);
      }
      logs[q * (STEPS + 1) + k] = sum;
    }
  }
  return { quantities, logs };
}

/** Where x lies in a table: the first of the four steps around it, and their weights. */
export interface TablePlace {
  first: number;
  weights: readonly [number, number, number, number];
}

/** x beyond an end of the table is taken for that end. */
export function tablePlace(x: number): TablePlace {
  const at = Math.min(STEPS, Math.max(0, (x - LOWEST_X) / STEP));
  const first = Math.min(STEPS - 3, Math.max(0, Math.floor(at) - 1));
  const d = at - first;
  return {
    first,
    weights: [
      (-(d - 1) * (d - 2) * (d - 3)) / 6,
      (d * (d - 2) * (d - 3)) / 2,
      (-d * (d - 1) * (d - 3)) / 2,
      (d * (d - 1) * (d - 2)) / 6,
    ],
  };
}

/** Logarithm of a quantity at a place of its table. */
export function logAt(table: OrderTable, quantity: number, { first, weights }: TablePlace): number {
  const at = quantity * (STEPS + 1) + first;
  const { logs } = table;
  return (
    weights[0] * (logs[at] as number) +
    weights[1] * (logs[at + 1] as number) +
    weights[2] * (logs[at + 2] as number) +
    weights[3] * (logs[at + 3] as number)
  );
}

/** A quantity at an order. */
export function quantityAt(table: OrderTable, quantity: number, order: number): number {
  return Math.exp(logAt(table, quantity, tablePlace(Math.log(order))));
}

/** d ln(quantity) / d ln m, by the difference over half a step either way. */
export function slopeAt(table: OrderTable, quantity: number, x: number): number {
  const above = Math.min(HIGHEST_X, x + STEP / 2);
  const below = Math.max(LOWEST_X, x - STEP / 2);
  return (logAt(table, quantity, tablePlace(above)) - logAt(table, quantity, tablePlace(below))) / (above - below);
}

/** Half angle at x = ln m, degrees. */
export function halfAngleAt(x: number): number {
  return beamHalfAngle(Math.exp(x));
}
