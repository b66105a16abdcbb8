import type { BudgetComponent } from '../figure.ts';
import { drawError, seededRandom } from '../random.ts';
import { MILLI } from '../unit-factors.ts';
import { emptySupposed, suppose } from './beam-prior.ts';
import { allowedBeams, BEAMS } from './beam-sampler.ts';
import { chiSquareExceeds } from './chi-square.ts';
import { PATTERNS } from './drive.ts';
import { type Emitter, widened } from './emitter.ts';
import type { Readings, SharedError } from './error-sources.ts';
import { grainOf, movedRows } from './moved-rows.ts';
import { overMains } from './over-mains.ts';
import type { PanelModel } from './panel-model.ts';
import { GEOMETRY, type Layout, panelSums } from './panel-sums.ts';
import { BASIS, profileHalfAngle } from './profile-basis.ts';
import { readingModel } from './reading-model.ts';
import {
  average,
  type Drawn,
  FIRST_TARGET,
  RESULT_BIAS,
  RESULT_CAPTURE,
  RESULT_EMITTED,
  RESULT_HALF_ANGLE,
  type Result,
  resultList,
  statedValues,
} from './results.ts';
import { shapeBudgets } from './shape-budget.ts';
import { peaksKnownFrom } from './single-leds.ts';
import { type Spread, spreadOf } from './spread.ts';

/** Draw from the mains, with its errors. */
export interface MainsDraw {
  value: number;
  budget: readonly BudgetComponent[];
}

/** Everything that a panel's light is worked out from. */
export interface OpticsInput {
  /** `<panel>/<date>`, for the keys of budget lines. */
  session: string;
  layout: Layout;
  /** Readings of the layout's grid points, in their order. */
  grid?: Readings;
  /** Readings past the edges, in the layout's order, with what the panel off gives taken away. */
  beyond?: Readings;
  /** Readings at the layout's sweep distances, in their order. */
  sweep?: Readings;
  /** What the maker claims: full angle at half intensity, degrees. Nothing rests on it. */
  beamAngle?: number;
  /** Errors that readings share. */
  errors: readonly SharedError[];
  /** Draw from the mains with both channels on; for the efficiency. */
  mains?: MainsDraw;
  seed: number;
}

/** A value with what is known of it. */
export interface Estimate extends Spread {
  value: number;
  /** The uncertainty by its causes, under the keys that other figures use. */
  budget: BudgetComponent[];
}

/** Which readings tell most of the light that misses the frame. */
export type BeamSource = 'beyond' | 'sweep' | 'grid';

/** What is found of a panel. */
export interface OpticsEstimates {
  source: BeamSource;
  /** Degrees. */
  halfAngle: Estimate;
  /** Power through the LED-area rectangle on the reference plane over emitted power. */
  capture: Estimate;
  /** Grid mean over true mean; undefined without a grid. */
  samplingBias?: Estimate;
  /**
   * Share of the grid's mean that is not taken for light straight from the panel: what the room gives back, and what
   * readings are off by; undefined without a grid.
   */
  strayShare?: number;
  /** W */
  emitted: Estimate;
  /** Emitted power over mains draw: what the simulation says of it. */
  efficiency?: Spread;
  /**
   * At each target distance, cm: mW/cm2, and the dimmest place over the mean; or why these two cannot be told.
   */
  targets: Array<{ distance: number; mean: Estimate; peak?: Estimate; evenness?: Estimate; peakAbsent?: string }>;
  /** For drawing, and for other distances. */
  model: PanelModel;
}

/** What came of it. */
export interface OpticsResult {
  /** Chi-square of the beam that explains the readings best, and the probability of a larger one. */
  fit?: { readings: number; chiSquare: number; probability: number };
  /** Why there is nothing. */
  withheld?: string;
  estimates?: OpticsEstimates;
  /** Claimed half angle, degrees, where the readings rule it out. */
  claimRuledOut?: number;
}

/** Draws for each beam that the readings allow. */
const EACH = 4;
export const OPTICS_TRIALS = EACH * BEAMS;

/** No beam explains the readings when the best one's chi-square would be rarer than this. Our own choice. */
export const SMALLEST_PROBABILITY = 0.001;

/**
 * What beams of other shapes than those that are tried may do: relative standard uncertainty of the share that passes
 * the frame, of the light that misses it, and of irradiance at another distance for each factor of e. Light that misses
 * the frame is told by nobody but readings out there. Our own choice, from simulated panels.
 */
export const OTHER_BEAMS = 0.018;
export const OTHER_MISSED: Readonly<Record<BeamSource, number>> = { grid: 0.1, sweep: 0.11, beyond: 0.03 };
export const OTHER_DISTANCES: Readonly<Record<BeamSource, number>> = { grid: 0.06, sweep: 0.035, beyond: 0.035 };

/** The readings leave the power open when the ends of its interval are further apart than this factor. Our own choice. */
export const WIDEST_RANGE = 3.3;

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
  const { layout, grid, beyond, sweep, beamAngle, errors, session } = input;
  const all = [grid, beyond, sweep].filter((it) => it !== undefined);
  const places = (layout.grid?.accepted.length ?? 0) + (layout.beyond?.length ?? 0) + new Set(layout.sweep ?? []).size;
  if (places < FEWEST_READINGS) {
    return { withheld: `fewer than ${FEWEST_READINGS} readings at different places: they tell nothing of the beam` };
  }
  const source: BeamSource = beyond && layout.beyond && layout.beyond.length >= 3 ? 'beyond' : sweep ? 'sweep' : 'grid';
  const sums = panelSums(layout);
  const inner = errors.filter((it) => it.effect.reading === undefined);
  const model = readingModel(
    sums,
    {
      values: Float64Array.from(all.flatMap((it) => it.values)),
      own: Float64Array.from(all.flatMap((it) => it.scatter.map((u, j) => Math.hypot(u, it.rounding[j] as number)))),
      isOffset: all.flatMap((it) => it.values.map((_, j) => !it.isOffTaken?.[j])),
      ownDistance: Float64Array.from(all.flatMap((it) => it.values.map(() => it.ownDistance ?? 0))),
    },
    inner,
  );
  const random = seededRandom(input.seed);
  const { latents, leastChiSquare } = allowedBeams(model, random);
  const probability = chiSquareExceeds(leastChiSquare, Math.max(1, model.count - 1));
  const fit = { readings: model.count, chiSquare: leastChiSquare, probability };
  if (probability < SMALLEST_PROBABILITY) {
    return { fit, withheld: 'no beam that we know of explains the readings' };
  }

  const { targets } = sums;
  const rows = targets.count;
  const count = latents.length * EACH;
  const scores = errors.map(() => new Float64Array(count));
  const innerPlace = inner.map((it) => errors.indexOf(it));
  const results = resultList(layout, grid !== undefined);
  const drawn = results.map(() => new Float64Array(count));
  const supposed = emptySupposed();
  const weights = new Float64Array(BASIS);
  const driven = new Array<number>(PATTERNS.length).fill(0);
  const direction = new Float64Array(model.directions);
  const own = new Float64Array(model.count);
  const values = new Float64Array(rows);
  const gridRows = new Float64Array(sums.readings.grid);
  const wanted = movedRows(targets);
  const read = movedRows({ ...sums.readings, count: sums.readings.grid });
  const area = (layout.field.width * layout.field.height) / MILLI;
  const amounts = new Float64Array(PATTERNS.length + GEOMETRY.length);
  const one: Drawn = { halfAngle: 0, power: 0, values, gridRows, area, sums };
  let edges = 0;
  let heaviness = 0;
  let logPowers = 0;

  latents.forEach((latent, b) => {
    model.likelihood(suppose(latent, supposed));
    const halfAngle = profileHalfAngle(supposed.weights);
    wanted.suppose(supposed.weights);
    read.suppose(supposed.weights);
    const grain = grainOf(sums, supposed.weights, supposed.difference);
    for (let each = 0; each < EACH; each++) {
      const d = b * EACH + each;
      inner.forEach(({ source }, e) => {
        direction[e] = drawError(random, source);
      });
      for (let e = inner.length; e < direction.length; e++) direction[e] = random.normal();
      for (let j = 0; j < own.length; j++) own[j] = random.normal();
      let power = model.draw(direction, own);
      innerPlace.forEach((place, e) => {
        (scores[place] as Float64Array)[d] = direction[e] as number;
      });
      errors.forEach(({ source, effect }, e) => {
        if (effect.reading === undefined) return;
        const score = drawError(random, source);
        (scores[e] as Float64Array)[d] = score;
        power *= Math.max(0.01, 1 + effect.reading * score);
      });

      for (let p = 0; p < PATTERNS.length; p++) {
        amounts[p] = (supposed.drive[p] as number) * (direction[inner.length + p] as number);
      }
      for (let g = 0; g < GEOMETRY.length; g++) {
        let sum = 0;
        for (let e = 0; e < inner.length; e++) {
          sum += (inner[e]?.effect[GEOMETRY[g] as 'width'] ?? 0) * (direction[e] as number);
        }
        amounts[PATTERNS.length + g] = sum;
      }
      wanted.fill(amounts, values);
      for (let row = 0; row < rows; row++) {
        const u = grain[row] as number;
        if (u > 0) values[row] = (values[row] as number) + u * random.normal();
      }
      read.fill(amounts, gridRows);
      // Other beams than those that are drawn: more or less of the same light may miss the frame, and the more
      // other distances are, the more the light there may differ.
      const outside = Math.max(0, 1 - (values[0] as number) * area);
      const passing = 1 / Math.max(0.5, 1 + Math.hypot(OTHER_BEAMS, OTHER_MISSED[source] * outside) * random.normal());
      power /= passing;
      for (let j = 0; j < gridRows.length; j++) gridRows[j] = (gridRows[j] as number) * passing;
      values[0] = (values[0] as number) * passing;
      for (let t = 0; t < layout.targets.length; t++) {
        const apart = Math.abs(Math.log((layout.targets[t] as number) / layout.distance));
        const factor = passing * (1 + OTHER_DISTANCES[source] * apart * random.normal());
        const first = 1 + t * sums.targetRows;
        for (let row = first; row < first + sums.targetRows; row++) values[row] = (values[row] as number) * factor;
      }
      // Powers spread to one side, as ratios do: the geometric mean is stated, and the mean of the beams that goes with it.
      const heavy = Math.sqrt(power);
      for (let k = 0; k < BASIS; k++) {
        weights[k] = (weights[k] as number) + heavy * (supposed.weights[k] as number);
      }
      for (let p = 0; p < driven.length; p++) driven[p] = (driven[p] as number) + heavy * (amounts[p] as number);
      edges += heavy * (amounts[PATTERNS.length + GEOMETRY.indexOf('edge')] as number);
      heaviness += heavy;
      logPowers += Math.log(power);
      one.halfAngle = halfAngle;
      one.power = power;
      for (let o = 0; o < results.length; o++) (drawn[o] as Float64Array)[d] = (results[o] as Result).of(one);
    }
  });

  const found: PanelModel = {
    emitter: reaching(layout.emitter, edges / heaviness),
    field: layout.field,
    weights: Array.from(weights, (it) => it / heaviness),
    drive: driven.map((it) => it / heaviness),
    power: Math.exp(logPowers / count),
  };
  const stated = statedValues(found, layout, grid, drawn[0] as Float64Array);
  const budgets = shapeBudgets(
    results.map(({ name, isGained }, o) => ({
      name,
      trials: drawn[o] as Float64Array,
      gained: isGained ? (stated.values[o] as number) : 0,
    })),
    errors,
    scores,
    session,
  );
  const efficiency = input.mains && overMains(drawn[RESULT_EMITTED] as Float64Array, input.mains, random);
  const estimates = results.map((_, o): Estimate => {
    const { standardUncertainty, budget } = budgets[o] as (typeof budgets)[number];
    const value = stated.values[o] as number;
    const [low, high] = spreadOf(drawn[o] as Float64Array).interval95;
    return { value, standardUncertainty, interval95: [Math.min(low, value), Math.max(high, value)], budget };
  });
  const at = (o: number) => estimates[o] as Estimate;
  const [low, high] = at(RESULT_EMITTED).interval95;
  if (high > WIDEST_RANGE * low) {
    return { fit, withheld: 'the readings leave the beam open, and with it the power' };
  }
  const half = at(RESULT_HALF_ANGLE);
  const known = peaksKnownFrom(layout, half.interval95[0]);
  const absences = layout.targets.map((distance, t) => {
    if (distance < known) return 'LEDs may show singly this near, and nobody counted them';
    const [lowest, highest] = at(FIRST_TARGET + 3 * t + 1).interval95;
    return distance < layout.distance && highest > WIDEST_RANGE * lowest
      ? 'the readings leave open how single LEDs show this near'
      : undefined;
  });
  // What is told at a distance is told at all larger ones.
  const peakFrom = layout.targets.reduce(
    (from, distance, t) => (absences[t] === undefined ? from : Math.max(from, distance + 1e-6)),
    known,
  );
  const claim = beamAngle === undefined ? undefined : beamAngle / 2;
  const isRuledOut = claim !== undefined && (claim < half.interval95[0] || claim > half.interval95[1]);
  return {
    fit,
    ...(isRuledOut && { claimRuledOut: claim }),
    estimates: {
      source,
      halfAngle: half,
      capture: at(RESULT_CAPTURE),
      ...(grid && {
        samplingBias: at(RESULT_BIAS),
        strayShare: 1 - (at(RESULT_EMITTED).value * stated.gridMean) / average(grid.values),
      }),
      emitted: at(RESULT_EMITTED),
      ...(efficiency && { efficiency }),
      targets: layout.targets.map((distance, t) => {
        const first = FIRST_TARGET + 3 * t;
        const peakAbsent = absences[t];
        return {
          distance,
          mean: at(first),
          ...(peakAbsent === undefined ? { peak: at(first + 1), evenness: at(first + 2) } : { peakAbsent }),
        };
      }),
      model: { ...found, power: at(RESULT_EMITTED).value, ...(peakFrom > 0 && { peakFrom }) },
    },
  };
}

/** The emitter with its light as far out as the readings have it. */
function reaching(emitter: Emitter, by: number): Emitter {
  return widened(emitter, emitter.kind === 'leds' ? Math.min(by, emitter.ledSize / 2) : by);
}
