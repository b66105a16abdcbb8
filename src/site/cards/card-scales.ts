import type { Ledger } from '../../ledger/ledger.ts';
import { isFigure, type Unit } from '../../measure/figure.ts';
import type { MetricId } from '../../measure/metrics.ts';
import { fixed, money, unitBehind } from '../../words/format.ts';

/** The end of a metric's scale, from nought; undefined where it has none. */
export type ScaleEnds = (metric: MetricId) => number | undefined;

/**
 * The ends of scales on every card of the guide: 1, 2 or 5 times a power of ten that holds all panels with their
 * intervals. One scale for things that are compared, and it stays where it is for most changes. Each end is found once
 * for all cards that are made with these: a thousand times a thousand panels would take a second.
 */
export function scaleEnds(ledger: Ledger): ScaleEnds {
  const known = new Map<MetricId, number | undefined>();
  return (metric) => {
    if (!known.has(metric)) known.set(metric, roundEnd(greatest(ledger, metric)));
    return known.get(metric);
  };
}

function greatest({ panels }: Ledger, metric: MetricId): number {
  let most = 0;
  for (const { figures } of panels.values()) {
    const it = figures.get(metric);
    if (isFigure(it)) most = Math.max(most, it.value, it.interval95?.[1] ?? it.value);
  }
  return most;
}

/** The least of 1, 2 and 5 times a power of ten that is no less; undefined for nought. */
export function roundEnd(most: number): number | undefined {
  if (!(most > 0)) return undefined;
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [1, 2, 5, 10].find((it) => it * power >= most * (1 - 1e-9)) ?? 10;
  return Number((step * power).toPrecision(1));
}

/** The end of a scale in words: `€50`, `200 W`. */
export function scaleWords(end: number, unit: Unit, currency: string): string {
  const decimals = Math.max(0, -Math.floor(Math.log10(end) + 1e-9));
  if (unit.startsWith('currency')) return money(end, currency, decimals);
  return `${fixed(end, decimals)}${unit === '1' ? '' : unitBehind(unit)}`;
}
