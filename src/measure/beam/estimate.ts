import { at } from '../at.ts';
import { type Random, seededRandom } from '../random.ts';
import { allowedBeams } from './beam-sampler.ts';
import { chiSquareExceeds } from './chi-square.ts';
import { drawnLight } from './drawn-light.ts';
import { isEven } from './emitter.ts';
import { movesReadingsApart } from './error-sources.ts';
import { lopsidedness, MOST_LOPSIDED } from './lopsided.ts';
import { beamSource, type OpticsInput } from './optics-input.ts';
import type { BeamFit, Estimate, OpticsEstimates, OpticsResult, TargetOf } from './optics-result.ts';
import { overMains } from './over-mains.ts';
import { type Layout, panelSums } from './panel-sums.ts';
import { allReadings, readingModel } from './reading-model.ts';
import {
  average,
  firstOfTarget,
  RESULT_BIAS,
  RESULT_CAPTURE,
  RESULT_EMITTED,
  RESULT_HALF_ANGLE,
  type Result,
  resultList,
  statedValues,
} from './results.ts';
import { shapeBudgets } from './shape-budget.ts';
import { simulate, type Trials } from './simulate.ts';
import { peakAbsences } from './single-leds.ts';
import { isOpen, spreadOf } from './spread.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Fewer places than a beam can be told from. */
    'beam-too-few-readings': { fewest: number };
    /** No beam that is tried goes with the readings. */
    'beam-unexplained': object;
    /** Many beams go with the readings, and the powers that go with those are far apart. */
    'beam-left-open': object;
    /** The grid differs from side to side as no beam does. */
    'beam-lopsided': object;
  }
}

/** No beam explains the readings when the best one's chi-square would be rarer than this. Our own choice. */
export const SMALLEST_PROBABILITY = 0.001;

/** Fewer readings at different places than this tell nothing of a beam. Our own choice. */
export const FEWEST_READINGS = 4;

/**
 * Works out a panel's light from all of its readings together: which beams and patterns of drive they allow, and from
 * these the emitted power, the capture, the sampling bias and the irradiance at other distances, each with the spread
 * that is left. No one curve is fitted: what the readings do not tell stays open, and is in the interval.
 *
 * Source: propagation of distributions, JCGM 101:2008; what is known before the readings enters by Bayes' rule.
 *
 * @throws RangeError where emitter, field, grid and distances do not fit one another
 */
export function estimatePanel(input: OpticsInput): OpticsResult {
  const { layout, grid, beyond, sweep, errors } = input;
  if (differentPlaces(layout) < FEWEST_READINGS) {
    return { withheld: { code: 'beam-too-few-readings', fewest: FEWEST_READINGS } };
  }
  const sums = panelSums(layout);
  const readings = allReadings([grid, beyond, sweep].filter((it) => it !== undefined));
  const model = readingModel(sums, readings, errors.filter(movesReadingsApart));
  const random = seededRandom(input.seed);
  const { latents, leastChiSquare } = allowedBeams(model, random);
  const probability = chiSquareExceeds(leastChiSquare, Math.max(1, model.count - 1));
  const fit: BeamFit = { readings: model.count, chiSquare: leastChiSquare, probability };
  if (probability < SMALLEST_PROBABILITY) {
    return { fit, withheld: { code: 'beam-unexplained' } };
  }
  if (isLopsided(input)) return { fit, withheld: { code: 'beam-lopsided' } };
  const results = resultList(layout, grid !== undefined);
  const trials = simulate(input, sums, model, latents, results, random);
  const estimates = estimatesOf(input, results, trials, random);
  if (isOpen(estimates.emitted)) {
    return { fit, withheld: { code: 'beam-left-open' } };
  }
  const claimRuledOut = ruledOutClaim(input.beamAngle, estimates.halfAngle);
  return { fit, estimates, ...(claimRuledOut !== undefined && { claimRuledOut }) };
}

/** True where the light is not alike on both sides of a field whose LEDs are. */
function isLopsided({ layout, grid }: OpticsInput): boolean {
  if (!layout.grid || !grid || !isEven(layout.emitter)) return false;
  return lopsidedness(layout.grid, grid) > MOST_LOPSIDED;
}

/** How many places were read; a distance of the sweep that was read again is one place. */
function differentPlaces({ grid, beyond, sweep }: Layout): number {
  return (grid?.accepted.length ?? 0) + (beyond?.length ?? 0) + new Set(sweep).size;
}

/** What the trials say of each result: the stated value, which lies in its interval, and its budget. */
function estimatesOf(
  input: OpticsInput,
  results: readonly Result[],
  { outcomes, scores, panel }: Trials,
  random: Random,
): OpticsEstimates {
  const { layout, grid, errors, session, mains } = input;
  const stated = statedValues(panel, layout, grid, at(outcomes, RESULT_HALF_ANGLE));
  const simulated = results.map(({ name, isGained }, o) => {
    const value = at(stated.values, o);
    return { name, value, trials: at(outcomes, o), gained: isGained ? value : 0 };
  });
  const budgets = shapeBudgets(simulated, errors, scores, session);
  const all = simulated.map(({ value, trials }, o): Estimate => {
    const [low, high] = spreadOf(trials).interval95;
    return { ...at(budgets, o), value, interval95: [Math.min(low, value), Math.max(high, value)] };
  });
  const of = (place: number) => at(all, place);
  const [halfAngle, emitted] = [of(RESULT_HALF_ANGLE), of(RESULT_EMITTED)];
  const efficiency = mains && overMains(at(outcomes, RESULT_EMITTED), mains, random);
  const peaks = layout.targets.map((_, t) => of(firstOfTarget(t) + 1));
  const { absences, knownFrom } = peakAbsences(layout, halfAngle.interval95[0], peaks);
  const model = { ...panel, power: emitted.value, ...(knownFrom > 0 && { peakFrom: knownFrom }) };
  return {
    source: beamSource(input),
    halfAngle,
    capture: of(RESULT_CAPTURE),
    ...(grid && {
      samplingBias: of(RESULT_BIAS),
      strayShare: 1 - (emitted.value * stated.gridMean) / average(grid.values),
    }),
    emitted,
    ...(efficiency && { efficiency }),
    targets: layout.targets.map((distance, t): TargetOf<Estimate> => {
      const mean = of(firstOfTarget(t));
      const peakAbsent = absences[t];
      if (peakAbsent !== undefined) return { distance, mean, peakAbsent };
      return { distance, mean, peak: at(peaks, t), evenness: of(firstOfTarget(t) + 2) };
    }),
    model,
    drawn: drawnLight(model, layout),
  };
}

/** The claimed half angle, degrees, where the readings rule it out. */
function ruledOutClaim(beamAngle: number | undefined, { interval95: [low, high] }: Estimate): number | undefined {
  const claim = beamAngle === undefined ? undefined : beamAngle / 2;
  return claim !== undefined && (claim < low || claim > high) ? claim : undefined;
}
