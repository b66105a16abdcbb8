import { isMetricId, metricById, type Unit } from '../../measure/metrics.ts';
import { lastDigitOf, type Showable, showFigure } from '../../words/format.ts';
import { type FigureState, isNumber, type NumberState } from './guide-state.ts';

/** A figure without an interval that moves by this share of itself counts as one that moved by half of its interval. Our own choice. */
const SHARE_LIKE_AN_INTERVAL = 0.05;

/** How far a figure moved: not at all, within its rounding, or for readers to see. */
export type Move = { kind: 'same' | 'last-digit' } | { kind: 'moved'; weight: number };

/**
 * How far a figure moved. It has moved where its value or an end of its interval did by more than one step of the last
 * digit that either is shown with; a figure without an interval, where its text differs.
 */
export function moveOf(was: FigureState, now: FigureState, currency: string): Move {
  if (!isNumber(was) || !isNumber(now)) {
    return isNumber(was) === isNumber(now) ? { kind: 'same' } : { kind: 'moved', weight: Number.POSITIVE_INFINITY };
  }
  const [one, other] = [showableOf(was, currency), showableOf(now, currency)];
  const weight = weightOf(one, other);
  const isOtherKind = was.bound !== now.bound || (was.interval95 === null) !== (now.interval95 === null);
  if (isOtherKind) return { kind: 'moved', weight: Math.max(1, weight) };
  const step = Math.max(lastDigitOf(one), lastDigitOf(other));
  const isAlike = showFigure(one, currency).text === showFigure(other, currency).text;
  if (step === 0) return isAlike ? { kind: 'same' } : { kind: 'moved', weight };
  const ends = ({ value, interval95 }: NumberState) => [value, ...(interval95 ?? [])];
  const later = ends(now);
  if (ends(was).some((it, i) => Math.abs(it - (later[i] ?? it)) > step)) return { kind: 'moved', weight };
  return { kind: isAlike ? 'same' : 'last-digit' };
}

/** The figure as pages show it. */
export function shownState(it: NumberState, currency: string) {
  return showFigure(showableOf(it, currency), currency);
}

/** What is shown of a figure whose coverage factor is known by its interval alone. */
function showableOf({ value, uncertainty, interval95, unit, bound }: NumberState, currency: string): Showable {
  // The canonical unit, as figures have it.
  const canonical = unit.replace(currency, 'currency') as Unit;
  return {
    value,
    unit: canonical,
    ...(bound && { bound }),
    standardUncertainty: uncertainty,
    interval95,
    coverageFactor: interval95 && uncertainty ? halfOf(value, interval95) / uncertainty : interval95 && 0,
  };
}

/** Half of an interval; one that is cut at a physical zero reaches as far as its upper end. */
function halfOf(value: number, [low, high]: readonly [number, number]): number {
  return low === 0 ? high - value : (high - low) / 2;
}

function weightOf(was: Showable, now: Showable): number {
  const halves = [was, now].flatMap(({ value, interval95 }) => (interval95 ? [halfOf(value, interval95)] : []));
  const half = Math.max(0, ...halves);
  const distance = Math.abs(now.value - was.value);
  if (half > 0) {
    const [before = half, after = half] = halves;
    // An interval that grows or shrinks counts by the share that it does so.
    return Math.max(distance / half, Math.abs(after - before) / half);
  }
  const size = Math.max(Math.abs(was.value), Math.abs(now.value));
  return size === 0 ? 0 : distance / size / SHARE_LIKE_AN_INTERVAL;
}

/** True for what is given in the guide's currency. */
export function isMoney(metric: string): boolean {
  return isMetricId(metric) && metricById(metric).unit.startsWith('currency');
}
