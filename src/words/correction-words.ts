import type { Unit } from '../measure/metrics.ts';
import { showDate, showFigure } from './format.ts';

/** What a figure was or is: a number in its unit, with its 95 % interval where that is known; a text; null for no figure. */
type Value = { value: number; interval95: readonly [number, number] | null } | string | null;

/** What stood there, or stands there since: `82.1 ± 0.9 W`, `no figure`. */
function valueText(it: Value, unit: Unit, currency: string): string {
  if (it === null) return 'no figure';
  if (typeof it === 'string') return it;
  const { value, interval95 } = it;
  const half = interval95 && (interval95[1] - interval95[0]) / 2;
  return showFigure(
    { value, unit, interval95, standardUncertainty: half, coverageFactor: half === null ? null : 1 },
    currency,
  ).text;
}

/** `82.1 ± 0.9 W → 92.1 ± 1.0 W`. */
export function correctedText({ from, to }: { from: Value; to: Value }, unit: Unit, currency: string): string {
  return `${valueText(from, unit, currency)} → ${valueText(to, unit, currency)}`;
}

/** The mark of a figure that was corrected: `corrected 6 Oct 2026`. */
export const correctedOn = (date: string) => `corrected ${showDate(date)}`;
