import { at, valueAt } from '../at.ts';
import { drawError, type Random } from '../random.ts';
import { MILLI } from '../unit-factors.ts';
import { emptySupposed, type Supposed, suppose } from './beam-prior.ts';
import { BEAMS } from './beam-sampler.ts';
import { PATTERNS } from './drive.ts';
import { type Emitter, widened } from './emitter.ts';
import { type ErrorEffect, movesReadingsApart } from './error-sources.ts';
import { grainOf, movedRows } from './moved-rows.ts';
import { type BeamSource, beamSource, type OpticsInput } from './optics-input.ts';
import type { PanelModel } from './panel-model.ts';
import { GEOMETRY, type Layout, type PanelSums } from './panel-sums.ts';
import { BASIS, profileHalfAngle } from './profile-basis.ts';
import type { ReadingModel } from './reading-model.ts';
import type { Result, Trial } from './results.ts';

/** Trials for each beam that the readings allow. */
const EACH = 4;
export const OPTICS_TRIALS = EACH * BEAMS;

/**
 * What beams of other shapes than those that are tried may do: relative standard uncertainty of the share that passes
 * the frame, of the light that misses it, and of irradiance at another distance for each factor of e. Light that misses
 * the frame is given by nothing but readings out there. Our own choice, from simulated panels.
 */
export const OTHER_BEAMS = 0.018;
export const OTHER_MISSED: Readonly<Record<BeamSource, number>> = { grid: 0.1, sweep: 0.11, beyond: 0.03 };
export const OTHER_DISTANCES: Readonly<Record<BeamSource, number>> = { grid: 0.06, sweep: 0.035, beyond: 0.035 };

/** What a simulation comes to. */
export interface Trials {
  /** Values of each result, a trial each. */
  outcomes: Float64Array[];
  /** Values of each error of the input, in units of its standard uncertainty. */
  scores: Float64Array[];
  /** The mean of the allowed beams, each as heavy as the root of its power, at the geometric mean of the powers. */
  panel: PanelModel;
}

/**
 * Draws what the readings leave open: for each beam that they allow some trials of the errors, the drive and the light
 * from LED to LED, as the readings make them likely, and from each of these all results.
 *
 * Source: propagation of distributions, JCGM 101:2008.
 *
 * @param latents allowed beams (see `allowedBeams`)
 * @param results what is wanted of each trial
 */
export function simulate(
  input: OpticsInput,
  sums: PanelSums,
  model: ReadingModel,
  latents: readonly Float64Array[],
  results: readonly Result[],
  random: Random,
): Trials {
  const { layout, errors } = input;
  const source = beamSource(input);
  const count = latents.length * EACH;
  const scored = errors.map((error) => ({ error, scores: new Float64Array(count) }));
  const moving = scored.filter(({ error }) => movesReadingsApart(error));
  const gains = scored.filter(({ error }) => !movesReadingsApart(error));
  const effects = moving.map(({ error }) => error.effect);
  const outcomes = results.map(({ of }) => ({ of, trials: new Float64Array(count) }));

  const { targets } = sums;
  const supposed = emptySupposed();
  const direction = new Float64Array(model.directions);
  const own = new Float64Array(model.count);
  const values = new Float64Array(targets.count);
  const gridRows = new Float64Array(sums.readings.grid);
  const wanted = movedRows(targets);
  const read = movedRows({ ...sums.readings, count: sums.readings.grid });
  const area = (layout.field.width * layout.field.height) / MILLI;
  const amounts = new Float64Array(PATTERNS.length + GEOMETRY.length);
  const one: Trial = { halfAngle: 0, power: 0, values, gridRows, area, sums };
  const mean = meanBeam();

  latents.forEach((latent, b) => {
    model.likelihood(suppose(latent, supposed));
    one.halfAngle = profileHalfAngle(supposed.weights);
    wanted.suppose(supposed.weights);
    read.suppose(supposed.weights);
    const grain = grainOf(sums, supposed.weights, supposed.difference);
    for (let each = 0; each < EACH; each++) {
      const trial = b * EACH + each;
      moving.forEach(({ error }, e) => {
        direction[e] = drawError(random, error.source);
      });
      for (let e = moving.length; e < direction.length; e++) direction[e] = random.normal();
      for (let j = 0; j < own.length; j++) own[j] = random.normal();
      let power = model.draw(direction, own);
      moving.forEach(({ scores }, e) => {
        scores[trial] = valueAt(direction, e);
      });
      for (const { error, scores } of gains) {
        const score = drawError(random, error.source);
        scores[trial] = score;
        power *= Math.max(0.01, 1 + (error.effect.reading ?? 0) * score);
      }

      fillAmounts(amounts, supposed, direction, effects);
      wanted.fill(amounts, values);
      grain.forEach((u, row) => {
        if (u > 0) values[row] = valueAt(values, row) + u * random.normal();
      });
      read.fill(amounts, gridRows);
      one.power = power / otherBeams(values, gridRows, { layout, sums, area, source, random });
      mean.add(one.power, supposed.weights, amounts);
      for (const { of, trials } of outcomes) trials[trial] = of(one);
    }
  });
  return {
    outcomes: outcomes.map((it) => it.trials),
    scores: scored.map((it) => it.scores),
    panel: mean.panel(layout, count),
  };
}

/** How much of each pattern of drive and how many cm of each length of the geometry go with some drawn directions. */
function fillAmounts(
  amounts: Float64Array,
  supposed: Supposed,
  direction: Float64Array,
  effects: readonly ErrorEffect[],
): void {
  PATTERNS.forEach((_, p) => {
    amounts[p] = valueAt(supposed.drive, p) * valueAt(direction, effects.length + p);
  });
  GEOMETRY.forEach((length, g) => {
    let sum = 0;
    effects.forEach((effect, e) => {
      sum += (effect[length] ?? 0) * valueAt(direction, e);
    });
    amounts[PATTERNS.length + g] = sum;
  });
}

/**
 * Other beams than those that are tried: more or less of the same light may miss the frame, and the more other distances
 * are, the more the light there may differ. Changes the values of the targets and of the grid.
 *
 * @returns factor by which more light passes the frame, for the same power
 */
function otherBeams(
  values: Float64Array,
  gridRows: Float64Array,
  {
    layout,
    sums,
    area,
    source,
    random,
  }: { layout: Layout; sums: PanelSums; area: number; source: BeamSource; random: Random },
): number {
  const outside = Math.max(0, 1 - valueAt(values, 0) * area);
  const passing = 1 / Math.max(0.5, 1 + Math.hypot(OTHER_BEAMS, OTHER_MISSED[source] * outside) * random.normal());
  for (let j = 0; j < gridRows.length; j++) gridRows[j] = valueAt(gridRows, j) * passing;
  values[0] = valueAt(values, 0) * passing;
  layout.targets.forEach((distance, t) => {
    const apart = Math.abs(Math.log(distance / layout.distance));
    const factor = passing * (1 + OTHER_DISTANCES[source] * apart * random.normal());
    const first = 1 + t * sums.targetRows;
    for (let row = first; row < first + sums.targetRows; row++) values[row] = valueAt(values, row) * factor;
  });
  return passing;
}

/** Place of the edge among the amounts of a trial. */
const EDGE = PATTERNS.length + GEOMETRY.indexOf('edge');

/**
 * The mean of the drawn beams. Powers spread to one side, as ratios do: the geometric mean is stated, and the mean of
 * the beams that goes with it has each as heavy as the root of its power.
 */
function meanBeam() {
  const weights = new Float64Array(BASIS);
  const drive = new Array<number>(PATTERNS.length).fill(0);
  let edges = 0;
  let heaviness = 0;
  let logPowers = 0;
  return {
    add(power: number, of: Float64Array, amounts: Float64Array) {
      const heavy = Math.sqrt(power);
      for (let k = 0; k < BASIS; k++) weights[k] = valueAt(weights, k) + heavy * valueAt(of, k);
      for (let p = 0; p < drive.length; p++) drive[p] = at(drive, p) + heavy * valueAt(amounts, p);
      edges += heavy * valueAt(amounts, EDGE);
      heaviness += heavy;
      logPowers += Math.log(power);
    },
    panel: ({ emitter, field }: Layout, count: number): PanelModel => ({
      emitter: reaching(emitter, edges / heaviness),
      field,
      weights: Array.from(weights, (it) => it / heaviness),
      drive: drive.map((it) => it / heaviness),
      power: Math.exp(logPowers / count),
    }),
  };
}

/** The emitter with its light as far out as the readings have it. */
function reaching(emitter: Emitter, by: number): Emitter {
  return widened(emitter, emitter.kind === 'leds' ? Math.min(by, emitter.ledSize / 2) : by);
}
