import { methodReference } from '../../../measure/method-versions.ts';
/**
 * Ranks, step-ups and the frontier at a reader's own prices, by the code that the guide was built with. Loaded only
 * when somebody has another price or a sum to spend.
 */

import type { Figure } from '../../../measure/figure.ts';
import { closeToFrontier, frontier } from '../../../measure/money/frontier.ts';
import { type MostLight, mostLight, type PurchaseAnswer, purchaseAnswer } from '../../../measure/money/purchase.ts';
import { type Contender, type Rank, rankByPricePerWatt } from '../../../measure/money/ranking.ts';
import { type StepUp, stepUpFigures } from '../../../measure/money/step-ups.ts';
import { money, type Shown, showFigure } from '../../../words/format.ts';
import { readJson } from '../../shared/browser/read-json.ts';
import {
  areMeasuredAlike,
  contenderOf,
  OFFERS_FORMAT,
  type PackedOffer,
  type PackedOffers,
  type WithInterval,
} from './offers.ts';

/** Prices as the reader has them. */
export interface OwnPrices {
  /** By panel, base currency. */
  own: ReadonlyMap<string, number>;
  /** On top of every other price, %. */
  extra: number;
}

/** One panel at its price. */
export interface Calculated {
  slug: string;
  name: string;
  table: string;
  price: number;
  /** `€199` */
  priceText: string;
  /** The price is not the guide's. */
  isOwn: boolean;
  perWatt: ShownPerWatt;
  perEmittedWatt?: ShownPerWatt;
  rank: Rank;
  emittedRank?: Rank;
}

/** A price of a watt without the currency's sign, which stands in the head of its column. */
export type ShownPerWatt = Shown & { amount: number; ends?: readonly [low: number, high: number] };

/** All panels at their prices. */
export interface Calculation {
  panels: ReadonlyMap<string, Calculated>;
  /** Slugs on the price-power frontier, cheapest first, and those close to it. */
  frontier: string[];
  close: string[];
}

/** Reads the file of offers. */
export const loadOffers = () => readJson<PackedOffers>('/data/offers.json', 'the prices', OFFERS_FORMAT);

/** The price of a panel as the reader has it. */
export function priceOf(offer: PackedOffer, { own, extra }: OwnPrices): number {
  return own.get(offer.slug) ?? offer.price * (1 + extra / 100);
}

/** Calculates everything anew. */
export function calculate(offers: PackedOffers, prices: OwnPrices): Calculation {
  const { currency } = offers;
  const ranks = new Map<string, Rank>();
  const emittedRanks = new Map<string, Rank>();
  for (const group of Map.groupBy(offers.panels, (it) => it.table).values()) {
    for (const rank of rankByPricePerWatt(group.map((it) => opticalContender(offers, it, prices)))) {
      ranks.set(rank.panel, rank);
    }
    const emitted = group.flatMap((it) =>
      it.emitted ? [contenderOf(offers, it, it.emitted, priceOf(it, prices))] : [],
    );
    for (const rank of rankByPricePerWatt(emitted)) emittedRanks.set(rank.panel, rank);
  }
  const reference = referenceContenders(offers, prices);
  const panels = offers.panels.map((offer): [string, Calculated] => {
    const { slug, name, table } = offer;
    const price = priceOf(offer, prices);
    const scale = price / offer.price;
    const emittedRank = emittedRanks.get(slug);
    return [
      slug,
      {
        slug,
        name,
        table,
        price,
        priceText: money(price, currency),
        isOwn: price !== offer.price,
        perWatt: shownPerWatt(offer.perWatt, scale),
        ...(offer.perEmittedWatt && { perEmittedWatt: shownPerWatt(offer.perEmittedWatt, scale) }),
        rank: ranks.get(slug) as Rank,
        ...(emittedRank && { emittedRank }),
      },
    ];
  });
  return {
    panels: new Map(panels),
    frontier: frontier(reference.map((it) => ({ ...it, power: it.power.value }))).map((it) => it.panel),
    close: closeToFrontier(reference),
  };
}

/** Step-ups from a panel at the reader's prices, among panels that were measured alike; the best first. */
export function stepUpsFrom(offers: PackedOffers, prices: OwnPrices, slug: string): readonly StepUp[] {
  const self = offers.panels.find((it) => it.slug === slug);
  if (!self) return [];
  const own = offers.tables[self.table];
  const alike = offers.panels.filter((it) => {
    const conditions = offers.tables[it.table];
    return own && conditions && areMeasuredAlike(own, conditions);
  });
  const contender = (it: PackedOffer) => opticalContender(offers, it, prices);
  return stepUpFigures(contender(self), alike.map(contender), offers.currency);
}

/** What a sum buys among the panels that were measured under the guide's own conditions, in all classes. */
export function spend(offers: PackedOffers, prices: OwnPrices, sum: number): PurchaseAnswer | undefined {
  return purchaseAnswer(referenceContenders(offers, prices), sum, offers.currency);
}

/**
 * The most light that a sum buys in each size class, by the id of the class's table, the strongest first; of panels that
 * were measured under the guide's own conditions.
 */
export function spendByClass(
  offers: PackedOffers,
  prices: OwnPrices,
  sum: number,
): Array<MostLight & { table: string }> {
  const reference = offers.panels.filter((it) => it.isReference);
  return [...Map.groupBy(reference, (it) => it.table)]
    .flatMap(([table, those]) => {
      const found = mostLight(
        those.map((it) => opticalContender(offers, it, prices)),
        sum,
      );
      return found ? [{ ...found, table }] : [];
    })
    .toSorted((a, b) => b.best.power.value - a.best.power.value);
}

function referenceContenders(offers: PackedOffers, prices: OwnPrices): Contender[] {
  return offers.panels.filter((it) => it.isReference).map((it) => opticalContender(offers, it, prices));
}

function opticalContender(offers: PackedOffers, offer: PackedOffer, prices: OwnPrices): Contender {
  return contenderOf(offers, offer, offer.optical, priceOf(offer, prices));
}

/** A price of a watt goes with the price, and so do the ends of its interval. */
function shownPerWatt([value, low, high]: WithInterval, scale: number): ShownPerWatt {
  const amount = scale * value;
  const isKnown = low !== undefined && high !== undefined;
  const ends = isKnown ? ([scale * low, scale * high] as const) : undefined;
  const shown = shownWithInterval(ends ? [amount, ...ends] : [amount], 'price-per-watt', '1', '');
  return { ...shown, amount, ...(ends && { ends }) };
}

/** A panel's light as its page shows it. */
export function lightText({ light }: PackedOffer, currency: string): Shown {
  return shownWithInterval(light, 'optical-power', 'W', currency);
}

function shownWithInterval(
  [value, low, high]: WithInterval,
  metric: 'price-per-watt' | 'optical-power',
  unit: Figure['unit'],
  currency: string,
): Shown {
  const isKnown = low !== undefined && high !== undefined;
  const figure: Figure = {
    id: '',
    metric,
    value,
    unit,
    standardUncertainty: isKnown ? (high - low) / 2 : null,
    interval95: isKnown ? [low, high] : null,
    coverageFactor: isKnown ? 1 : null,
    degreesOfFreedom: null,
    basis: 'derived',
    method: methodReference(metric),
    inputs: [],
    budget: [],
    unassessed: [],
    notes: [],
    flags: [],
  };
  return showFigure(figure, currency);
}

/** A figure in words. */
export function figureText(figure: Figure, currency: string): string {
  return showFigure(figure, currency).text;
}
