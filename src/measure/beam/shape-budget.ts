import { at } from '../at.ts';
import type { BudgetComponent, ErrorSource } from '../figure.ts';
import { typeB } from '../uncertainty.ts';
import type { SharedError } from './error-sources.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Error: which beam and which drive it is, of those that the readings allow. */
    'beam-shape': object;
    'beam-shape-simulated': object;
    /** Error: what no named one and no shape of the beam accounts for. */
    'beam-rest': object;
    'beam-rest-evaluated': object;
  }
}

/** Correlations smaller than this are chance in as many trials as are made. */
const CHANCE = 0.08;
/** Ways in which the shape of the beam moves several results together. */
const FACTORS = 4;

/** What is drawn of one result. */
export interface SimulatedResult {
  /** Metric or place, for the key of its rest. */
  name: string;
  trials: Float64Array;
  /** What a gain of the instrument does to it: its value, or 0 where a gain cancels. */
  gained: number;
}

/**
 * Budgets of results that were drawn together. For each error its covariance with the result, which is what the result
 * shares with other figures that the error moves; a gain of the instrument is known beforehand. What is left is the shape
 * of the beam, the drive and what each reading is off by on its own: a few factors that the results have in common (by
 * Gram and Schmidt's way, the largest first, beginning with the first result), and a rest of each. The squares of all
 * components of a result sum to its variance.
 *
 * @param scores drawn errors in units of their standard uncertainty, for each error
 */
export function shapeBudgets(
  results: readonly SimulatedResult[],
  errors: readonly SharedError[],
  scores: readonly Float64Array[],
  session: string,
): { standardUncertainty: number; budget: BudgetComponent[] }[] {
  const centred = scores.map(centre);
  const residuals: Float64Array[] = [];
  const found = results.map(({ trials, gained }) => {
    const rest = centre(trials);
    const variance = dot(rest, rest);
    const u = Math.sqrt(variance);
    const budget: BudgetComponent[] = [];
    errors.forEach(({ source, effect }, e) => {
      const score = at(centred, e);
      let covariance: number;
      if (effect.reading !== undefined) {
        covariance = effect.reading * gained;
      } else {
        covariance = dot(rest, score);
        if (Math.abs(covariance) < CHANCE * u) return;
      }
      if (covariance === 0) return;
      budget.push({ source, contribution: -covariance });
    });
    // After all covariances are known, since errors are independent of one another.
    errors.forEach(({ source }, e) => {
      const contribution = budget.find((it) => it.source.key === source.key)?.contribution;
      if (contribution === undefined) return;
      const score = at(centred, e);
      for (let d = 0; d < rest.length; d++) rest[d] = (rest[d] as number) + contribution * (score[d] as number);
    });
    residuals.push(rest);
    return { standardUncertainty: u, variance, budget };
  });

  const relative = results.map(({ trials }) => Math.abs(mean(trials)) || 1);
  for (let f = 0; f < FACTORS; f++) {
    let pivot = 0;
    if (f > 0) {
      residuals.forEach((it, i) => {
        const size = (k: Float64Array, j: number) => dot(k, k) / at(relative, j) ** 2;
        if (size(it, i) > size(at(residuals, pivot), pivot)) pivot = i;
      });
    }
    const of = at(residuals, pivot);
    const size = Math.sqrt(dot(of, of));
    if (!(size > 1e-12 * at(relative, pivot))) break;
    const factor = of.map((it) => it / size);
    found.forEach(({ budget, standardUncertainty }, i) => {
      const rest = at(residuals, i);
      const covariance = dot(rest, factor);
      for (let d = 0; d < rest.length; d++) rest[d] = (rest[d] as number) - covariance * (factor[d] as number);
      if (Math.abs(covariance) < CHANCE * standardUncertainty) return;
      budget.push({ source: shapeSource(`${session}/beam-shape-${f + 1}`), contribution: -covariance });
    });
  }
  return found.map(({ standardUncertainty, variance, budget }, i) => {
    const missing = variance - budget.reduce((sum, it) => sum + it.contribution ** 2, 0);
    if (missing > 1e-4 * variance) {
      const source = restSource(`${session}/beam-rest-${at(results, i).name}`);
      budget.push({ source, contribution: Math.sqrt(missing) });
    }
    return { standardUncertainty, budget };
  });
}

function shapeSource(key: string): ErrorSource {
  return typeB({
    key,
    what: { code: 'beam-shape' },
    distribution: 'normal',
    evaluation: { code: 'beam-shape-simulated' },
  });
}

function restSource(key: string): ErrorSource {
  return typeB({
    key,
    what: { code: 'beam-rest' },
    distribution: 'normal',
    evaluation: { code: 'beam-rest-evaluated' },
  });
}

function mean(values: Float64Array): number {
  let sum = 0;
  for (const it of values) sum += it;
  return sum / values.length;
}

function centre(values: Float64Array): Float64Array {
  const middle = mean(values);
  return values.map((it) => it - middle);
}

/** Mean of the products. */
function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum / a.length;
}
