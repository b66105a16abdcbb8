import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { type Figure, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { isInDoubt } from '../../measure/handed-on.ts';
import { versionsAlike } from '../../measure/irradiance/bench-procedure.ts';
import { distanceGroups } from '../../measure/irradiance/same-distance.ts';
import { carriedWords } from '../../words/carried-words.ts';
import { say } from '../../words/say.ts';
import { asPriced } from '../shared/priced.ts';
import { fieldOf } from './answers/class-answers.ts';
import { type Offer, packOffers, type WithInterval } from './browser/offers.ts';
import { guideView } from './guide-view.ts';

/** `data/offers.json`: what the guide's tools calculate with when a reader has another price. */
export function offersJson(ledger: Ledger): string {
  const { panels, guide } = ledger;
  const tables = guideView(ledger).classes.flatMap(({ name, tables: those }) => those.map((it) => ({ ...it, name })));
  const offers = tables.flatMap(({ id, conditions, rows }) =>
    rows.flatMap((row): Offer[] => offerOf(panels.get(row.slug), id, conditions.isReference, guide.currency)),
  );
  const nearest = nearestDistances(ledger);
  const packed = tables.map(({ id, name, conditions: { distance, methodVersion, isReference } }) => {
    const [version = methodVersion] = versionsAlike(methodVersion);
    return [id, { distance: nearest.get(distance) ?? distance, version, isReference, sizeClass: name }] as const;
  });
  return JSON.stringify(packOffers(guide.currency, Object.fromEntries(packed), offers, say));
}

/** What a panel is offered at; nothing where it has no price, no power or no price of a watt. */
function offerOf(panel: PanelEntry | undefined, table: string, isReference: boolean, currency: string): Offer[] {
  if (!panel) return [];
  const { figures, slug, name } = panel;
  const price = figures.get('real-price');
  const optical = figures.get('optical-power');
  const emitted = figures.get('emitted-power');
  const perWatt = withInterval(figures.get('price-per-watt'));
  const perEmittedWatt = withInterval(figures.get('price-per-emitted-watt'));
  const asked = asPriced(panel, currency);
  const field = fieldOf(panel);
  const light = withInterval(optical);
  const carried = carriedWords(optical);
  if (!isFigure(price) || !isFigure(optical) || !light || !perWatt) return [];
  return [
    {
      slug,
      name,
      price: price.value,
      table,
      isReference,
      optical,
      light,
      ...(isFigure(emitted) && { emitted }),
      perWatt,
      ...(perEmittedWatt && { perEmittedWatt }),
      ...(isInDoubt(optical) && { isInDoubt: true }),
      ...(asked && { asked: asked.text }),
      ...(carried && { carried }),
      ...(field && { field }),
    },
  ];
}

/** Distances other than the guide's own that are one have one, as in the guide's rankings. */
function nearestDistances({ panels }: Ledger): ReadonlyMap<number, number> {
  const conditions = [...panels.values()].flatMap(({ current }) => current?.conditions ?? []);
  return distanceGroups(conditions.filter((it) => !it.isReference).map((it) => it.distance));
}

function withInterval(it: FigureOrGap | undefined): WithInterval | undefined {
  if (!isFigure(it)) return undefined;
  const { value, interval95 }: Figure = it;
  return interval95 ? [value, ...interval95] : [value];
}
