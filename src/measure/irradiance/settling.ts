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
   * `too early`: there are not yet three readings 15 minutes apart. `moving`: there are, and they span too much.
   * `settled`: the span is within the rule.
   */
  readonly state: 'too early' | 'moving' | 'settled';
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

/** Readings that are held against each other, and s from one to the next: LM-79-08, from memory. */
export const SETTLING_READINGS = 3;
export const SETTLING_APART = 900;
/** Most that they may span, in % of the last; the last as denominator is our own choice. */
export const SETTLING_PERCENT = 0.5;
/** A hand at the bench is not a clock: by so many s a reading may come early. Our own choice, no source. */
export const SETTLING_EARLY = 30;

/**
 * Whether a panel's output has settled: three readings, 15 minutes apart, whose span is under 0.5 % of the last. Where
 * the display is coarser than that, no more than one step of it. All readings of that half hour count, those in between
 * as well. It judges what was read and foretells nothing; light and draw are judged each for itself (`bothSettled`).
 *
 * Source: LM-79-08 from memory, the text was not seen; see the page on warm-up.
 *
 * @param readings in any order; one that is not above 0 never settles
 * @param resolution step of the display, in the unit of the readings
 */
export function settling(readings: readonly WarmUpReading[], resolution = 0): Settling {
  const inOrder = readings.toSorted((a, b) => a.seconds - b.seconds);
  const last = inOrder.at(-1);
  if (!last) return { state: 'too early', nextAt: 0, notBefore: (SETTLING_READINGS - 1) * SETTLING_APART };
  const fits = (span: readonly WarmUpReading[]) => isWithin(spanOf(span), last.value, resolution);
  const window = windowOf(inOrder);
  const percent = percentOf(window ?? inOrder, last.value);
  const isSettled = window !== undefined && fits(window);
  const first = firstWithin(inOrder, fits);
  const since = first === last ? undefined : first?.seconds;
  const notBefore = (since ?? last.seconds) + (SETTLING_READINGS - 1) * SETTLING_APART;
  return {
    state: isSettled ? 'settled' : window ? 'moving' : 'too early',
    ...(percent !== undefined && { spreadPercent: percent, limitPercent: limitOf(last.value, resolution) }),
    ...(since !== undefined && { since }),
    nextAt: last.seconds + SETTLING_APART,
    ...(!isSettled && { notBefore: Math.max(notBefore, last.seconds) }),
  };
}

/** Light and draw together: settled where each has, and as far as the one that is farthest behind. */
export function bothSettled(series: readonly Settling[]): Settling['state'] {
  if (series.length === 0) return 'too early';
  return (['too early', 'moving'] as const).find((state) => series.some((it) => it.state === state)) ?? 'settled';
}

/** The last readings from the third back on, each 15 minutes before the next; undefined where they don't reach so far. */
function windowOf(inOrder: readonly WarmUpReading[]): readonly WarmUpReading[] | undefined {
  let from = inOrder.length - 1;
  for (let i = 1; i < SETTLING_READINGS; i++) {
    const wanted = (inOrder[from] as WarmUpReading).seconds - SETTLING_APART;
    const off = (at: number) => Math.abs((inOrder[at] as WarmUpReading).seconds - wanted);
    let best: number | undefined;
    for (let at = 0; at < from; at++) {
      if ((inOrder[at] as WarmUpReading).seconds > wanted + SETTLING_EARLY) break;
      if (best === undefined || off(at) <= off(best)) best = at;
    }
    if (best === undefined) return undefined;
    from = best;
  }
  return inOrder.slice(from);
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
const limitOf = (last: number, resolution: number) => Math.max(SETTLING_PERCENT, (100 * resolution) / last);

/** Binary dust, so that 41.2 less 41.1 is one step of 0.1. */
const DUST = 1e-9;

function isWithin(span: number, last: number, resolution: number): boolean {
  if (!(last > 0)) return false;
  // A hair under 0.5 % is under it, one step is one step.
  return span < (SETTLING_PERCENT / 100) * last * (1 - DUST) || span <= resolution * (1 + DUST);
}
