import { isTie, ratioMissing, ratioOf } from '../difference.ts';
import type { BudgetComponent, ErrorSource, Figure } from '../figure.ts';
import { drawError, type Random, seededRandom, seedFromText } from '../random.ts';
import { type ErrorShares, errorShares } from '../shared-errors.ts';
import type { Said } from '../statement.ts';
import { combinedUncertainty, coverageFactor, effectiveDegreesOfFreedom } from '../uncertainty.ts';

/** Draws of the rank simulation; the 2.5 % tails then rest on about 100 draws each. */
export const RANK_TRIALS = 4000;

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
  /** Panels that the readings do not tell from this one: the 95 % interval of the two costs' ratio holds 1. */
  tiedWith: string[];
  /** Why there is no range. */
  rangeAbsent?: Said;
}

/**
 * Ranks panels by price per optical watt, lowest first, with the 95 % range of each place by Monte Carlo
 * (the way of JCGM 101:2008): in every draw each error is drawn once and moves every panel that shares it, so
 * that the calibration of a common meter does not blur the order. Panels of unknown uncertainty keep their
 * value in every draw and get no range.
 *
 * Ties are told pair by pair (`costRatio`), not from the ranges: a panel between two others can tie with both and reach
 * over their places, and the two still be apart.
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
  const ties = tiesOf(contenders, order);
  return order.map((i) => {
    const range = known(i) ? (ranges[i] as readonly [number, number]) : null;
    const tied = new Set(ties[i]);
    const tiedWith = order.filter((j) => tied.has(j));
    return {
      panel: (contenders[i] as Contender).panel,
      place: 1 + order.filter((j) => value(j) < value(i)).length,
      of: count,
      range,
      tiedWith: tiedWith.map((j) => (contenders[j] as Contender).panel),
      ...(!range && { rangeAbsent: contenders[i]?.power.uncertaintyAbsent ?? { code: 'uncertainty-not-known' } }),
    };
  });
}

/**
 * Which panels tie with which, by their places in `contenders`. Only pairs of neighbours in the order are looked at, as
 * far as any tie can reach: no ratio's interval is wider than that of the two largest uncertainties that share nothing.
 *
 * @param order places from the lowest cost up
 */
function tiesOf(contenders: readonly Contender[], order: readonly number[]): number[][] {
  const ties: number[][] = contenders.map(() => []);
  const shares = errorShares(contenders.map((it) => it.power));
  const able = order.filter((i) => {
    const { power } = contenders[i] as Contender;
    return ratioMissing(power, power) === undefined;
  });
  const cost = (i: number) => {
    const { price, power } = contenders[i] as Contender;
    return price / power.value;
  };
  const farthest = farthestTie(able.map((i) => contenders[i] as Contender));
  for (let at = 0; at < able.length; at++) {
    const i = able[at] as number;
    for (let next = at + 1; next < able.length; next++) {
      const j = able[next] as number;
      const ratio = cost(j) / cost(i);
      if (ratio > farthest) break;
      // The dearer watt is the one of less power: the errors change places, as in `costRatio`.
      if (!isTie(ratioOf(ratio, shares[i] as ErrorShares, shares[j] as ErrorShares))) continue;
      (ties[i] as number[]).push(j);
      (ties[j] as number[]).push(i);
    }
  }
  return ties;
}

/**
 * A ratio of costs from which on nothing ties: (1 + k u) / (1 - k u) of the largest relative uncertainty u and coverage
 * factor k, the end that Fieller's interval comes to when the two errors are one and push opposite ways.
 */
function farthestTie(contenders: readonly Contender[]): number {
  let u = 0;
  let fewest = Number.POSITIVE_INFINITY;
  for (const { power } of contenders) {
    u = Math.max(u, combinedUncertainty(power.budget.map((it) => it.contribution)) / power.value);
    // Effective degrees of freedom are never fewer than the fewest of any part.
    for (const { source } of power.budget) fewest = Math.min(fewest, source.degreesOfFreedom);
  }
  const most = coverageFactor(Math.max(1, Math.floor(fewest))) * u;
  // A hair more, for equal exact figures that were rounded.
  return most < 1 ? (1.00001 * (1 + most)) / (1 - most) : Number.POSITIVE_INFINITY;
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
  for (let n = 0; n < RANK_TRIALS; n++) {
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
    if (sum >= p * RANK_TRIALS) return i + 1;
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
  for (const power of powers) {
    for (const { source } of power.budget) uses.set(source.key, (uses.get(source.key) ?? 0) + 1);
  }
  const isShared = ({ source }: BudgetComponent) => (uses.get(source.key) ?? 0) > 1;

  const shared = new Map<string, { source: ErrorSource; hits: Array<{ at: number; by: number }> }>();
  powers.forEach((power, at) => {
    for (const { source, contribution } of power.budget.filter(isShared)) {
      const error = shared.get(source.key) ?? { source, hits: [] };
      error.hits.push({ at, by: contribution });
      shared.set(source.key, error);
    }
  });
  const own = powers.map((power) => {
    const components = power.budget.filter((it) => !isShared(it));
    return {
      value: power.value,
      u: combinedUncertainty(components.map((it) => it.contribution)),
      source: drawnAs(effectiveDegreesOfFreedom(components)),
    };
  });

  // Arrays of numbers: the two loops below run thousands of times over all panels.
  const common = Array.from(shared.values(), ({ source, hits }) => ({
    source,
    at: Uint32Array.from(hits, (it) => it.at),
    by: Float64Array.from(hits, (it) => it.by),
  }));
  const values = new Float64Array(powers.length);
  return () => {
    for (let i = 0; i < own.length; i++) {
      const { value, u, source } = own[i] as (typeof own)[number];
      values[i] = u === 0 ? value : value + u * drawError(random, source);
    }
    for (const { source, at, by } of common) {
      const z = drawError(random, source);
      for (let i = 0; i < at.length; i++) {
        const panel = at[i] as number;
        values[panel] = (values[panel] as number) + z * (by[i] as number);
      }
    }
    return values;
  };
}

function drawnAs(degreesOfFreedom: number): Pick<ErrorSource, 'distribution' | 'degreesOfFreedom'> {
  return { distribution: Number.isFinite(degreesOfFreedom) ? 't' : 'normal', degreesOfFreedom };
}
