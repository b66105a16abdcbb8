import { randomGamma } from 'd3-random';
import { quickselect } from 'simple-statistics';
import type { Contribution } from '../figure.ts';
import { drawError, type Random, seededRandom } from '../random.ts';
import type { Readings, SharedError } from './error-sources.ts';
import { MODEL_UNCERTAINTY } from './order-fit.ts';
import { HIGHEST_X, LOWEST_X } from './order-table.ts';
import { meanShares } from './prepare-fit.ts';
import { EMITTED, HALF_ANGLE, type ResponseModel } from './response.ts';

/**
 * Draws of the simulation; each 2.5 % tail then rests on 40 of them, which leaves the ends of an interval uncertain
 * by about 7 % of a standard uncertainty. Our own choice, for speed.
 */
export const OPTICS_DRAWS = 1600;

/** A reading of the mains draw, W, with its errors. */
export interface MainsDraw {
  value: number;
  budget: readonly Contribution[];
}

/** What a simulation tells of one result. */
export interface Spread {
  /** Standard deviation of the draws, in the unit of the value. */
  standardUncertainty: number;
  /** Probabilistically symmetric 95 % interval: 2.5 % of the draws lie below it, 2.5 % above. */
  interval95: readonly [number, number];
}

/**
 * Draws all errors together again and again; in every draw the order is found anew, and all results follow from it,
 * so that what they share stays shared. What a result moves by is taken against the same calculation without errors
 * and put on its stated value.
 *
 * Draws come in pairs, the second with all errors of the first turned round: every error here is as likely above as
 * below, and random numbers are what costs most.
 *
 * Sources: JCGM 101:2008, clauses 5 to 7; antithetic draws, Hammersley and Morton 1956 (both from memory).
 *
 * @param values stated values of the results
 * @param mains draw from the mains, W, whose errors are drawn too, for the efficiency
 * @returns the spread of each, that of emitted power over mains draw, and the share of the draws whose order was cut
 *   at an end of the table
 */
export function simulate(
  model: ResponseModel,
  values: readonly number[],
  seed: number,
  draws: number,
  mains?: MainsDraw,
): { spreads: Spread[]; efficiency?: Spread; cutShare: number } {
  const { outputs, parts } = model;
  const { errors, scale, fitted } = parts;
  const random = seededRandom(seed);
  const isOneSet = scale !== undefined && fitted !== undefined && fitted.data.quantities === scale.quantities;
  const drawMeans = scale ? meanErrors(scale.readings, random) : undefined;
  // Readings that give the order but not the power are drawn apart.
  const fittedOwn = new Float64Array(fitted?.data.logs.length ?? 0);
  const independent = fitted?.data.independent ?? new Float64Array(0);
  const together = new Float64Array(scale?.readings.values.length ?? 0);
  const sums = { reading: 0, misfit: 0 };

  const shared = new Float64Array(errors.length);
  const none = new Float64Array(outputs);
  model.resultsFor(model.orderFor(shared, fittedOwn), shared, 0, 0, none);
  const drawn = new Float64Array(outputs * draws);
  const out = new Float64Array(outputs);
  let cut = 0;
  for (let d = 0; d < draws; d++) {
    if (d % 2 === 0) {
      for (let k = 0; k < shared.length; k++) shared[k] = drawError(random, (errors[k] as SharedError).line);
      drawMeans?.(isOneSet ? fittedOwn : together, sums);
      if (!isOneSet) {
        for (let j = 0; j < fittedOwn.length; j++) fittedOwn[j] = (independent[j] as number) * random.normal();
      }
    } else {
      for (let k = 0; k < shared.length; k++) shared[k] = -(shared[k] as number);
      for (let j = 0; j < fittedOwn.length; j++) fittedOwn[j] = -(fittedOwn[j] as number);
      sums.reading = -sums.reading;
      sums.misfit = -sums.misfit;
    }
    const x = model.orderFor(shared, fittedOwn);
    if (x <= LOWEST_X || x >= HIGHEST_X) cut++;
    model.resultsFor(x, shared, sums.reading, sums.misfit, out);
    for (let i = 0; i < outputs; i++) drawn[i * draws + d] = out[i] as number;
  }

  const isWithEfficiency = mains !== undefined && scale !== undefined;
  const overMains = isWithEfficiency ? new Float64Array(draws) : undefined;
  const spreads = values.map((value, i) => {
    const ofOne = drawn.subarray(i * draws, (i + 1) * draws);
    const start = none[i] as number;
    for (let d = 0; d < draws; d++) {
      const moved = (ofOne[d] as number) - start;
      ofOne[d] = i === HALF_ANGLE ? value + moved : value * Math.exp(moved);
    }
    if (i === EMITTED && overMains && mains) divideByMains(ofOne, mains, random, overMains);
    return spreadOf(ofOne);
  });
  return { spreads, ...(overMains && { efficiency: spreadOf(overMains) }), cutShare: cut / draws };
}

/** Each draw of the emitted power over the mains draw with its errors, in pairs as the emitted power has them. */
function divideByMains(emitted: Float64Array, mains: MainsDraw, random: Random, out: Float64Array): void {
  let error = 0;
  for (let d = 0; d < out.length; d++) {
    error =
      d % 2 === 0 ? mains.budget.reduce((sum, line) => sum + line.contribution * drawError(random, line), 0) : -error;
    // A reading that is too high is one of less than it says.
    out[d] = (emitted[d] as number) / Math.max(1e-3 * mains.value, mains.value - error);
  }
}

/**
 * Draws what each reading is off by on its own, its own error less the panel's unevenness there, and what both make
 * in the mean. The two are drawn as one, and their parts in the mean split afterwards, which is the same and saves
 * half of the numbers. Steps of the display count as normal where they are small beside the rest.
 */
function meanErrors(
  readings: Readings,
  random: Random,
): (out: Float64Array, sums: { reading: number; misfit: number }) => void {
  const { scatter, rounding, scatterLine, values } = readings;
  const shares = Float64Array.from(meanShares(values));
  const nu = scatterLine.degreesOfFreedom;
  const chiSquare = Number.isFinite(nu) ? randomGamma.source(() => random.uniform())(nu / 2, 2) : undefined;
  const model = MODEL_UNCERTAINTY ** 2;
  const n = shares.length;
  // Half-width of the steps that are drawn as such; 0 where they are small.
  const steps = Float64Array.from(rounding, (u, j) =>
    (u / 2) ** 2 > model + (scatter[j] as number) ** 2 ? u * Math.sqrt(3) : 0,
  );
  const size = new Float64Array(n);
  const toMisfit = new Float64Array(n);
  let restSize = 0;
  /** @param wide by how much the variance of the scatter is widened */
  const prepare = (wide: number) => {
    let rest = 0;
    for (let j = 0; j < n; j++) {
      const share = shares[j] as number;
      const own = wide * (scatter[j] as number) ** 2 + (steps[j] === 0 ? (rounding[j] as number) ** 2 : 0);
      // Of a sum of two normal errors, each has its share of the variance, and a rest that cancels between them.
      size[j] = Math.sqrt(own + model);
      toMisfit[j] = (share * model) / (own + model);
      rest += (share * share * own * model) / (own + model);
    }
    restSize = Math.sqrt(rest);
  };
  prepare(1);
  return (out, sums) => {
    // Scatter that was itself estimated: Student's t, by a normal over the root of chi-square / nu.
    if (chiSquare) prepare(nu / chiSquare());
    let total = 0;
    let misfit = 0;
    for (let j = 0; j < n; j++) {
      const error = (size[j] as number) * random.normal();
      const step = steps[j] as number;
      const both = step > 0 ? error + step * (2 * random.uniform() - 1) : error;
      out[j] = both;
      total += (shares[j] as number) * both;
      misfit -= (toMisfit[j] as number) * error;
    }
    sums.misfit = misfit + restSize * random.normal();
    sums.reading = total + sums.misfit;
  };
}

/** Standard deviation and the 2.5 % and 97.5 % points of some draws, which are reordered. */
function spreadOf(draws: Float64Array): Spread {
  const n = draws.length;
  let mean = 0;
  for (let d = 0; d < n; d++) mean += draws[d] as number;
  mean /= n;
  let squares = 0;
  for (let d = 0; d < n; d++) squares += ((draws[d] as number) - mean) ** 2;
  // The library asks for an array and takes anything with places.
  const list = draws as unknown as number[];
  const low = Math.max(0, Math.round(0.025 * n) - 1);
  const high = n - 1 - low;
  quickselect(list, low, 0, n - 1);
  quickselect(list, high, low + 1, n - 1);
  return {
    standardUncertainty: Math.sqrt(squares / (n - 1)),
    interval95: [draws[low] as number, draws[high] as number],
  };
}
