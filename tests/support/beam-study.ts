/**
 * How often the model's intervals hold the truth, and how well it orders panels: simulated panels of many kinds, read
 * with errors of the sizes that the instrument files promise.
 */

import { randomNormal } from 'd3-random';
import { assumedEmitter, countedEmitter } from '../../src/measure/beam/assumed-emitter.ts';
import { sharedErrors, takeBeyond, takeReadings } from '../../src/measure/beam/error-sources.ts';
import { estimatePanel } from '../../src/measure/beam/estimate.ts';
import type { OpticsInput } from '../../src/measure/beam/optics-input.ts';
import type { OpticsResult } from '../../src/measure/beam/optics-result.ts';
import type { BeyondPlace } from '../../src/measure/beam/panel-sums.ts';
import { type AngularResponse, angularError } from '../../src/measure/instrument/angular-response.ts';
import { sideFigure } from '../../src/measure/irradiance/optical-power.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { instrument } from '../measure/make.ts';
import {
  type AnyLight,
  type AnyPanel,
  anyLight,
  batwing,
  cosineBeam,
  cutOff,
  flatTop,
  ringBeam,
  skirted,
  twoLobes,
} from './any-beam.ts';
import { uniformSource } from './light-source.ts';

/** What a kind of panel is made of; numbers between 0 and 1 are drawn. */
type Make = (between: (low: number, high: number) => number) => Partial<AnyPanel> & Partial<Twist>;

/** What is odd about a panel's bench rather than about its light. */
interface Twist {
  /** Nobody counted the LEDs. */
  isUncounted: boolean;
  /** Share of the frame's mean that a wall gives back everywhere. */
  wall: number;
  /** Of one power of the cosine, degrees. */
  halfAngle: number;
  /** Which LEDs are driven otherwise. */
  pattern: 'rows' | 'side' | 'middle' | 'darkCorner' | 'darkQuarter' | 'brightSpot';
}

const even: Make = (between) => {
  const halfAngle = between(8, 60);
  return { intensity: cosineBeam(halfAngle), halfAngle };
};

/** Panels that obey the model's own family of beams, and others. */
export const KINDS: Readonly<Record<string, Make>> = {
  even,
  uncounted: (between) => ({ ...even(between), isUncounted: true }),
  'two lobes': (between) => ({ intensity: twoLobes(between(8, 22), between(35, 65), between(0.2, 0.6)) }),
  ring: (between) => ({ intensity: ringBeam(between(12, 35), between(45, 60), between(0.05, 0.15)) }),
  batwing: (between) => ({ intensity: batwing(between(35, 65), between(0.3, 0.7)) }),
  'flat top': (between) => ({ intensity: flatTop(between(15, 60)) }),
  'hot rows': (between) => ({ ...even(between), pattern: 'rows' }),
  'weak side': (between) => ({ ...even(between), pattern: 'side' }),
  wall: (between) => ({ ...even(between), wall: 0.03 }),
  staggered: (between) => ({ ...even(between), isStaggered: true }),
  'LEDs 8 %': (between) => ({ ...even(between), spread: 0.08 }),
  tilted: (between) => ({ ...even(between), tilt: 1 }),
};

/** Kinds that nothing was tuned on. */
export const KEPT_ASIDE: Readonly<Record<string, Make>> = {
  'cut off': (between) => ({ intensity: cutOff(between(25, 45), between(0.05, 0.15)) }),
  skirted: (between) => ({ intensity: skirted(between(12, 35)) }),
  'hot middle': (between) => ({ ...even(between), pattern: 'middle' }),
};

/** Panels that the model has no beam for: some of their LEDs are dead, or their light is brightest off the middle. */
export const LOPSIDED: Readonly<Record<string, Make>> = {
  'dark corner': (between) => ({ ...even(between), pattern: 'darkCorner' }),
  'dark quarter': (between) => ({ ...even(between), pattern: 'darkQuarter' }),
  'bright spot': (between) => ({ ...even(between), pattern: 'brightSpot' }),
};

const ALL = { ...KINDS, ...KEPT_ASIDE, ...LOPSIDED };
const NAMES = Object.keys(ALL);

/** Readings that a session has besides its nine points. */
export type Extra = 'none' | 'sweep' | 'beyond';

/** Angular response of the bench's meter, k = 1. */
export const RESPONSE: AngularResponse = {
  kind: 'angles',
  points: [
    { angle: 30, error: 0.004 },
    { angle: 60, error: 0.02 },
    { angle: 75, error: 0.05 },
  ],
};
export const SENSOR = instrument({
  calibrationRelative: 0.025,
  calibrationAbsolute: 0.05,
  resolution: 0.1,
  repeatability: 0.008,
});
const TAPE = instrument({ id: 'tape', name: 'tape', calibrationRelative: 0.001, resolution: 0.1 });
const REFERENCE = 15.24;
const DISTANCE_SETTING = 0.2;
const EDGE_SETTING = 0.2;
const SWEEP = [10, 20, 30, 45, 60];
const TARGETS = [5, 10, 15, 30, 45, 60, REFERENCE];
const BEYOND: readonly BeyondPlace[] = [8, 20, 40].flatMap((past) => [
  { edge: 'right' as const, past },
  { edge: 'top' as const, past },
]);

/** A panel with its truth, and readings of it. */
export interface Case {
  kind: string;
  truth: { emitted: number; capture: number; mean30: number; peak30: number; mean60: number; peak60: number };
  /** What the meter reads too high by: one meter reads all panels of a guide, so that it does not touch their order. */
  gain: number;
  /** Common figure: mean of the grid times the area, W. */
  common: number;
  price: number;
  light: AnyLight;
  /** Of one power of the cosine, degrees. */
  halfAngle: number | undefined;
  input: (extra: Extra) => OpticsInput;
}

const inSteps = (value: number, step: number) => Math.round(value / step) * step;

/** A panel of a kind. The same seed is the same panel, with the same readings. */
export function simulatedCase(kind: string, seed: number, response: AngularResponse = RESPONSE): Case {
  // Each kind has panels of its own.
  const uniform = uniformSource(7919 * seed + 104_729 * NAMES.indexOf(kind) + 13);
  const normal = randomNormal.source(uniform)(0, 1);
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const either = () => 2 * uniform() - 1;
  const width = inSteps(8 * Math.exp(uniform() * Math.log(45 / 8)), 0.1);
  const height = inSteps(Math.min(150, width * between(1, 3.5)), 0.1);
  const pitch = between(1.5, Math.min(4, width / 2.5));
  const columns = Math.max(3, Math.round(width / pitch));
  const rows = Math.max(3, Math.round(height / pitch));
  const make = ALL[kind];
  if (!make) throw new RangeError(`no kind of panel is called ${kind}`);
  const made = make(between);
  const drives: Record<Twist['pattern'], (x: number, y: number) => number> = {
    rows: (_, y) => (Math.abs(y) < height / 6 ? 1.15 : 1),
    side: (x) => (x > 0.3 * width ? 0.8 : 1),
    darkCorner: (x, y) => (x > 0.25 * width && y > 0.25 * height ? 0 : 1),
    darkQuarter: (x, y) => (x > 0 && y > 0 ? 0 : 1),
    brightSpot: (x, y) => 1 + 0.6 * Math.exp(-8 * ((x / width - 0.25) ** 2 + (y / height + 0.25) ** 2)),
    middle: (x, y) => 1 + 0.2 * Math.exp(-8 * ((x / width) ** 2 + (y / height) ** 2)),
  };
  const { pattern } = made;
  const panel: AnyPanel = {
    width,
    height,
    columns,
    rows,
    ledSize: pitch * between(0.2, 0.8),
    power: width * height * between(0.04, 0.11),
    spread: 0.03,
    seed,
    intensity: () => 1,
    ...made,
    ...(pattern && { drive: drives[pattern] }),
  };
  const light = anyLight(panel);
  const mean = (distance: number) => light.mean(distance);
  const meanHere = mean(REFERENCE);
  const truth = {
    emitted: panel.power,
    capture: (meanHere * width * height) / 1000 / panel.power,
    mean30: mean(30),
    peak30: light.peak(30),
    mean60: mean(60),
    peak60: light.peak(60),
  };

  const gain = 1 + SENSOR.calibrationRelative * normal();
  const offset = SENSOR.calibrationAbsolute * normal();
  const oblique = normal();
  const further = DISTANCE_SETTING * either();
  const stray = (made.wall ?? 0.01 * uniform()) * meanHere;
  const weight = (degrees: number) => 1 + oblique * angularError(response, degrees);
  const shown = (x: number, y: number, distance: number) => {
    const aside = () => 0.12 * normal();
    const there = light.at(x + aside(), y + aside(), distance + further, weight) + stray;
    return inSteps(
      Math.max(0, there * gain * (1 + (SENSOR.repeatability ?? 0) * normal()) + offset),
      SENSOR.resolution,
    );
  };
  const grid = Array.from({ length: 9 }, (_, i) => [
    [shown((width / 2 - 2.54) * ((i % 3) - 1), -(height / 2 - 2.54) * (Math.floor(i / 3) - 1), REFERENCE)],
  ]).flat();
  const sweep = SWEEP.map((it) => [shown(0, 0, it + 0.1 * either())]);
  const beyond = BEYOND.map(({ edge, past }) => {
    const value = edge === 'right' ? shown(width / 2 + past, 0, REFERENCE) : shown(0, height / 2 + past, REFERENCE);
    const isBound = value < SENSOR.resolution;
    return { on: [isBound ? SENSOR.resolution : value], isBound };
  });

  const stretch = 1 + TAPE.calibrationRelative * normal();
  const tape = (length: number) => inSteps((length + EDGE_SETTING * either()) * stretch, TAPE.resolution);
  const field = { width: tape(width), height: tape(height) };
  const { emitter, edge } = made.isUncounted
    ? assumedEmitter(field, undefined)
    : countedEmitter(field, { columns, rows, ...(seed % 2 === 0 && { ledSize: panel.ledSize }) });
  const session = `study/${kind}-${seed}`;
  const side = (of: 'width' | 'height') =>
    sideFigure({ panel: 'study', side: of, value: field[of], edgeSetting: EDGE_SETTING, instrument: TAPE });
  const errors = sharedErrors({
    session,
    panel: 'study',
    instrument: SENSOR,
    distance: { distance: REFERENCE, halfWidth: DISTANCE_SETTING, area: undefined },
    width: side('width'),
    height: side('height'),
    edge,
  });
  errors.push({
    source: {
      key: `${session}/angular`,
      what: verbatim('Angular'),
      type: 'B',
      distribution: 'normal',
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      evaluation: verbatim(''),
    },
    effect: { angular: response },
  });
  return {
    kind,
    truth,
    gain,
    common: ((grid.reduce((sum, it) => sum + (it[0] as number), 0) / 9) * field.width * field.height) / 1000,
    // Prices a watt differ by a factor of 1.65 either way (standard deviation).
    price: panel.power * 6 * Math.exp(0.5 * normal()),
    light,
    halfAngle: made.halfAngle,
    input: (extra) => ({
      session,
      layout: {
        field,
        emitter,
        distance: REFERENCE,
        grid: { shape: { columns: 3, rows: 3, inset: 2.54 }, accepted: [0, 1, 2, 3, 4, 5, 6, 7, 8] },
        ...(extra === 'sweep' && { sweep: SWEEP }),
        ...(extra === 'beyond' && { beyond: BEYOND }),
        targets: TARGETS,
      },
      grid: takeReadings(grid, SENSOR, undefined),
      ...(extra === 'sweep' && { sweep: { ...takeReadings(sweep, SENSOR, undefined), ownDistance: 0.06 } }),
      ...(extra === 'beyond' && { beyond: takeBeyond(beyond, SENSOR, undefined) }),
      errors,
      seed: seed * 31 + 7,
    }),
  };
}

/** What of a panel's estimates holds the truth. */
export interface Outcome {
  kind: string;
  result: OpticsResult;
  /** By name: whether the 95 % interval holds the truth; nothing where it is withheld. */
  holds: Partial<Record<keyof Case['truth'], boolean>>;
  /** Half-width of the interval of the emitted power over its value. */
  halfWidth: number | undefined;
  /** Price per emitted watt, true, by the model and by the common figure. */
  exponent: { true: number; modelled: number | undefined; common: number };
  error: number | undefined;
  /** True half angle over the ends of its interval, for beams that have one. */
  halfAngle: { truth: number; low: number; high: number } | undefined;
  milliseconds: number;
}

/** Works a case out, and holds it against the truth. */
export function outcomeOf(it: Case, extra: Extra): Outcome {
  const input = it.input(extra);
  const start = process.cpuUsage();
  const result = estimatePanel(input);
  const milliseconds = process.cpuUsage(start).user / 1000;
  const { estimates } = result;
  const exponent = {
    true: it.price / it.truth.emitted,
    common: (it.price * it.gain) / it.common,
    modelled: estimates && (it.price * it.gain) / estimates.emitted.value,
  };
  if (!estimates)
    return {
      kind: it.kind,
      result,
      holds: {},
      halfWidth: undefined,
      exponent,
      error: undefined,
      halfAngle: undefined,
      milliseconds,
    };
  const target = (cm: number) => estimates.targets.find((one) => one.distance === cm);
  const pairs = {
    emitted: estimates.emitted,
    capture: estimates.capture,
    mean30: target(30)?.mean,
    peak30: target(30)?.peak,
    mean60: target(60)?.mean,
    peak60: target(60)?.peak,
  };
  const holds: Outcome['holds'] = {};
  for (const [name, estimate] of Object.entries(pairs)) {
    const key = name as keyof Case['truth'];
    if (estimate) holds[key] = estimate.interval95[0] <= it.truth[key] && it.truth[key] <= estimate.interval95[1];
  }
  const [low, high] = estimates.emitted.interval95;
  return {
    kind: it.kind,
    result,
    holds,
    halfWidth: (high - low) / 2 / estimates.emitted.value,
    exponent,
    error: estimates.emitted.value / it.truth.emitted - 1,
    halfAngle:
      it.halfAngle === undefined
        ? undefined
        : { truth: it.halfAngle, low: estimates.halfAngle.interval95[0], high: estimates.halfAngle.interval95[1] },
    milliseconds,
  };
}

/** Kendall's tau of pairs: concordant less discordant over all. */
export function kendallTau(pairs: ReadonlyArray<readonly [number, number]>): number {
  let sum = 0;
  let count = 0;
  pairs.forEach(([a, b], i) => {
    for (const [c, d] of pairs.slice(i + 1)) {
      sum += Math.sign((a - c) * (b - d));
      count++;
    }
  });
  return sum / count;
}
