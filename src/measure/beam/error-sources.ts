import { at } from '../at.ts';
import type { ErrorSource, Figure } from '../figure.ts';
import type { AngularResponse } from '../instrument/angular-response.ts';
import {
  angularComponents,
  calibrationComponents,
  type Instrument,
  resolutionComponents,
} from '../instrument/instrument.ts';
import { type ModeLight, SHARES_UNKNOWN, spectralComponents } from '../instrument/spectral-response.ts';
import type { DistanceSetting } from '../irradiance/distance-setting.ts';
import { coverageFactor, rectangular, typeB } from '../uncertainty.ts';

declare module '../statement.ts' {
  interface StatementData {
    'beam-oblique-by-angles': object;
    /** In cm. */
    'beam-distance-evaluated': { halfWidth: number; distance: number };
    /** Error: how far the light reaches past the edges of the field. */
    'beam-light-edge': object;
    /** In cm on each side. */
    'beam-light-edge-evaluated': { halfWidth: number };
  }
}

/**
 * What the truth is beyond what is stated, when an error is at one standard uncertainty: a reading that is 2 % too
 * high has a `reading` of -0.02. What is left out is not touched.
 */
export interface ErrorEffect {
  /** Relative, on every reading alike. */
  reading?: number;
  /** mW/cm2, on every reading alike. */
  offset?: number;
  /** Oblique light: how much too high each reading is follows from the angles at which its light comes in. */
  angular?: AngularResponse;
  /** Distance from the LED plane, cm. */
  distance?: number;
  /** Sides of the LED field, cm. */
  width?: number;
  height?: number;
  /** How far the light reaches past each edge, cm. */
  edge?: number;
}

/** One error, shared by all that it touches. */
export interface SharedError {
  source: ErrorSource;
  effect: ErrorEffect;
}

/**
 * Whether an error moves readings against one another, so that the readings say something of it; the others are a mere
 * gain, which is on every reading alike.
 */
export function movesReadingsApart({ effect }: SharedError): boolean {
  return effect.reading === undefined;
}

/** What the errors of a session follow from. */
export interface ErrorSources {
  /** `<panel>/<date>` */
  session: string;
  panel: string;
  instrument: Instrument;
  /** How much of the light lies in each band; all of it in either where it is left out. */
  bands?: ModeLight;
  distance: DistanceSetting;
  width: Figure;
  height: Figure;
  /** Half-width of how far the light may reach further out or less far, cm (see `assumedEmitter`). */
  edge: number;
}

/**
 * Errors that a session's readings share, under the keys that its other figures use, so that they cancel against
 * those: calibration, offset and oblique response of the instrument, the distance, the sides of the field, and how far
 * the light reaches past its edges.
 */
export function sharedErrors(sources: ErrorSources): SharedError[] {
  const { session, panel, instrument, bands = SHARES_UNKNOWN, distance, width, height, edge } = sources;
  const { angularResponse } = instrument;
  const errors: SharedError[] = [
    ...calibrationComponents(instrument, 1).map(({ source, contribution }) => ({
      source,
      effect: source.key.endsWith('/offset') ? { offset: -contribution } : { reading: -contribution },
    })),
    ...spectralComponents(instrument, 1, bands).map(({ source, contribution }) => ({
      source,
      effect: { reading: -contribution },
    })),
    ...(angularResponse
      ? angularComponents(instrument, session, 1).map(({ source }) => ({
          source: {
            ...source,
            evaluation: { code: 'beam-oblique-by-angles' } as const,
          },
          effect: { angular: angularResponse },
        }))
      : []),
  ];
  if (distance.halfWidth > 0) {
    errors.push({
      source: typeB({
        key: `${session}/distance`,
        what: { code: 'distance-setting' },
        distribution: 'rectangular',
        evaluation: { code: 'beam-distance-evaluated', halfWidth: distance.halfWidth, distance: distance.distance },
      }),
      effect: { distance: rectangular(distance.halfWidth) },
    });
  }
  const sides = new Map<string, SharedError>();
  for (const [side, figure] of [
    ['width', width],
    ['height', height],
  ] as const) {
    for (const { source, contribution } of figure.budget) {
      const known = sides.get(source.key) ?? { source, effect: {} };
      sides.set(source.key, { ...known, effect: { ...known.effect, [side]: -contribution } });
    }
  }
  errors.push(...sides.values());
  if (edge > 0) {
    errors.push({
      source: typeB({
        key: `${panel}/light-edge`,
        what: { code: 'beam-light-edge' },
        distribution: 'rectangular',
        evaluation: { code: 'beam-light-edge-evaluated', halfWidth: edge },
      }),
      effect: { edge: rectangular(edge) },
    });
  }
  return errors;
}

/** Readings at several places, and what each is off by on its own. */
export interface Readings {
  /** Means of the accepted readings at each place, mW/cm2. */
  values: number[];
  /** Standard uncertainty of each from scatter, mW/cm2. */
  scatter: number[];
  /** The same from rounding to the display's steps; rectangular. */
  rounding: number[];
  /** Where the instrument's reading with the panel off was taken away, and its offset with it. */
  isOffTaken?: boolean[];
  /** Standard uncertainty of the distance of each on its own, cm, beside the one that all share. */
  ownDistance?: number;
}

/** Standard deviation of repeats, and whether it is relative to the reading. */
export interface PooledRepeats {
  standardDeviation: number;
  degreesOfFreedom: number;
  isRelative: boolean;
}

/**
 * Takes readings with their repeats: scatter from the repeats where there are any, pooled over the places, else from
 * the instrument file. A scatter that few repeats tell is widened as Student's t is (JCGM 100:2008, G.3).
 *
 * @param accepted readings of each place, mW/cm2, at least one each
 */
export function takeReadings(
  accepted: readonly (readonly number[])[],
  instrument: Instrument,
  pooled: PooledRepeats | undefined,
): Readings {
  const values = accepted.map((it) => it.reduce((sum, value) => sum + value, 0) / it.length);
  const rounding = resolutionComponents(instrument, '')[0]?.contribution ?? 0;
  const widened = pooled
    ? (pooled.standardDeviation * coverageFactor(pooled.degreesOfFreedom)) / coverageFactor(Number.POSITIVE_INFINITY)
    : 0;
  return {
    values,
    scatter: values.map((value, j) => {
      const single = pooled ? widened * (pooled.isRelative ? value : 1) : (instrument.repeatability ?? 0) * value;
      return single / Math.sqrt((accepted[j] as readonly number[]).length);
    }),
    rounding: values.map(() => rounding),
  };
}

/** A reading past an edge. */
export interface BeyondReading {
  /** Accepted repeats, mW/cm2. */
  on: readonly number[];
  /** The readings are under what they say. */
  isBound?: boolean;
  /** What the place gave with the panel off, mW/cm2. */
  off?: number;
}

/**
 * Takes readings past the edges. What the panel off gives is taken away, and the instrument's offset goes with it. A reading
 * under the display's first step lies anywhere below: half of it, give or take that half.
 */
export function takeBeyond(
  places: readonly BeyondReading[],
  instrument: Instrument,
  pooled: PooledRepeats | undefined,
): Readings {
  const taken = takeReadings(
    places.map((it) => it.on),
    instrument,
    pooled,
  );
  const { values, scatter, rounding } = taken;
  places.forEach(({ isBound, off }, j) => {
    const value = at(values, j);
    if (isBound) {
      values[j] = value / 2;
      rounding[j] = rectangular(value / 2);
      scatter[j] = 0;
    }
    if (off !== undefined) {
      values[j] = at(values, j) - off;
      // The reading with the panel off has steps too.
      rounding[j] = Math.hypot(at(rounding, j), resolutionComponents(instrument, '')[0]?.contribution ?? 0);
    }
  });
  return { ...taken, isOffTaken: places.map((it) => it.off !== undefined) };
}
