import type { BudgetComponent, ErrorSource, Figure } from '../../../measure/figure.ts';
import { methodReference } from '../../../measure/method-versions.ts';
import type { Contender } from '../../../measure/money/ranking.ts';
import { type Statement, verbatim } from '../../../measure/statement.ts';
import { combinedUncertainty, exactDegreesOfFreedom, makeFigure } from '../../../measure/uncertainty.ts';

/** Version of the file's form; goes up when a field changes its meaning or goes. */
export const OFFERS_FORMAT = 1;

/**
 * Prices and powers of the ranked panels in a small form, from which ranks, step-ups and the frontier can be calculated
 * anew with other prices. Errors that no two panels share are put together as one, which changes nothing in a ranking.
 */
export interface PackedOffers {
  format: typeof OFFERS_FORMAT;
  currency: string;
  /** Errors that panels share. */
  lines: Array<{ key: string; distribution: ErrorSource['distribution']; nu: number | null }>;
  /** By the id of the table. */
  tables: Readonly<Record<string, PackedConditions>>;
  panels: PackedOffer[];
}

/** What the panels of a table were measured under. */
export interface PackedConditions {
  /** The nearest of the distances that are one with theirs, cm. */
  distance: number;
  /** Oldest version of the bench procedure that reads the grid alike. */
  version: number;
  /** They are the guide's own. */
  isReference: boolean;
  /** Name of the size class. */
  sizeClass: string;
}

/** True where the figures of two tables can be compared: measured under the guide's conditions, or both alike otherwise. */
export function areMeasuredAlike(
  one: Omit<PackedConditions, 'sizeClass'>,
  other: Omit<PackedConditions, 'sizeClass'>,
): boolean {
  if (one.isReference || other.isReference) return one.isReference === other.isReference;
  return one.version === other.version && one.distance === other.distance;
}

/** One panel: its price, where it is ranked, and its powers. */
export interface PackedOffer {
  slug: string;
  name: string;
  price: number;
  /** Id of the table it is ranked in. */
  table: string;
  /** Measured under the guide's own conditions, as the frontier asks. */
  isReference: boolean;
  optical: PackedPower;
  /** The optical power as pages show it, W: packed, its interval can differ by a last digit. */
  light: WithInterval;
  emitted?: PackedPower;
  /** Price of a watt at the guide's price, base currency, with its 95 % interval: it goes with the price. */
  perWatt: WithInterval;
  perEmittedWatt?: WithInterval;
  /** Its optical power is in doubt. */
  isInDoubt?: true;
  /** From which day its light is, where it was not read again. */
  carried?: string;
  /** The price in the currency that it was asked in, where that is not the guide's: `£159`. */
  asked?: string;
  /** Width and height of its LED field, cm. */
  field?: readonly [width: number, height: number];
}

/** Value and interval; without one where it is not known. */
export type WithInterval = readonly [value: number, low?: number, high?: number];

export interface PackedPower {
  value: number;
  /** Own error: standard uncertainty and degrees of freedom, not rounded (null: not limited). */
  own?: [u: number, nu: number | null];
  /** Shared errors: place of the line, contribution. */
  shared?: Array<[line: number, contribution: number]>;
  /** Why the uncertainty is not known. */
  absent?: string;
}

/** A panel as it goes into the file. */
export interface Offer extends Omit<PackedOffer, 'optical' | 'emitted'> {
  optical: Figure;
  emitted?: Figure;
}

/** Digits that are kept: so many more than any figure shows that no tie and no order hangs on them. */
const DIGITS = 9;
const short = (value: number) => Number(value.toPrecision(DIGITS));
const shortInterval = (it: WithInterval): WithInterval =>
  it.map((one) => short(one as number)) as unknown as WithInterval;

const finite = (nu: number) => (Number.isFinite(nu) ? nu : null);
const endless = (nu: number | null) => nu ?? Number.POSITIVE_INFINITY;

/** Packs offers; `say` puts what there is to tell into words. */
export function packOffers(
  currency: string,
  tables: PackedOffers['tables'],
  offers: readonly Offer[],
  say: (it: Statement) => string,
): PackedOffers {
  const uses = new Map<string, Set<string>>();
  const figuresOf = (offer: Offer) => [offer.optical, ...(offer.emitted ? [offer.emitted] : [])];
  for (const offer of offers) {
    for (const { source } of figuresOf(offer).flatMap((it) => it.budget)) {
      uses.set(source.key, (uses.get(source.key) ?? new Set()).add(offer.slug));
    }
  }
  const places = new Map<string, number>();
  const lines: PackedOffers['lines'] = [];
  const placeOf = ({ key, distribution, degreesOfFreedom }: ErrorSource) => {
    let place = places.get(key);
    if (place === undefined) {
      place = lines.push({ key, distribution, nu: finite(degreesOfFreedom) }) - 1;
      places.set(key, place);
    }
    return place;
  };
  const pack = (figure: Figure): PackedPower => {
    if (figure.standardUncertainty === null) {
      return { value: short(figure.value), absent: say(figure.uncertaintyAbsent ?? { code: 'uncertainty-not-known' }) };
    }
    const isShared = ({ source }: BudgetComponent) => (uses.get(source.key)?.size ?? 0) > 1;
    const own = figure.budget.filter((it) => !isShared(it));
    return {
      value: short(figure.value),
      own: [short(combinedUncertainty(own.map((it) => it.contribution))), finite(exactDegreesOfFreedom(own))],
      shared: figure.budget.filter(isShared).map((it) => [placeOf(it.source), short(it.contribution)]),
    };
  };
  const panels = offers.map(({ optical, emitted, light, perWatt, perEmittedWatt, ...rest }) => ({
    ...rest,
    light: shortInterval(light),
    perWatt: shortInterval(perWatt),
    ...(perEmittedWatt && { perEmittedWatt: shortInterval(perEmittedWatt) }),
    optical: pack(optical),
    ...(emitted && { emitted: pack(emitted) }),
  }));
  return { format: OFFERS_FORMAT, currency, lines, tables, panels };
}

/** A panel's power as a contender for a ranking, at a price. */
export function contenderOf(offers: PackedOffers, offer: PackedOffer, power: PackedPower, price: number): Contender {
  const { value, own, shared = [], absent } = power;
  const identity = {
    id: `${offer.slug}/power`,
    metric: 'power',
    unit: 'W',
    basis: 'derived',
    method: methodReference('optical-power'),
    inputs: [],
  } as const;
  const line = (key: string, contribution: number, nu: number, distribution: ErrorSource['distribution']) => ({
    source: {
      key,
      distribution,
      degreesOfFreedom: nu,
      type: 'B' as const,
      what: verbatim(''),
      evaluation: verbatim(''),
    },
    contribution,
  });
  const budget = [
    ...shared.map(([place, contribution]) => {
      const { key, distribution, nu } = offers.lines[place] as PackedOffers['lines'][number];
      return line(key, contribution, endless(nu), distribution);
    }),
    ...(own && own[0] > 0
      ? [line(`${offer.slug}/own`, own[0], endless(own[1]), own[1] === null ? ('normal' as const) : ('t' as const))]
      : []),
  ];
  const figure = makeFigure(
    { ...identity, inputs: [] },
    value,
    absent === undefined ? { budget } : { absent: verbatim(absent) },
  );
  return { panel: offer.slug, price, power: figure };
}
