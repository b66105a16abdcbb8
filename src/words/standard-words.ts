import type { ChartPoint, ChartStage } from '../measure/control/control-chart.ts';
import type { Drift } from '../measure/control/drift.ts';
import { decimalsFor, fixed, listed, measuredText, showDate, unitBehind } from './format.ts';
import { rounded } from './rounded.ts';

/* How the control chart of a check standard is put into words: the answer first, then what stands behind it. */

/** What the words of a chart's numbers need to know. */
export interface ChartUnit {
  /** Unit of the readings. */
  unit: string;
  /** Drift and scatter stand in % of the centre line. */
  isRelative: boolean;
}

/** A value of a chart, with one decimal more than the limits' distance from one another asks for. */
export function chartValue(value: number, { limits }: Pick<ChartStage, 'limits'>): string {
  return limits ? fixed(value, decimalsFor(limits.sigma)) : rounded(value, 4);
}

/** How many of the judged days were within the limits; or how many readings there are, where none could be judged. */
export function heldWords(stages: readonly ChartStage[]): string {
  const judged = stages.flatMap(({ points, limits }) => (limits ? points : []));
  const current = stages.at(-1);
  const count = current?.points.length ?? 0;
  const waiting =
    current && !current.limits
      ? `${count === 0 ? 'not read yet' : `read on ${days(count)}`}${stages.length > 1 ? ' since the limits were restarted' : ' so far'}; ${current.missing} more ${current.missing === 1 ? 'sets' : 'set'} the limits`
      : undefined;
  if (judged.length === 0) return capital(waiting ?? 'not read yet');
  const beyond = judged.filter((it) => it.beyond).length;
  const held =
    beyond === 0
      ? `Held within its limits on all ${days(judged.length)}`
      : `Held within its limits on ${judged.length - beyond} of ${days(judged.length)}`;
  return waiting ? `${held}; ${waiting}` : held;
}

/** The drift with its interval, and whether it is one: `drift −0.4 ± 0.6 % a year, which may be none`. */
export function driftWords(
  { drift, limits, from }: ChartStage,
  { unit, isRelative }: ChartUnit,
  isLater: boolean,
): string {
  if (!drift || !limits) return 'too few readings yet for a drift';
  const since = isLater ? ` since ${showDate(from)}` : '';
  const { isTold } = drift;
  return `drift ${perYear(drift, limits.centre, { unit, isRelative })} a year${since}, ${isTold ? 'more than chance would make' : 'which may be none'}`;
}

function perYear({ perYear: value, half }: Drift, centre: number, { unit, isRelative }: ChartUnit): string {
  const scale = isRelative ? 100 / centre : 1;
  return `${measuredText(value * scale, half * scale)}${unitBehind(isRelative ? '%' : unit)}`.replaceAll(' ', '\u00a0');
}

/** What is behind a drift that is told, or limits its interval; none where there is nothing to say. */
export function driftCaveats({ drift }: ChartStage, usedUpBy: string | undefined): string[] {
  if (!drift) return [];
  return [
    drift.isTold && 'The standard or the meter goes that way; the chart can’t tell which of the two.',
    usedUpBy !== undefined &&
      `At that rate it has gone as far as the calibration’s own uncertainty by ${showDate(usedUpBy)}.`,
    drift.isCorrelated && 'Readings resemble those before them, so that the drift is less sure than its ± says.',
  ].filter((it) => it !== false);
}

/** Where the limits are, how they came about, and what a day's scatter is. */
export function limitWordsOf(
  stage: ChartStage,
  { unit, isRelative }: ChartUnit,
  { first, expectedSigma }: { first: number; expectedSigma: number | undefined },
): string | undefined {
  const { limits } = stage;
  if (!limits) return undefined;
  const [low, high] = [limits.lower, limits.upper].map((it) => chartValue(it, stage));
  const share = (sigma: number) =>
    isRelative ? `${rounded((100 * sigma) / limits.centre, 2)} %` : `${rounded(sigma, 2)} ${unit}`;
  const meter =
    expectedSigma === undefined ? '' : `; the meter’s own repeatability would make ${share(expectedSigma)} of it`;
  return `Limits: ${low} to ${high} ${unit}, from its first ${days(first)}. From day to day it scatters by ${share(limits.sigma)} (one standard deviation)${meter}.`;
}

/** Days in a row on one side of the centre line, where they are too many for chance. */
export function runWords({ points, limits }: ChartStage): string | undefined {
  const last = points.at(-1);
  if (!last?.isInRun || !limits) return undefined;
  const side = last.value > limits.centre ? 'above' : 'below';
  const start = points.findLastIndex((it) =>
    side === 'above' ? it.value <= limits.centre : it.value >= limits.centre,
  );
  const count = points.length - 1 - start;
  return `The last ${days(count)} all lie ${side} the centre line: within the limits, and yet a shift.`;
}

/** What there is to say of a day, beside its reading. */
export function dayWords(point: ChartPoint, { limits }: ChartStage): string[] {
  return [
    point.beyond && `beyond the ${point.beyond === 'above' ? 'upper' : 'lower'} limit`,
    limits && point.range !== undefined && point.range > limits.rangeUpper && 'a large step',
    point.isInRun && 'in a run on one side',
    point.isFirst && 'sets the limits',
  ].filter((it) => typeof it === 'string');
}

/** All of a chart in a sentence, for who can't see it. */
export function chartDescription(name: string, stages: readonly ChartStage[], unit: string): string {
  const points = stages.flatMap((it) => it.points);
  const beyond = points.filter((it) => it.beyond);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return `${name}: no reading`;
  const restarts = stages.slice(1).map((it) => showDate(it.from));
  return [
    `${name}: ${points.length} ${points.length === 1 ? 'reading' : 'readings'} from ${showDate(first.date)} to ${showDate(last.date)} in ${unit}`,
    beyond.length > 0
      ? `beyond the limits on ${listed(beyond.map((it) => showDate(it.date)))}`
      : 'none beyond the limits',
    ...(restarts.length > 0 ? [`limits set anew on ${listed(restarts)}`] : []),
  ].join('; ');
}

const days = (count: number) => `${count} ${count === 1 ? 'day' : 'days'}`;
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
