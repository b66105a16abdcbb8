import { at } from '../at.ts';
import { isTie, ratioMissing, ratioOf } from '../difference.ts';
import type { BudgetComponent, ErrorSource, Figure } from '../figure.ts';
import { drawError, type Random, seededRandom, seedFromText } from '../random.ts';
import { errorShares } from '../shared-errors.ts';
import type { Statement } from '../statement.ts';
import { combinedUncertainty, coverageFactor, effectiveDegreesOfFreedom } from '../uncertainty.ts';
import { type Cost, pricePerWatt } from './cost.ts';
import { costOrder } from './cost-order.ts';

/** Trials of the rank simulation; the 2.5 % tails then rest on about 100 each. */
export const RANK_TRIALS = 4000;

/** A panel that takes part in a ranking: its price and its optical power. */
export interface Contender extends Cost {
  panel: string;
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
  rangeAbsent?: Statement;
}

/**
 * Ranks panels by price per optical watt, lowest first, with the 95 % range of each place by Monte Carlo
 * (the way of JCGM 101:2008): in every trial each error is drawn once and moves every panel that shares it, so
 * that the calibration of a common instrument does not blur the order. Panels of unknown uncertainty keep their
 * value in every trial and get no range.
 *
 * Ties are told pair by pair (`costRatio`), not from the ranges: a panel between two others can tie with both and reach
 * over their places, and the two still be apart.
 *
 * The seed follows from the panels' ids, so that the same content gives the same ranks.
 */
export function rankByPricePerWatt(given: readonly Contender[]): Rank[] {
  const contenders = given.toSorted((a, b) => a.panel.localeCompare(b.panel, 'en'));
  const ranges = simulateRanges(contenders);
  const competitors = contenders
    .map(({ panel, price, power }, i): Competitor => {
      const cost = pricePerWatt(price, power.value);
      return { panel, power, cost, range: power.standardUncertainty === null ? null : at(ranges, i) };
    })
    .toSorted((a, b) => a.cost - b.cost || a.panel.localeCompare(b.panel, 'en'));
  const ties = tiesOf(competitors);
  return competitors.map((it): Rank => {
    const tied = ties.get(it);
    return {
      panel: it.panel,
      place: 1 + competitors.filter((other) => other.cost < it.cost).length,
      of: competitors.length,
      range: it.range,
      tiedWith: tied ? competitors.filter((other) => tied.has(other)).map((other) => other.panel) : [],
      ...(!it.range && { rangeAbsent: it.power.uncertaintyAbsent ?? { code: 'uncertainty-not-known' } }),
    };
  });
}

/** A contender with what a watt of it costs, and the range of its place. */
interface Competitor {
  panel: string;
  power: Figure;
  cost: number;
  range: Rank['range'];
}

/**
 * Which panels tie with which. Only neighbours in the order are looked at, as far as any tie can reach: no ratio's
 * interval is wider than that of the two largest uncertainties that share nothing.
 *
 * @param competitors from the lowest cost up
 */
function tiesOf(competitors: readonly Competitor[]): ReadonlyMap<Competitor, ReadonlySet<Competitor>> {
  const shares = errorShares(competitors.map((it) => it.power));
  const able = competitors
    .map((it, i) => ({ it, shares: at(shares, i), tied: new Set<Competitor>() }))
    .filter(({ it: { power } }) => ratioMissing(power, power) === undefined);
  const farthest = farthestTie(able.map(({ it }) => it.power));
  able.forEach((own, i) => {
    for (const other of able.slice(i + 1)) {
      const ratio = other.it.cost / own.it.cost;
      if (ratio > farthest) break;
      // The more expensive watt is the one of less power: the errors change places, as in `costRatio`.
      if (!isTie(ratioOf(ratio, own.shares, other.shares))) continue;
      own.tied.add(other.it);
      other.tied.add(own.it);
    }
  });
  return new Map(able.map(({ it, tied }) => [it, tied]));
}

/**
 * A ratio of costs from which on nothing ties: (1 + k u) / (1 - k u) of the largest relative uncertainty u and coverage
 * factor k, the end that Fieller's interval comes to when the two errors are one and push opposite ways.
 */
function farthestTie(powers: readonly Figure[]): number {
  let u = 0;
  let fewest = Number.POSITIVE_INFINITY;
  for (const power of powers) {
    u = Math.max(u, combinedUncertainty(power.budget.map((it) => it.contribution)) / power.value);
    // Effective degrees of freedom are never fewer than the fewest of any part.
    for (const { source } of power.budget) fewest = Math.min(fewest, source.degreesOfFreedom);
  }
  const most = coverageFactor(Math.max(1, Math.floor(fewest))) * u;
  // A hair more, for equal exact figures that were rounded.
  return most < 1 ? (1.00001 * (1 + most)) / (1 - most) : Number.POSITIVE_INFINITY;
}

/** 95 % ranges of the places, in the order of the contenders. */
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
  const prices = Float64Array.from(contenders, (it) => it.price);
  const drawn = new Float64Array(count);
  const inOrder = costOrder(count);
  // Of each contender, how often it had each place.
  const tallies = new Uint16Array(count * count);
  for (let n = 0; n < RANK_TRIALS; n++) {
    const powers = draw();
    for (let i = 0; i < count; i++) {
      const power = powers[i] as number;
      // A trial of no power at all costs more than anything.
      drawn[i] = power > 0 ? pricePerWatt(prices[i] as number, power) : Number.POSITIVE_INFINITY;
    }
    const { costs, order } = inOrder(drawn);
    let place = 0;
    let before = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      // Equal costs share the place of the first of them.
      const cost = costs[i] as number;
      if (cost > before) place = i;
      before = cost;
      const cell = (order[i] as number) * count + place;
      tallies[cell] = (tallies[cell] as number) + 1;
    }
  }
  return contenders.map((_, i) => {
    const tally = tallies.subarray(i * count, (i + 1) * count);
    return [placeAt(tally, 0.025), placeAt(tally, 0.975)] as const;
  });
}

/** Smallest place that at least the share `p` of the trials do not exceed. */
function placeAt(tally: Uint16Array, p: number): number {
  let sum = 0;
  const index = tally.findIndex((times) => {
    sum += times;
    return sum >= p * RANK_TRIALS;
  });
  return index === -1 ? tally.length : index + 1;
}

/**
 * Draws the powers of several panels together. An error that several panels share is drawn once for all of
 * them; the errors of one panel alone are drawn as one, from the t distribution with their effective degrees
 * of freedom (normal where those are infinite), which costs one number a panel and trial.
 */
export function powerSampler(powers: readonly Figure[], random: Random): () => Float64Array {
  const uses = new Map<string, number>();
  for (const power of powers) {
    for (const { source } of power.budget) uses.set(source.key, (uses.get(source.key) ?? 0) + 1);
  }
  const isShared = ({ source }: BudgetComponent) => (uses.get(source.key) ?? 0) > 1;

  const shared = new Map<string, { source: ErrorSource; hits: Array<{ panel: number; by: number }> }>();
  powers.forEach((power, panel) => {
    for (const { source, contribution } of power.budget.filter(isShared)) {
      const error = shared.get(source.key) ?? { source, hits: [] };
      error.hits.push({ panel, by: contribution });
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

  const values = Float64Array.from(own, (it) => it.value);
  const uncertain = Float64Array.from(own, (it) => it.u);
  const drawn = new Float64Array(powers.length);
  return () => {
    for (let i = 0; i < drawn.length; i++) {
      const u = uncertain[i] as number;
      const value = values[i] as number;
      drawn[i] = u === 0 ? value : value + u * drawError(random, (own[i] as (typeof own)[number]).source);
    }
    for (const { source, hits } of shared.values()) {
      const z = drawError(random, source);
      for (const { panel, by } of hits) drawn[panel] = (drawn[panel] as number) + z * by;
    }
    return drawn;
  };
}

function drawnAs(degreesOfFreedom: number): Pick<ErrorSource, 'distribution' | 'degreesOfFreedom'> {
  return { distribution: Number.isFinite(degreesOfFreedom) ? 't' : 'normal', degreesOfFreedom };
}
