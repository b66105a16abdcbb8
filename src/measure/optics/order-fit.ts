import { beamHalfAngle, beamOrder, NARROWEST_HALF_ANGLE, WIDEST_HALF_ANGLE } from './beam.ts';
import { chiSquareExceeds } from './chi-square.ts';
import { HIGHEST_X, halfAngleAt, LOWEST_X, logAt, type OrderTable, STEP, STEPS, tablePlace } from './order-table.ts';

/** What an order was found from. */
export type OrderSource = 'sweep' | 'grid' | 'claim';

/** An order that was found. */
export interface Order {
  source: OrderSource;
  order: number;
  /** Degrees. */
  halfAngle: number;
  /** Of the half angle, degrees. */
  standardUncertainty: number;
  /** Half angles in degrees; from the readings: those whose chi-square is within 3.84 of the least. */
  interval95: readonly [number, number];
  /** Chi-square of the readings and its degrees of freedom, where it is from readings. */
  chiSquare?: number;
  degreesOfFreedom?: number;
  /** Root of the mean square of what the best beam leaves unexplained, relative to the readings. */
  residual?: number;
}

/** Half angles from the narrowest to the widest of a range, degrees. */
export type HalfAngleRange = readonly [narrowest: number, widest: number];

/**
 * An order, or the reason in words why there is none. Where readings were fitted in vain, `allowed` has the half
 * angles that they leave open: none at all where no beam explains them.
 */
export type OrderFit = { fit: Order } | { withheld: string; allowed?: readonly HalfAngleRange[] };

/** Relative standard uncertainty of a claimed half angle: our own choice; data sheets print typical values only. */
export const CLAIM_UNCERTAINTY = 0.1;

/**
 * What a reading may be off from any even panel: LEDs that differ, a probe a few mm aside. Relative standard
 * uncertainty of each point on its own; our own choice.
 */
export const MODEL_UNCERTAINTY = 0.0125;

/** No beam explains the readings when they leave more than this unexplained, relative. Our own choice. */
export const LARGEST_RESIDUAL = 0.05;

/** Nor when so large a chi-square would be rarer than this. Our own choice. */
export const SMALLEST_PROBABILITY = 0.001;

/** Root of the 95 % point of chi-square with one degree of freedom, 3.84. */
const ROOT_95 = 1.96;

/** A second beam that is less far behind the best one in chi-square than this is a rival. Our own choice: three sigma. */
export const RIVAL = 9;

/** Readings that an order is to be fitted to. Only their shape counts: a common factor is left free. */
export interface FitData {
  /** Natural logarithms of the readings. */
  logs: Float64Array;
  /** The quantity of the table that each reading is of. */
  quantities: readonly number[];
  table: OrderTable;
  /** Relative standard uncertainty of each reading on its own, MODEL_UNCERTAINTY included. */
  independent: Float64Array;
  /**
   * Errors that several readings share: for each error, what one standard uncertainty of it moves the logarithm of
   * each reading by, over what the model says. What moves all alike has no effect.
   */
  shared: readonly Float64Array[];
}

/** A fit made ready, so that it can be repeated for slightly different readings. */
export interface FitCurve {
  /** Readings in it. */
  count: number;
  /** x = ln m of the least chi-square for these logarithms of readings, walking downhill from a step of the table. */
  settle(logs: Float64Array, from: number): number;
  /** Chi-square at each step of the table. */
  chiSquares(logs: Float64Array): Float64Array;
}

/**
 * Generalised least squares with a free scale: chi-square(x) = r' W r with r = logs - ln g(x). W is the inverse of the
 * covariance (independent variances on the diagonal, and the shared errors), with the common factor projected out.
 * At the steps of the table W g and g' W g are known beforehand, so that a fit costs one product of vectors a step.
 *
 * Source: linear least squares, any textbook (from memory).
 */
export function fitCurve({ logs, quantities, table, independent, shared }: FitData): FitCurve {
  const n = logs.length;
  const weights = new Float64Array(n * n);
  for (let j = 0; j < n; j++) weights[j * n + j] = 1 / (independent[j] as number) ** 2;
  const times = (vector: Float64Array) => {
    const product = new Float64Array(n);
    for (let i = 0, at = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j < n; j++, at++) sum += (weights[at] as number) * (vector[j] as number);
      product[i] = sum;
    }
    return product;
  };
  /** Adds a direction in which the readings may move together (Sherman and Morrison); a free one for `variance` 0. */
  const loosen = (direction: Float64Array, oneOverVariance: number) => {
    const product = times(direction);
    const divisor = oneOverVariance + product.reduce((sum, it, j) => sum + it * (direction[j] as number), 0);
    if (!(divisor > 0)) return;
    for (let i = 0, at = 0; i < n; i++) {
      for (let j = 0; j < n; j++, at++) {
        weights[at] = (weights[at] as number) - ((product[i] as number) * (product[j] as number)) / divisor;
      }
    }
  };
  for (const direction of shared) loosen(direction, 1);
  loosen(new Float64Array(n).fill(1), 0);

  const projected = new Float64Array((STEPS + 1) * n);
  const own = new Float64Array(STEPS + 1);
  const model = new Float64Array(n);
  for (let k = 0; k <= STEPS; k++) {
    for (let j = 0; j < n; j++) model[j] = table.logs[(quantities[j] as number) * (STEPS + 1) + k] as number;
    const product = times(model);
    projected.set(product, k * n);
    own[k] = product.reduce((sum, it, j) => sum + it * (model[j] as number), 0);
  }

  /** Chi-square less what does not depend on the beam. */
  const relative = (y: Float64Array, k: number) => {
    let sum = 0;
    for (let j = 0, at = k * n; j < n; j++, at++) sum += (projected[at] as number) * (y[j] as number);
    return (own[k] as number) - 2 * sum;
  };
  return {
    count: n,
    settle(y, from) {
      let k = from;
      let here = relative(y, k);
      let left = k > 0 ? relative(y, k - 1) : Number.POSITIVE_INFINITY;
      let right = k < STEPS ? relative(y, k + 1) : Number.POSITIVE_INFINITY;
      while (left < here || right < here) {
        if (left < right) {
          k -= 1;
          right = here;
          here = left;
          left = k > 0 ? relative(y, k - 1) : Number.POSITIVE_INFINITY;
        } else {
          k += 1;
          left = here;
          here = right;
          right = k < STEPS ? relative(y, k + 1) : Number.POSITIVE_INFINITY;
        }
      }
      const curvature = left + right - 2 * here;
      const aside = Number.isFinite(curvature) && curvature > 0 ? (left - right) / (2 * curvature) : 0;
      return LOWEST_X + (k + aside) * STEP;
    },
    chiSquares(y) {
      const product = times(y);
      const constant = product.reduce((sum, it, j) => sum + it * (y[j] as number), 0);
      return Float64Array.from({ length: STEPS + 1 }, (_, k) => Math.max(0, constant + relative(y, k)));
    },
  };
}

/** Steps of the table whose half angles a fit may find. */
const FIRST = Math.ceil((Math.log(beamOrder(WIDEST_HALF_ANGLE)) - LOWEST_X) / STEP);
const LAST = Math.floor((Math.log(beamOrder(NARROWEST_HALF_ANGLE)) - LOWEST_X) / STEP);

/** The step of the table with the least chi-square, among those that a fit may find. */
export function lowestStep(chiSquares: Float64Array): number {
  let best = FIRST;
  for (let k = FIRST; k <= LAST; k++) if ((chiSquares[k] as number) < (chiSquares[best] as number)) best = k;
  return best;
}

/**
 * The order whose beam explains the readings best, by least squares over ln m between the half angles 5° and 80°. It
 * is withheld where the least lies at an end of that range, where no beam explains the readings, and where the
 * readings leave the beam open on a side.
 *
 * Unlike a straight-line fit, chi-square is searched over the whole range first, so that no side minimum is taken.
 */
export function fitOrder(source: 'sweep' | 'grid', data: FitData, curve = fitCurve(data)): OrderFit {
  const what = source === 'sweep' ? 'distance sweep' : 'grid';
  const { logs } = data;
  const n = logs.length;
  const places = new Set(data.quantities).size;
  if (places < 2) {
    return { withheld: source === 'sweep' ? 'the sweep has one distance only' : 'the grid has one point only' };
  }
  const chiSquares = curve.chiSquares(logs);
  const best = lowestStep(chiSquares);
  if (best === FIRST || best === LAST) {
    const end = best === FIRST ? WIDEST_HALF_ANGLE : NARROWEST_HALF_ANGLE;
    return {
      withheld: `the ${what} fits best at the end of the range searched, at a half angle of ${end}°`,
      allowed: allowedRanges(chiSquares, chiSquares[best] as number),
    };
  }
  const x = curve.settle(logs, best);
  const [before, here, after] = [-1, 0, 1].map((k) => chiSquares[best + k] as number) as [number, number, number];
  // The least lies between the steps: that of the parabola through the three.
  const bend = before + after - 2 * here;
  const chiSquare = bend > 0 ? Math.max(0, here - (before - after) ** 2 / (8 * bend)) : here;
  const degreesOfFreedom = n - 2;

  const place = tablePlace(x);
  const left = logs.map((log, j) => log - logAt(data.table, data.quantities[j] as number, place));
  const weights = data.independent.map((u) => 1 / u ** 2);
  const total = weights.reduce((sum, it) => sum + it, 0);
  const middle = left.reduce((sum, it, j) => sum + it * (weights[j] as number), 0) / total;
  const residual = Math.sqrt(left.reduce((sum, it) => sum + (it - middle) ** 2, 0) / n);
  if (
    degreesOfFreedom > 0 &&
    (residual > LARGEST_RESIDUAL || chiSquareExceeds(chiSquare, degreesOfFreedom) < SMALLEST_PROBABILITY)
  ) {
    return {
      withheld: `no beam of an even panel explains the ${what}: the best, of half angle ${halfAngleAt(x).toFixed(0)}°, leaves ${(100 * residual).toFixed(1)} % unexplained`,
      allowed: [],
    };
  }

  const crossing = (direction: 1 | -1): number | undefined => {
    // The root of what chi-square has risen by is all but a straight line on either side.
    let [from, rise] = [(x - LOWEST_X) / STEP, 0];
    const first = direction === 1 ? Math.floor(from) + 1 : Math.ceil(from) - 1;
    for (let k = first; k >= FIRST && k <= LAST; k += direction) {
      const next = Math.sqrt(Math.max(0, (chiSquares[k] as number) - chiSquare));
      if (next >= ROOT_95) return LOWEST_X + (from + ((k - from) * (ROOT_95 - rise)) / (next - rise)) * STEP;
      from = k;
      rise = next;
    }
    return undefined;
  };
  const wide = crossing(-1);
  const narrow = crossing(1);
  if (wide === undefined || narrow === undefined) {
    return {
      withheld: `the ${what} does not tell the beam: half angles ${narrow === undefined ? `down to ${NARROWEST_HALF_ANGLE}°` : ''}${narrow === undefined && wide === undefined ? ' and ' : ''}${wide === undefined ? `up to ${WIDEST_HALF_ANGLE}°` : ''} fit as well`,
      allowed: allowedRanges(chiSquares, chiSquare),
    };
  }
  const rival = rivalOf(chiSquares, best, chiSquare + RIVAL);
  if (rival !== undefined) {
    const [low, high] = [x, rival].map(halfAngleAt).toSorted((a, b) => a - b) as [number, number];
    return {
      withheld: `two beams explain the ${what}: half angles of about ${low.toFixed(0)}° and ${high.toFixed(0)}°`,
      allowed: allowedRanges(chiSquares, chiSquare),
    };
  }
  const halfAngle = halfAngleAt(x);
  return {
    fit: {
      source,
      order: Math.exp(x),
      halfAngle,
      standardUncertainty: Math.abs(halfAngleSlope(x)) * STEP * Math.sqrt(2 / bend),
      interval95: [halfAngleAt(narrow), halfAngleAt(wide)],
      chiSquare,
      degreesOfFreedom,
      residual,
    },
  };
}

/** The half angles whose chi-square is within RIVAL of the least. */
function allowedRanges(chiSquares: Float64Array, least: number): HalfAngleRange[] {
  const ranges: HalfAngleRange[] = [];
  let widest: number | undefined;
  for (let k = FIRST; k <= LAST + 1; k++) {
    const isAllowed = k <= LAST && (chiSquares[k] as number) <= least + RIVAL;
    if (isAllowed) widest ??= halfAngleAt(LOWEST_X + k * STEP);
    else if (widest !== undefined) {
      ranges.push([halfAngleAt(LOWEST_X + (k - 1) * STEP), widest]);
      widest = undefined;
    }
  }
  return ranges;
}

/** x of a second minimum below a limit, or of an end of the range that is below it across a hill; undefined without. */
function rivalOf(chiSquares: Float64Array, best: number, limit: number): number | undefined {
  for (const direction of [-1, 1]) {
    let highest = 0;
    for (let k = best; k >= FIRST && k <= LAST; k += direction) {
      const here = chiSquares[k] as number;
      highest = Math.max(highest, here);
      // Past the hill chi-square falls again: follow it down to where it ends.
      if (here > highest - 1e-3) continue;
      let low = k;
      for (let j = k; j >= FIRST && j <= LAST; j += direction) {
        if ((chiSquares[j] as number) < (chiSquares[low] as number)) low = j;
      }
      if ((chiSquares[low] as number) < limit) return LOWEST_X + low * STEP;
      break;
    }
  }
  return undefined;
}

/** How fast the half angle moves with x = ln m, degrees. */
function halfAngleSlope(x: number): number {
  const d = 1e-4;
  return (halfAngleAt(x + d) - halfAngleAt(x - d)) / (2 * d);
}

/**
 * The order from the maker's beam angle, with our own CLAIM_UNCERTAINTY.
 *
 * @param beamAngle full angle at half intensity, degrees
 */
export function claimedOrder(beamAngle: number): OrderFit {
  if (!(beamAngle > 0 && beamAngle < 180)) {
    return { withheld: `the claimed beam angle, ${beamAngle}°, is not between 0° and 180°` };
  }
  const halfAngle = beamAngle / 2;
  if (halfAngle < NARROWEST_HALF_ANGLE || halfAngle > WIDEST_HALF_ANGLE) {
    return {
      withheld: `the claimed beam angle, ${beamAngle}°, is not between ${2 * NARROWEST_HALF_ANGLE}° and ${2 * WIDEST_HALF_ANGLE}°, for which the model holds`,
    };
  }
  const u = CLAIM_UNCERTAINTY * halfAngle;
  return {
    fit: {
      source: 'claim',
      order: beamOrder(halfAngle),
      halfAngle,
      standardUncertainty: u,
      interval95: [halfAngle - 1.96 * u, Math.min(beamHalfAngle(Math.exp(LOWEST_X)), halfAngle + 1.96 * u)],
    },
  };
}

/** All that was tried, in order of preference, and which of it is used. */
export type OrderChoice =
  | { chosen: Order; warnings: string[] }
  /** Why there is no order: the reasons of all that was tried. */
  | { withheld: string; warnings: string[] };

const WORDS: Readonly<Record<OrderSource, string>> = {
  sweep: 'the distance sweep',
  grid: 'the grid',
  claim: 'the claimed beam angle',
};

/**
 * Chooses the order: from the sweep where there is one, else from the grid, else from the claim. It warns where two
 * of them disagree: their 95 % intervals do not overlap.
 *
 * Nothing is chosen where the readings that give the power, those of the grid or else of the sweep, fit no beam at
 * all: then the model does not hold for the panel. Nor is a claim chosen that such readings rule out.
 */
export function chooseOrder(tried: Readonly<Partial<Record<OrderSource, OrderFit>>>): OrderChoice {
  const fits = (['sweep', 'grid', 'claim'] as const).flatMap((source) => {
    const it = tried[source];
    return it && 'fit' in it ? [it.fit] : [];
  });
  const reasons = Object.values(tried).flatMap((it) => ('withheld' in it ? [it.withheld] : []));
  const warnings = fits.flatMap((a, i) =>
    fits
      .slice(i + 1)
      .filter((b) => a.interval95[0] > b.interval95[1] || b.interval95[0] > a.interval95[1])
      .map((b) => `${words(a)}, while ${words(b)}: the two disagree`),
  );
  const chosen = fits[0];
  const scale = tried.grid ?? tried.sweep;
  const isModelOut = scale !== undefined && 'withheld' in scale && scale.allowed?.length === 0;
  const ruledOut =
    chosen?.source === 'claim' &&
    Object.values(tried).some((it) => 'withheld' in it && it.allowed && !overlaps(chosen.interval95, it.allowed));
  if (chosen && !isModelOut && !ruledOut) return { chosen, warnings };
  if (ruledOut && !isModelOut) reasons.push('the claimed beam angle is none that the readings allow');
  return {
    withheld: reasons.length > 0 ? reasons.join('; ') : 'neither a sweep, nor a grid, nor a claimed beam angle',
    warnings,
  };
}

function overlaps([low, high]: readonly [number, number], ranges: readonly HalfAngleRange[]): boolean {
  return ranges.some(([narrowest, widest]) => low <= widest && narrowest <= high);
}

function words({ source, halfAngle, interval95: [low, high] }: Order): string {
  return `${WORDS[source]} gives a half angle of ${halfAngle.toFixed(0)}° (${low.toFixed(0)}° to ${high.toFixed(0)}°)`;
}

/** x = ln m of a half angle in degrees, kept within the table. */
export function xOfHalfAngle(halfAngle: number): number {
  if (!(halfAngle > 0)) return HIGHEST_X;
  if (!(halfAngle < 89)) return LOWEST_X;
  return Math.min(HIGHEST_X, Math.max(LOWEST_X, Math.log(beamOrder(halfAngle))));
}
