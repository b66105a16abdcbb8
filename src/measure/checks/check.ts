import type { Figure, Flag } from '../figure.ts';
import type { ClaimCheck } from '../irradiance/claims.ts';
import type { MetricId } from '../metrics.ts';
import type { FieldKind } from './smaller-unit.ts';

/** What a distance was set for: the light on the bench, a kind of field, or the maker's claim of irradiance. */
export type DistanceOf = 'bench' | FieldKind | 'claim';

/** A distance that the tester set or wrote down. */
export interface SetDistance {
  of: DistanceOf;
  /** cm */
  value: number;
  /** Where it stands, as in a flag's `at`. */
  at: readonly PropertyKey[];
  /** Metrics that rest on it. */
  concerns: readonly MetricId[];
}

/** What was read with one kind of instrument in the session. */
export interface InstrumentUse {
  /** `irradiance`, `mains`, … */
  kind: string;
  /** Undefined where the session names no such instrument. */
  name: string | undefined;
  /** Lowest and highest reading of its display, and its step, in the canonical unit. */
  lowest?: number | undefined;
  highest?: number | undefined;
  step?: number | undefined;
  /** Metrics of what was read with it. */
  metrics: readonly MetricId[];
}

/** Width and height, cm. */
export interface Size {
  width: number;
  height: number;
}

/** A check standard that tells against a session: it was beyond its limits about the day, or was not read. */
export interface StandardFact {
  /** File name of the standard. */
  id: string;
  /** Names of the standard and of the instrument that reads it. */
  standard: string;
  instrument: string;
  /** The reading that counts for the day, with the limit that it lies beyond; undefined where none is near. */
  near:
    | {
        date: string;
        value: number;
        side: 'above' | 'below';
        limit: number;
        centre: number;
        /** Distance from the centre line, %; undefined where a share means nothing, as of a level. */
        share: number | undefined;
        unit: string;
      }
    | undefined;
  /** Days within which one would be near. */
  days: number;
  /** Metrics that rest on the instrument. */
  reads: readonly MetricId[];
  /** These are all that do, whatever else is made of them. */
  isAll: boolean;
}

/** What the checks look at: one session of one panel, with what belongs to the panel as a whole. */
export interface Facts {
  /** The figure of a metric, where there is one. */
  figure(metric: MetricId): Figure | undefined;
  /** Mean of the accepted readings of each grid point, row by row; null where none was accepted. */
  gridPoints: ReadonlyArray<number | null>;
  /** How many points a row has. */
  gridColumns: number;
  field?: Size | undefined;
  housing?: Size | undefined;
  /** Day of the price that is used, `YYYY-MM-DD`. */
  priceDate?: string | undefined;
  /** The day for which the guide is built; an argument, since nothing here reads a clock. */
  today: string;
  sessionDate: string;
  /** Instruments behind the session's figures: the day of their readings, and the day until which each calibration holds. */
  calibrations: ReadonlyArray<{ instrument: string; readOn: string; due: string; reads: readonly MetricId[] }>;
  /** Check standards that tell against the session; none where all held, or where the guide keeps none. */
  standards: readonly StandardFact[];
  claims: readonly ClaimCheck[];
  /** The guide's reference distance, cm. */
  reference: number;
  distances: readonly SetDistance[];
  /** s */
  warmUp?: number | undefined;
  /** LEDs, counted on the piece or else as claimed. */
  ledCount?: number | undefined;
  instruments: readonly InstrumentUse[];
  /** What the other sessions of the guide read with the panel off, by metric: the middle, and of how many. */
  rooms: ReadonlyMap<MetricId, { usual: number; count: number }>;
}

/** A flag as its check raises it; whose it is, the list of checks adds. */
export type RaisedFlag = Omit<Flag, 'check'>;

/**
 * One plausibility check: looks at the facts and tells, as codes with their numbers, what is odd. It never changes a
 * figure.
 */
export interface Check {
  /** Stable: it stands in published data, and its file has its name. */
  id: string;
  run(facts: Facts): RaisedFlag[];
}
