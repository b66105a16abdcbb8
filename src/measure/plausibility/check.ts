import type { ClaimCheck } from '../claims.ts';
import type { Figure, Flag } from '../figure.ts';

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
  calibrations: ReadonlyArray<{ meter: string; due: string; reads: readonly string[] }>;
  claims: readonly ClaimCheck[];
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
