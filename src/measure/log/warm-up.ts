import { type ExponentialFit, exponentialFit, type NoFit } from './exponential-fit.ts';
import { at, type Bin, binned, sampleScatter, span, type TimeSeries } from './series.ts';
import { RANGE_OF_WINDOW, type Settling, settling, valueAround } from './settled.ts';
import { SETTLED_SPREAD, SHORTEST_LOG } from './settled-criterion.ts';

/** Stretches whose means are looked at, s: single samples scatter too much for a spread of half a percent. */
const STRETCHES = [60, 150, 300] as const;
/** Means in the fit, at most. */
const FIT_POINTS = 400;
/** How long after switching on a log may begin and still tell of the cold panel, s. Our own choice. */
export const COLD_UNTIL = 30;
/** Samples that the value from cold is a mean of, where there is no fit. */
const COLD_SAMPLES = 3;

/** Why a log says nothing of a settled value. */
export type NotSettled =
  /** Under half an hour. */
  | 'too-short'
  /** The last window's spread is over the limit. */
  | 'still-moving'
  /** Scatter alone would fill the limit. */
  | 'too-noisy';

/** A value with its standard uncertainty. */
export interface Uncertain {
  value: number;
  uncertainty: number;
}

/** What a log of the light from cold says. */
export interface WarmUp {
  /** From the first row to the last, s. */
  length: number;
  samples: number;
  /** Scatter of single samples, one standard deviation. */
  scatter: number;
  /** Length of the stretches whose means are looked at, s. */
  stretch: number;
  /** In the log's unit; or why there is none. */
  settled: Uncertain | NotSettled;
  /** In the log's unit: the first that was read, or where the fit begins; undefined where the log begins too late. */
  cold: Uncertain | undefined;
  /** Loss from cold, % of the value from cold; negative where it gains. */
  drop: Uncertain | undefined;
  /** s since switching on; standard uncertainty from the length of a stretch and from the scatter. */
  settlingTime: Uncertain | undefined;
  window: Settling;
  fit: ExponentialFit | NoFit;
  bins: readonly Bin[];
}

/**
 * A panel's light from cold. Times count from switching on. The settled value is the mean of the last 15 minutes and not the fit's:
 * it asks for no shape. Where there is no settled value nothing is held against one.
 */
export function warmUp(series: TimeSeries): WarmUp {
  const length = span(series);
  const scatter = sampleScatter(series);
  const { stretch, bins } = stretched(series, scatter);
  const ofBins = scatterOfBins(bins, scatter);
  const window = settling(bins, ofBins);
  const fit = exponentialFit(binned(series, Math.max(length / FIT_POINTS, 1e-9)));
  const settled = settledValue(length, window, ofBins, stretch);
  const cold = coldValue(series, fit, scatter);
  const isKnown = typeof settled !== 'string';
  const drop = isKnown && cold ? lossFrom(cold, settled) : undefined;
  return {
    ...{ length, samples: series.times.length, scatter, stretch, settled, cold, drop, window, fit, bins },
    settlingTime: isKnown ? timeToSettle(window, stretch, at(series.times, 0)) : undefined,
  };
}

/** How much higher the light was at a time than once it had settled, %. */
export function excessAt({ bins, settled, length, fit }: WarmUp, time: number): Uncertain | undefined {
  if (typeof settled === 'string') return undefined;
  const first = (bins[0] as Bin).time;
  const isWithin = time <= first + length;
  const read =
    typeof fit === 'object' ? fit.settled + fit.excess * Math.exp(-time / fit.constant) : valueAround(bins, time);
  const value = isWithin ? (read ?? settled.value) : settled.value;
  return {
    value: 100 * (value / settled.value - 1),
    uncertainty: (100 * Math.SQRT2 * settled.uncertainty) / Math.abs(settled.value),
  };
}

/** Means over the shortest stretches whose scatter leaves room for the criterion. */
function stretched(series: TimeSeries, scatter: number): { stretch: number; bins: Bin[] } {
  let made = { stretch: 60, bins: binned(series, 60) };
  for (const stretch of STRETCHES) {
    made = { stretch, bins: binned(series, stretch) };
    if (hasRoom(made.bins, scatterOfBins(made.bins, scatter))) break;
  }
  return made;
}

/** Scatter of means, from that of samples and how many they are of. */
function scatterOfBins(bins: readonly Bin[], scatter: number): number {
  const samples = bins.reduce((sum, it) => sum + it.samples, 0) / Math.max(1, bins.length);
  return scatter / Math.sqrt(Math.max(1, samples));
}

/** The spread that scatter makes of itself is under half the limit. */
function hasRoom(bins: readonly Bin[], scatter: number): boolean {
  const last = bins[bins.length - 1];
  return last !== undefined && (100 * RANGE_OF_WINDOW * scatter) / Math.abs(last.mean) < SETTLED_SPREAD / 2;
}

function settledValue(length: number, window: Settling, scatter: number, stretch: number): Uncertain | NotSettled {
  // A log of half an hour at one sample a minute ends a minute early.
  if (length < SHORTEST_LOG - stretch) return 'too-short';
  if ((100 * RANGE_OF_WINDOW * scatter) / Math.abs(window.mean) >= SETTLED_SPREAD) return 'too-noisy';
  if (!window.isSettled) return 'still-moving';
  // What is left of a drift lies within the window's spread.
  const drift = ((window.spread / 100) * Math.abs(window.mean)) / 2 / Math.sqrt(3);
  return { value: window.mean, uncertainty: Math.hypot(drift, scatter / Math.sqrt(window.bins)) };
}

function coldValue(series: TimeSeries, fit: ExponentialFit | NoFit, scatter: number): Uncertain | undefined {
  const { times, values } = series;
  if (at(times, 0) > COLD_UNTIL) return undefined;
  if (typeof fit === 'object') {
    return { value: fit.settled + fit.excess, uncertainty: Math.hypot(fit.settledUncertainty, fit.excessUncertainty) };
  }
  const count = Math.min(COLD_SAMPLES, values.length);
  const first = values.subarray(0, count);
  const mean = first.reduce((sum, it) => sum + it, 0) / count;
  // It falls between these samples too.
  const slope = Math.abs(at(first, 0) - at(first, count - 1)) / 2 / Math.sqrt(3);
  return { value: mean, uncertainty: Math.hypot(scatter / Math.sqrt(count), slope) };
}

function lossFrom(cold: Uncertain, settled: Uncertain): Uncertain {
  const ratio = settled.value / cold.value;
  return {
    value: 100 * (1 - ratio),
    uncertainty: 100 * Math.abs(ratio) * Math.hypot(settled.uncertainty / settled.value, cold.uncertainty / cold.value),
  };
}

function timeToSettle({ since }: Settling, stretch: number, first: number): Uncertain | undefined {
  if (!since) return undefined;
  // Settled from the first stretch on: from the first row.
  const time = since.time - stretch <= first ? first : since.time;
  return { value: time, uncertainty: Math.hypot(stretch, since.to - since.from) / 2 / Math.sqrt(3) };
}
