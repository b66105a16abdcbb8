import { isFigure } from '../measure/figure.ts';
import type { MetricId } from '../measure/metrics.ts';
import { pricePerWatt } from '../measure/money/cost.ts';
import type { ClassTable, Conditions, Ledger, PanelEntry, PriceEntry, RankGroup, SizeClass } from './ledger.ts';
import { RANKED_BY } from './rank-bases.ts';

/** A panel whose price changed on a day. */
export interface PriceChange {
  panel: PanelEntry;
  was: PriceEntry;
  now: PriceEntry;
}

/** A panel whose place changed by it. */
export interface PlaceChange {
  panel: PanelEntry;
  was: number;
  now: number;
}

/** Prices of one day that moved places within a size class. */
export interface PriceMove {
  date: string;
  sizeClass: SizeClass;
  /** Under which they were all read. */
  conditions: Conditions;
  /** How many are ranked together by those prices. */
  of: number;
  changes: readonly PriceChange[];
  /** By the new place. */
  moves: readonly PlaceChange[];
}

/**
 * Days on which a price moved a place of the guide's own ranking: panels that are ranked together today, and had been read
 * and priced by then, in order by the prices of that day, and by those of the day before. Their light is what is known of
 * it today, on both days: what moves is the price alone. Places go by the figures as they stand, ties not told apart.
 */
export function priceMoves({ guide, classes, classesByEmitted }: Ledger): PriceMove[] {
  const tables = guide.rankBy === 'emitted' ? classesByEmitted : classes;
  const { power } = RANKED_BY[guide.rankBy === 'emitted' ? 'emitted' : 'optical'];
  return tables.flatMap((table) => table.groups.flatMap((group) => movesWithin(table, group, power)));
}

/** A panel of a ranking, with all that its place on some day follows from. */
interface Placed {
  panel: PanelEntry;
  power: number;
  firstRead: string;
  /** Oldest first. */
  prices: readonly PriceEntry[];
}

function movesWithin({ sizeClass }: ClassTable, { panels, conditions }: RankGroup, metric: MetricId): PriceMove[] {
  if (!sizeClass) return [];
  const placed = panels.flatMap((panel): Placed[] => {
    const power = panel.figures.get(metric);
    const firstRead = panel.sessions.at(-1)?.date;
    if (!isFigure(power) || firstRead === undefined) return [];
    return [{ panel, power: power.value, firstRead, prices: panel.prices.toReversed() }];
  });
  const days = new Set(placed.flatMap(({ prices }) => prices.slice(1).map(({ price }) => price.date)));
  return [...days].flatMap((date): PriceMove[] => {
    const there = placed.flatMap((it) => {
      const was = it.prices.findLast(({ price }) => price.date < date);
      const now = it.prices.findLast(({ price }) => price.date <= date);
      return was && now && it.firstRead <= date ? [{ ...it, was, now }] : [];
    });
    const changes = there.filter((it) => it.now.figure.value !== it.was.figure.value);
    if (changes.length === 0) return [];
    const before = places(there.map((it) => pricePerWatt(it.was.figure.value, it.power)));
    const after = places(there.map((it) => pricePerWatt(it.now.figure.value, it.power)));
    const moves = there
      .map(({ panel }, i): PlaceChange => ({ panel, was: before[i] ?? 0, now: after[i] ?? 0 }))
      .filter((it) => it.was !== it.now)
      .toSorted((a, b) => a.now - b.now || a.panel.slug.localeCompare(b.panel.slug, 'en'));
    if (moves.length === 0) return [];
    return [
      {
        date,
        sizeClass,
        conditions,
        of: there.length,
        changes: changes.map(({ panel, was, now }) => ({ panel, was, now })),
        moves,
      },
    ];
  });
}

/** Places from 1 by what a watt costs; what costs the same shares one. */
function places(costs: readonly number[]): number[] {
  const order = costs.toSorted((a, b) => a - b);
  return costs.map((it) => 1 + order.indexOf(it));
}
