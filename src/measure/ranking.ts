import type { Contribution, Figure } from './figure.ts';
import { drawError, type Random, seededRandom, seedFromText } from './random.ts';
import { combinedUncertainty, effectiveDegreesOfFreedom } from './uncertainty.ts';

/** Draws of the rank simulation; the 2.5 % tails then rest on about 100 draws each. */
export const RANK_DRAWS = 4000;

/** A panel that takes part in a ranking: its price and its optical power. */
export interface Contender {
  panel: string;
  /** Base currency; exact. */
  price: number;
  power: Figure;
}

/** A panel's place. */
export interface Rank {
  panel: string;
  /** Place by the figures as they stand, from 1. */
  place: number;
  /** How many are ranked together. */
  of: number;
  /** 95 % range of the place; null where the uncertainty of the panel's power is not known. */
  range: readonly [number, number] | null;
  /** Panels whose range overlaps this one's: the order between them is not shown by the readings. */
  tiedWith: string[];
  /** Why there is no range. */
  rangeAbsent?: string;
}

/**
 * Ranks panels by price per optical watt, lowest first, with the 95 % range of each place by Monte Carlo
 * (the way of JCGM 101:2008): in every draw each error is drawn once and moves every panel that shares it, so
 * that the calibration of a common meter does not blur the order. Panels of unknown uncertainty keep their
 * value in every draw and get no range.
 *
 * The seed follows from the panels' ids, so that the same content gives the same ranks.
 */
export function rankByPricePerWatt(given: readonly Contender[]): Rank[] {
  const contenders = given.toSorted((a, b) => a.panel.localeCompare(b.panel, 'en'));
  const count = contenders.length;
  const price = contenders.map((it) => it.price);
  const value = (i: number) => (price[i] as number) / (contenders[i] as Contender).power.value;
  const order = contenders
    .map((_, i) => i)
    .sort(
      (a, b) => value(a) - value(b) || (contenders[a]?.panel ?? '').localeCompare(contenders[b]?.panel ?? '', 'en'),
    );

  const ranges = simulateRanges(contenders);
  const known = (i: number) => contenders[i]?.power.standardUncertainty !== null;
  return order.map((i) => {
    const range = known(i) ? (ranges[i] as readonly [number, number]) : null;
    const tiedWith = range
      ? order.filter((j) => {
          if (j === i || !known(j)) return false;
          const other = ranges[j] as readonly [number, number];
          return other[0] <= range[1] && range[0] <= other[1];
        })
      : [];
    return {
      panel: (contenders[i] as Contender).panel,
      place: 1 + order.filter((j) => value(j) < value(i)).length,
      of: count,
      range,
      tiedWith: tiedWith.map((j) => (contenders[j] as Contender).panel),
      ...(!range && { rangeAbsent: contenders[i]?.power.uncertaintyAbsent ?? 'the uncertainty is not known' }),
    };
  });
}

function simulateRanges(contenders: readonly Contender[]): Array<readonly [number, number]> {
  const count = contenders.length;
  if (count < 2) return contenders.map(() => [1, 1] as const);
  const random = seededRandom(
    seedFromText(
      contenders
        .map((it) => it.panel)
        .toSorted()
        .join('\n'),
    ),
  );
  const draw = powerSampler(
    contenders.map((it) => it.power),
    random,
  );
  const tally = contenders.map(() => new Uint32Array(count));
  const price = Float64Array.from(contenders, (it) => it.price);
  const cost = new Float64Array(count);
  // Panels from the lowest cost up, and their costs in that order.
  const order = Uint32Array.from({ length: count }, (_, i) => i);
  const sorted = new Float64Array(count);
  for (let n = 0; n < RANK_DRAWS; n++) {
    const powers = draw();
    for (let i = 0; i < count; i++) {
      const power = powers[i] as number;
      // A draw of no power at all costs more than anything.
      cost[i] = power > 0 ? (price[i] as number) / power : Number.POSITIVE_INFINITY;
    }
    // The order changes little from draw to draw: insertion sort on the last one is nearly one pass.
    for (let i = 0; i < count; i++) {
      const panel = order[i] as number;
      const own = cost[panel] as number;
      let j = i - 1;
      while (j >= 0 && (sorted[j] as number) > own) {
        sorted[j + 1] = sorted[j] as number;
        order[j + 1] = order[j] as number;
        j--;
      }
      sorted[j + 1] = own;
      order[j + 1] = panel;
    }
    let place = 0;
    for (let at = 0; at < count; at++) {
      if (at > 0 && (sorted[at] as number) > (sorted[at - 1] as number)) place = at;
      const places = tally[order[at] as number] as Uint32Array;
      places[place] = (places[place] as number) + 1;
    }
  }
  return tally.map((places) => [placeAt(places, 0.025), placeAt(places, 0.975)] as const);
}

/** Smallest place that at least the share `p` of the draws do not exceed. */
function placeAt(places: Uint32Array, p: number): number {
  let sum = 0;
  for (let i = 0; i < places.length; i++) {
    sum += places[i] as number;
    if (sum >= p * RANK_DRAWS) return i + 1;
  }
  return places.length;
}

/**
 * Draws the powers of several panels together. An error that several panels share is drawn once for all of
 * them; the errors of one panel alone are drawn as one, from the t distribution with their effective degrees
 * of freedom (normal where those are infinite), which costs one number a panel and draw.
 */
export function powerSampler(powers: readonly Figure[], random: Random): () => Float64Array {
  const uses = new Map<string, number>();
  for (const power of powers) for (const line of power.budget) uses.set(line.key, (uses.get(line.key) ?? 0) + 1);
  const isShared = (line: Contribution) => (uses.get(line.key) ?? 0) > 1;

  const shared = new Map<string, { line: Contribution; hits: Array<{ at: number; by: number }> }>();
  powers.forEach((power, at) => {
    for (const line of power.budget.filter(isShared)) {
      const error = shared.get(line.key) ?? { line, hits: [] };
      error.hits.push({ at, by: line.contribution });
      shared.set(line.key, error);
    }
  });
  const own = powers.map((power) => {
    const lines = power.budget.filter((line) => !isShared(line));
    return {
      value: power.value,
      u: combinedUncertainty(lines.map((line) => line.contribution)),
      line: drawnAs(effectiveDegreesOfFreedom(lines)),
    };
  });

  // Arrays of numbers: the two loops below run thousands of times over all panels.
  const common = Array.from(shared.values(), ({ line, hits }) => ({
    line,
    at: Uint32Array.from(hits, (it) => it.at),
    by: Float64Array.from(hits, (it) => it.by),
  }));
  const values = new Float64Array(powers.length);
  return () => {
    for (let i = 0; i < own.length; i++) {
      const { value, u, line } = own[i] as (typeof own)[number];
      values[i] = u === 0 ? value : value + u * drawError(random, line);
    }
    for (const { line, at, by } of common) {
      const z = drawError(random, line);
      for (let i = 0; i < at.length; i++) {
        const panel = at[i] as number;
        values[panel] = (values[panel] as number) + z * (by[i] as number);
      }
    }
    return values;
  };
}

function drawnAs(degreesOfFreedom: number): Pick<Contribution, 'distribution' | 'degreesOfFreedom'> {
  return { distribution: Number.isFinite(degreesOfFreedom) ? 't' : 'normal', degreesOfFreedom };
}
