import { obliqueErrorOver } from '../angular-response.ts';
import type { DistanceSetting } from '../distance-setting.ts';
import type { Contribution, Figure } from '../figure.ts';
import { angularLine, calibrationLines, type Meter, repeatabilityLine, resolutionLine } from '../meter.ts';
import { type BandShares, SHARES_UNKNOWN, spectralLines } from '../spectral-response.ts';
import { rectangular } from '../uncertainty.ts';
import { CLAIM_UNCERTAINTY } from './order-fit.ts';

/** A line of a budget, before it is known how far a figure answers to it. */
export type ErrorLine = Omit<Contribution, 'contribution'>;

/**
 * What the truth is beyond what is stated, when an error is at one standard uncertainty: a reading that is 2 % too
 * high has a `reading` of -0.02. What is left out is not touched.
 */
export interface ErrorEffect {
  /** Relative, on every reading alike. */
  reading?: number;
  /** mW/cm2, on every reading alike. */
  offset?: number;
  /** Oblique light: relative, on the mean of the readings that give the power; more where light is more oblique. */
  angular?: number;
  /** Distance from the LED plane, cm. */
  distance?: number;
  /** Sides of the LED field, cm. */
  width?: number;
  height?: number;
  /** How far the light reaches past each edge, cm. */
  edge?: number;
  /** Half angle of the beam, relative. */
  halfAngle?: number;
}

/** One error, shared by all that it touches. */
export interface SharedError {
  line: ErrorLine;
  effect: ErrorEffect;
}

/** What the errors of a session follow from. */
export interface ErrorSources {
  /** `<panel>/<date>` */
  session: string;
  panel: string;
  meter: Meter;
  /** How much of the light lies in each band; all of it in either where it is left out. */
  bands?: BandShares;
  distance: DistanceSetting;
  width: Figure;
  height: Figure;
  /** Half-width of how far the light may reach further out or less far, cm (see `assumedEmitter`). */
  edge: number;
}

const bare = ({ contribution: _, ...line }: Contribution): ErrorLine => line;

/**
 * Errors that a session's readings share, under the keys that its other figures use, so that they cancel against
 * those: calibration, offset and oblique response of the meter, the distance, the sides of the field, and how far
 * the light reaches past its edges.
 */
export function sharedErrors(sources: ErrorSources): SharedError[] {
  const { session, panel, meter, bands = SHARES_UNKNOWN, distance, width, height, edge } = sources;
  const lit = { width: width.value, height: height.value, distance: distance.distance };
  const oblique = meter.angularResponse ? obliqueErrorOver(meter.angularResponse, lit) : 0;
  const errors: SharedError[] = [
    ...calibrationLines(meter, 1).map((line) => ({
      line: bare(line),
      effect: line.key.endsWith('/offset') ? { offset: -line.contribution } : { reading: -line.contribution },
    })),
    ...spectralLines(meter, 1, bands).map((line) => ({ line: bare(line), effect: { reading: -line.contribution } })),
    ...angularLine(meter, session, oblique).map((line) => ({
      line: bare(line),
      effect: { angular: -line.contribution },
    })),
  ];
  if (distance.halfWidth > 0) {
    errors.push({
      line: {
        key: `${session}/distance`,
        source: 'Setting of the distance',
        type: 'B',
        distribution: 'rectangular',
        degreesOfFreedom: Number.POSITIVE_INFINITY,
        evaluation: `±${distance.halfWidth} cm at ${distance.distance} cm, rectangular; through the model of the panel`,
      },
      effect: { distance: rectangular(distance.halfWidth) },
    });
  }
  const sides = new Map<string, SharedError>();
  for (const [side, figure] of [
    ['width', width],
    ['height', height],
  ] as const) {
    for (const line of figure.budget) {
      const known = sides.get(line.key) ?? { line: bare(line), effect: {} };
      sides.set(line.key, { ...known, effect: { ...known.effect, [side]: -line.contribution } });
    }
  }
  errors.push(...sides.values());
  if (edge > 0) {
    errors.push({
      line: {
        key: `${panel}/light-edge`,
        source: 'How far the light reaches past the edges of the field',
        type: 'B',
        distribution: 'rectangular',
        degreesOfFreedom: Number.POSITIVE_INFINITY,
        evaluation: `±${Number(edge.toPrecision(2))} cm on each side, rectangular; our own choice`,
      },
      effect: { edge: rectangular(edge) },
    });
  }
  return errors;
}

/** The error of a claimed beam angle. */
export function claimError(panel: string): SharedError {
  return {
    line: {
      key: `${panel}/claimed-beam`,
      source: 'Claimed beam angle',
      type: 'B',
      distribution: 'normal',
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      evaluation: `${100 * CLAIM_UNCERTAINTY} % of the half angle, normal; our own choice`,
    },
    effect: { halfAngle: CLAIM_UNCERTAINTY },
  };
}

/** Readings at several places, and what each is off by on its own. */
export interface Readings {
  /** Means of the kept readings at each place, mW/cm2. */
  values: number[];
  /** Relative standard uncertainty of each from scatter, and the line that it belongs to. */
  scatter: number[];
  scatterLine: ErrorLine;
  /** The same from rounding to the display's steps; rectangular. */
  rounding: number[];
  roundingLine: ErrorLine;
}

/**
 * Takes readings with their repeats: scatter from the repeats where there are any, pooled over the places, else from
 * the instrument file.
 *
 * @param kept readings of each place that count, mW/cm2, at least one each
 * @param key of the budget lines: `<session>/grid`
 * @param pooled standard deviation of repeats, and whether it is relative to the reading
 */
export function takeReadings(
  kept: readonly (readonly number[])[],
  meter: Meter,
  key: string,
  pooled: { standardDeviation: number; degreesOfFreedom: number; isRelative: boolean } | undefined,
): Readings {
  const values = kept.map((it) => it.reduce((sum, value) => sum + value, 0) / it.length);
  const share = kept.map((it) => 1 / Math.sqrt(it.length));
  const stated = repeatabilityLine(meter, key, 1)[0];
  const scatterLine: ErrorLine = pooled
    ? {
        key: `${key}/repeatability`,
        source: 'Repeats at a point',
        type: 'A',
        distribution: 't',
        degreesOfFreedom: pooled.degreesOfFreedom,
        evaluation: `pooled over repeats at a point, ${pooled.degreesOfFreedom} degrees of freedom`,
      }
    : {
        key: `${key}/repeatability`,
        source: 'Repeatability',
        type: 'B',
        distribution: 'normal',
        degreesOfFreedom: Number.POSITIVE_INFINITY,
        evaluation: stated?.evaluation ?? 'none stated',
      };
  const rounding = resolutionLine(meter, key)[0];
  return {
    values,
    scatter: values.map((value, j) => {
      if (!pooled) return (meter.repeatability ?? 0) * (share[j] as number);
      return (pooled.standardDeviation * (share[j] as number)) / (pooled.isRelative ? 1 : value);
    }),
    scatterLine,
    rounding: values.map((value) => (rounding?.contribution ?? 0) / value),
    roundingLine: {
      key: `${key}/resolution`,
      source: `Resolution of the ${meter.name}`,
      type: 'B',
      distribution: 'rectangular',
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      evaluation: 'half a step either way a reading, rectangular',
    },
  };
}
