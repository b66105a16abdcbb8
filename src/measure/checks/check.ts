import type { Figure, Flag } from '../figure.ts';
import type { ClaimCheck } from '../irradiance/claims.ts';

/** A distance that the tester set or wrote down. */
export interface SetDistance {
  /** What it is of: "The bench distance". */
  what: string;
  /** cm */
  value: number;
  /** Where it stands, as in a flag's `at`. */
  at: readonly PropertyKey[];
  /** Metrics that rest on it. */
  concerns: readonly string[];
  /** The distance at which the light was read. */
  isBench?: boolean;
}

/** What was read with one kind of meter in the session. */
export interface InstrumentUse {
  /** `irradiance`, `mains`, … */
  kind: string;
  /** Undefined where the session names no such meter. */
  name: string | undefined;
  /** Lowest reading of its display, and its step, in the canonical unit. */
  lowest?: number | undefined;
  step?: number | undefined;
  /** Metrics of what was read with it. */
  metrics: readonly string[];
}

/** What the checks look at: one session of one panel, with what belongs to the panel as a whole. */
export interface Facts {
  /** The figure of a metric, where there is one. */
  figure(metric: string): Figure | undefined;
  /** Mean of the kept readings of each grid point, row by row; null where none was kept. */
  gridPoints: ReadonlyArray<number | null>;
  /** How many points a row has. */
  gridColumns: number;
  /** cm */
  field?: { width: number; height: number } | undefined;
  /** cm */
  housing?: { width: number; height: number } | undefined;
  /** Day of the price that is used, `YYYY-MM-DD`. */
  priceDate?: string | undefined;
  /** The day for which the guide is built; an argument, since nothing here reads a clock. */
  today: string;
  sessionDate: string;
  /** Meters used in the session and the day until which each calibration holds. */
  calibrations: ReadonlyArray<{ instrument: string; due: string; reads: readonly string[] }>;
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
  rooms: ReadonlyMap<string, { usual: number; count: number }>;
}

/** One plausibility check: looks at the facts and says in words what is odd. It never changes a figure. */
export interface Check {
  id: string;
  /** What it guards against, in a sentence. */
  guards: string;
  run(facts: Facts): Flag[];
}

/** Rounds for a sentence: at most three significant digits. */
export function words(value: number): string {
  return Number(value.toPrecision(3)).toString();
}
