import type { Guide } from '../content/schema/guide.ts';
import type { Price } from '../content/schema/panel.ts';
import { type Figure, type FigureOrGap, gap, isFigure } from '../measure/figure.ts';
import { METRICS, type MetricId } from '../measure/metrics.ts';
import { priceFigure } from '../measure/money/price.ts';
import { sizeClassOf } from '../measure/money/size-class.ts';
import type { Statement } from '../measure/statement.ts';
import { flaggedFigures } from './flagged-figures.ts';
import type { PanelEntry, PriceEntry, SessionEntry } from './ledger.ts';
import type { PanelContext } from './panel-context.ts';
import { panelFlags } from './panel-flags.ts';
import { panelPhotos } from './panel-photos.ts';
import { type SessionPrice, sessionEntry } from './session-entry.ts';
import { perWatt } from './session-figures.ts';
import type { WorkedLights } from './worked-lights.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    'no-price': object;
    /** Prices are set against the newest readings alone. */
    'current-session-only': object;
    'no-session-yet': object;
  }
}

/** A panel with its figures, before it is compared with any other: no rank, no step-ups. */
export type SinglePanel = Omit<
  PanelEntry,
  'corrections' | 'rank' | 'rankAbsent' | 'byEmitted' | 'stepUps' | 'frontier'
>;

/** Works out all figures of one panel, whose sessions' light is worked out already. */
export function panelEntry(context: PanelContext, lights: WorkedLights): SinglePanel {
  const { slug, panel: data, content, field } = context;
  const guide = content.guide.data;
  const maker = content.makers.get(data.maker)?.data;
  if (!maker) throw new Error(`${slug}: the maker "${data.maker}" was not read`);
  const [newest] = context.sessions;

  const prices = data.prices.toSorted((a, b) => b.date.localeCompare(a.date));
  const [price] = prices;
  const ownPrice: SessionPrice = {
    figure: price ? priceFigureOf(slug, price, guide) : gap('real-price', { code: 'no-price' }),
    date: price?.date,
  };
  const noPrice: SessionPrice = { figure: gap('real-price', { code: 'current-session-only' }), date: undefined };

  const sessions: SessionEntry[] = [];
  // From the first on, since each is set against the one before; the newest one ends up in front.
  for (const bench of context.sessions.toReversed()) {
    const light = lights.get(bench.id);
    if (!light) throw new Error(`${bench.id}: its light was not worked out`);
    sessions.unshift(
      sessionEntry(context, bench, { price: bench === newest ? ownPrice : noPrice, light }, sessions[0]),
    );
  }
  const [current] = sessions;
  const { figures, flags, claims } = current ?? withoutSession(context, ownPrice);

  return {
    slug,
    name: `${maker.name} ${data.model}`,
    maker,
    data,
    photos: panelPhotos(data, content.photos.get(slug)),
    sizeClass: isFigure(field.area) ? sizeClassOf(field.area.value, guide.sizeClasses) : undefined,
    sessions,
    current,
    figures,
    flags,
    claims,
    prices: prices.map((it): PriceEntry => {
      const figure = priceFigureOf(slug, it, guide);
      const power = figures.get('optical-power') ?? gap('optical-power', NO_SESSION);
      return { price: it, figure, perWatt: perWatt(current?.id ?? slug, figure, power, guide.currency) };
    }),
  };
}

const NO_SESSION: Statement = { code: 'no-session-yet' };

/** What is known of a panel that has never been on the bench. */
function withoutSession(
  { slug, panel, content, today, field }: PanelContext,
  price: SessionPrice,
): Pick<SessionEntry, 'figures' | 'flags' | 'claims'> {
  const { currency } = content.guide.data;
  const figures = new Map<MetricId, FigureOrGap>(METRICS.map(({ id }) => [id, gap(id, NO_SESSION)]));
  const money = perWatt(slug, price.figure, gap('optical-power', NO_SESSION), currency);
  for (const it of [field.width, field.height, field.area, price.figure, money]) figures.set(it.metric, it);
  const flags = panelFlags({ panel, figures, content, today, priceDate: price.date });
  return { figures: flaggedFigures(figures, flags), flags, claims: [] };
}

/** The figure of one dated price: what was really paid, or the list price where that is not known. */
function priceFigureOf(slug: string, price: Price, guide: Guide): Figure {
  const amount = price.paid ?? price.list;
  if (amount === undefined) throw new Error(`${slug}: a price of ${price.date} with no amount was let through`);
  const rate = price.currency === guide.currency ? 1 : guide.rates.find((it) => it.currency === price.currency)?.rate;
  if (rate === undefined) throw new Error(`${slug}: no rate for ${price.currency} was let through`);
  return priceFigure({
    panel: slug,
    amount,
    currency: price.currency,
    rate,
    baseCurrency: guide.currency,
    date: price.date,
    kind: price.paid === undefined ? 'list' : 'paid',
  });
}
