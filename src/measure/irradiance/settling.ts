import { SETTLED_SPREAD, SETTLED_WINDOW, SHORTEST_LOG } from '../log/settled-criterion.ts';

/** One reading of the output, or of the draw, while a panel warms up. */
export interface WarmUpReading {
  /** s since the panel was switched on. */
  readonly seconds: number;
  /** As displayed, in any unit. */
  readonly value: number;
}

/** What readings of a warm-up say. */
export interface Settling {
  /**
   * `too-early`: there are not yet three readings over half an hour. `moving`: there are, and they span too much.
   * `settled`: the span is within the rule.
   */
  readonly state: 'too-early' | 'moving' | 'settled';
  /**
   * Highest less lowest, in % of the last reading, over the window that is judged; while it is too early, over all
   * readings. Undefined with fewer than two, or where the last one is not above 0.
   */
  readonly spreadPercent?: number;
  /** The most that the span may be, in % of the last reading: 0.5, or one step of a coarser display. */
  readonly limitPercent?: number;
  /** s: the first of the readings that have stayed within the rule up to now. Undefined where the last one alone does. */
  readonly since?: number;
  /** s: when the next reading is due, 15 minutes after the last one that counts. */
  readonly nextAt: number;
  /** s: half an hour after `since`, or after the last reading: it can't settle earlier. Undefined once it has. */
  readonly notBefore?: number;
}

/** A hand at the bench is not a clock: by so many s a reading may come early. Our own choice, no source. */
export const SETTLING_EARLY = 30;
/** s: whoever reads more often than every 15 minutes has a reading so far from both ends, or none between them. Likewise. */
const BETWEEN = 600;

/**
 * Whether a panel's output has settled: three readings, 15 minutes apart, whose span is under 0.5 % of the last. Where
 * the display is coarser than that, no more than one step of it. Where it was read more often, all readings of the last
 * half hour count. Light and draw are judged each for itself (`bothSettled`).
 *
 * It judges what was read and foretells nothing: an output that falls exponentially, with a time constant of an hour,
 * can pass while 0.8 % is still to go, that is 0.5 % / (e^0.5 - 1).
 *
 * Source: LM-79-08 from memory, the text was not seen; see the page on warm-up.
 *
 * @param readings in any order; one that is not above 0 never settles
 * @param resolution step of the display, in the unit of the readings
 */
export function settling(readings: readonly WarmUpReading[], resolution = 0): Settling {
  const inOrder = readings.toSorted((a, b) => a.seconds - b.seconds);
  const last = inOrder.at(-1);
  if (!last) return { state: 'too-early', nextAt: 0, notBefore: SHORTEST_LOG };
  const fits = (span: readonly WarmUpReading[]) => isWithin(spanOf(span), last.value, resolution);
  const window = windowOf(inOrder);
  const percent = percentOf(window ?? inOrder, last.value);
  const isSettled = window !== undefined && fits(window);
  const first = firstWithin(inOrder, fits);
  const since = first === last ? undefined : first?.seconds;
  const notBefore = (since ?? last.seconds) + SHORTEST_LOG;
  return {
    state: isSettled ? 'settled' : window ? 'moving' : 'too-early',
    ...(percent !== undefined && { spreadPercent: percent, limitPercent: limitOf(last.value, resolution) }),
    ...(since !== undefined && { since }),
    nextAt: last.seconds + SETTLED_WINDOW,
    ...(!isSettled && { notBefore: Math.max(notBefore, last.seconds) }),
  };
}

/** Light and draw together: settled where each has, and as far as the one that is farthest behind. */
export function bothSettled(series: readonly Settling[]): Settling['state'] {
  if (series.length === 0) return 'too-early';
  return (['too-early', 'moving'] as const).find((state) => series.some((it) => it.state === state)) ?? 'settled';
}

/**
 * The readings of the last half hour: from the latest one that lies so far back. Undefined where none does, or where
 * none lies about the middle, so that there are not three readings apart.
 */
function windowOf(inOrder: readonly WarmUpReading[]): readonly WarmUpReading[] | undefined {
  const end = inOrder.at(-1)?.seconds ?? 0;
  const from = inOrder.findLastIndex((it) => it.seconds <= end - SHORTEST_LOG + 2 * SETTLING_EARLY);
  const window = inOrder.slice(Math.max(from, 0));
  const start = window[0]?.seconds ?? 0;
  const isBetween = ({ seconds }: WarmUpReading) => seconds - start >= BETWEEN && end - seconds >= BETWEEN;
  return from >= 0 && window.some(isBetween) ? window : undefined;
}

/** The earliest reading from which on all are within the rule. */
function firstWithin(
  inOrder: readonly WarmUpReading[],
  fits: (span: readonly WarmUpReading[]) => boolean,
): WarmUpReading | undefined {
  let from = inOrder.length - 1;
  while (from > 0 && fits(inOrder.slice(from - 1))) from--;
  return fits(inOrder.slice(from)) ? inOrder[from] : undefined;
}

const spanOf = (span: readonly WarmUpReading[]) => {
  const values = span.map((it) => it.value);
  return Math.max(...values) - Math.min(...values);
};

function percentOf(span: readonly WarmUpReading[], last: number): number | undefined {
  return span.length > 1 && last > 0 ? (100 * spanOf(span)) / last : undefined;
}

/** % of the last reading. */
const limitOf = (last: number, resolution: number) => Math.max(SETTLED_SPREAD, (100 * resolution) / last);

/** Binary dust, so that 41.2 less 41.1 is one step of 0.1. */
const DUST = 1e-9;

function isWithin(span: number, last: number, resolution: number): boolean {
  if (!(last > 0)) return false;
  // A hair under 0.5 % is under it, one step is one step.
  return span < (SETTLED_SPREAD / 100) * last * (1 - DUST) || span <= resolution * (1 + DUST);
}
