import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { parseISO } from 'date-fns/parseISO';
import { mean } from 'simple-statistics';
import { type Drift, driftOf } from './drift.ts';
import { type ControlLimits, individualsLimits, RUN_LENGTH, runLengths, sideBeyond } from './individuals-chart.ts';

/** What was read of a check standard on a day: one reading, or repeats, which share all that was set up for them. */
export interface StandardReading {
  /** `YYYY-MM-DD` */
  date: string;
  values: readonly number[];
}

/** A day of a chart. */
export interface ChartPoint {
  date: string;
  /** Mean of the day's repeats. */
  value: number;
  repeats: number;
  /** It is one of those that set the limits. */
  isFirst: boolean;
  /** Distance from the day before; none at a stage's first. */
  range: number | undefined;
  /** Which limit it lies beyond; undefined within them, and where there are none yet. */
  beyond: 'above' | 'below' | undefined;
  /** It is the ninth or a later one on one side of the centre line. */
  isInRun: boolean;
}

/** Part of a chart that has limits of its own. */
export interface ChartStage {
  /** Day of the restart; of the first reading in the first stage. */
  from: string;
  /** Why the limits were restarted; undefined in the first stage. */
  reason: string | undefined;
  /** Oldest first. */
  points: readonly ChartPoint[];
  /** Undefined until enough readings are there. */
  limits: ControlLimits | undefined;
  /** Readings that are wanted until then. */
  missing: number;
  /** Undefined where readings are too few for it. */
  drift: Drift | undefined;
}

export interface ChartRules {
  /** How many first readings set the limits of a stage. */
  limitsFrom: number;
  /** From each of these days on the limits are set anew. */
  restarts?: ReadonlyArray<{ date: string; reason: string }>;
  /** Scatter that the step of the display alone may show. */
  leastSigma?: number;
}

/**
 * Control chart of a check standard, in stages from restart to restart, oldest first. A day's repeats count as their
 * mean: they share the day's setting-up, so that limits from their own scatter would be far too narrow (NIST/SEMATECH
 * e-Handbook, 2.2.2.2: the check standard's value is the average of the day; read).
 */
export function controlChart(
  readings: readonly StandardReading[],
  { limitsFrom, restarts = [], leastSigma = 0 }: ChartRules,
): ChartStage[] {
  const days = readings.filter((it) => it.values.length > 0).toSorted((a, b) => a.date.localeCompare(b.date));
  const starts = restarts.toSorted((a, b) => a.date.localeCompare(b.date));
  const first = days[0]?.date ?? '';
  const stages = [{ date: first, reason: undefined }, ...starts];
  return stages.map(({ date, reason }, i) => {
    const until = stages[i + 1]?.date;
    const own = days.filter((it) => it.date >= date && (until === undefined || it.date < until));
    return { from: date, reason, ...stageOf(own, limitsFrom, leastSigma) };
  });
}

function stageOf(
  days: readonly StandardReading[],
  limitsFrom: number,
  leastSigma: number,
): Pick<ChartStage, 'points' | 'limits' | 'missing' | 'drift'> {
  const values = days.map((it) => mean([...it.values]));
  const missing = Math.max(0, limitsFrom - values.length);
  const limits = missing === 0 ? individualsLimits(values.slice(0, limitsFrom), leastSigma) : undefined;
  const runs = limits ? runLengths(values, limits.centre) : [];
  const points = days.map(({ date, values: repeats }, i): ChartPoint => {
    const value = values[i] as number;
    const before = values[i - 1];
    return {
      date,
      value,
      repeats: repeats.length,
      isFirst: i < limitsFrom,
      range: before === undefined ? undefined : Math.abs(value - before),
      beyond: limits && sideBeyond(value, limits),
      isInRun: (runs[i] ?? 0) >= RUN_LENGTH,
    };
  });
  const steady = points.filter((_, i) => !isPassed(points, i));
  const start = steady[0]?.date ?? '';
  return {
    points,
    limits,
    missing,
    drift: driftOf(steady.map(({ date, value }) => [daysBetween(start, date), value])),
  };
}

/**
 * True for a point beyond the limits after which the next one is within them again: an upset of a day, which would turn a
 * line through all days. What stays beyond is no upset; to leave it out would be to leave out the end of a drift.
 */
function isPassed(points: readonly ChartPoint[], index: number): boolean {
  const next = points[index + 1];
  return points[index]?.beyond !== undefined && next !== undefined && next.beyond === undefined;
}

/** A day of a chart as a session sees it. */
export interface NearReading {
  point: ChartPoint;
  limits: ControlLimits | undefined;
  /** Days between the two. */
  days: number;
}

/**
 * The reading of a chart that is nearest to a day; of two as near the one that lies beyond its limits, or else the
 * earlier.
 *
 * @param most days that it may be away
 */
export function nearestReading(stages: readonly ChartStage[], day: string, most: number): NearReading | undefined {
  const near = stages
    .flatMap(({ points, limits }) => points.map((point) => ({ point, limits, days: daysApart(point.date, day) })))
    .filter((it) => it.days <= most);
  const [nearest] = near.toSorted(
    (a, b) => a.days - b.days || Number(b.point.beyond !== undefined) - Number(a.point.beyond !== undefined),
  );
  return nearest;
}

const daysBetween = (from: string, until: string) => differenceInCalendarDays(parseISO(until), parseISO(from));
const daysApart = (a: string, b: string) => Math.abs(daysBetween(a, b));
