import type { Ledger } from '../../ledger/ledger.ts';
import { type Figure, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { isInDoubt } from '../../measure/handed-on.ts';
import { say } from '../../words/say.ts';
import { type Offer, type PerWatt, packOffers } from './browser/offers.ts';
import { guideView } from './guide-view.ts';

/** `data/offers.json`: what the guide's tools reckon with when a reader has another price. */
export function offersJson(ledger: Ledger): string {
  const tableIds = guideView(ledger).flatMap((it) => it.tables.map((table) => table.id));
  const groups = ledger.classes.flatMap((it) => it.groups);
  const offers = groups.flatMap((group, i) =>
    group.panels.flatMap((panel): Offer[] => {
      const { figures, slug, name } = panel;
      const price = figures.get('real-price');
      const optical = figures.get('optical-power');
      const emitted = figures.get('emitted-power');
      if (!isFigure(price) || !isFigure(optical)) return [];
      const perEmittedWatt = perWattOf(figures.get('price-per-emitted-watt'));
      return [
        {
          slug,
          name,
          price: price.value,
          table: tableIds[i] as string,
          isReference: group.conditions.isReference,
          optical,
          ...(isFigure(emitted) && { emitted }),
          perWatt: perWattOf(figures.get('price-per-watt')) as PerWatt,
          ...(perEmittedWatt && { perEmittedWatt }),
          ...(isInDoubt(optical) && { isInDoubt: true }),
        },
      ];
    }),
  );
  return JSON.stringify(packOffers(ledger.guide.currency, offers, say));
}

function perWattOf(it: FigureOrGap | undefined): PerWatt | undefined {
  if (!isFigure(it)) return undefined;
  const { value, interval95 }: Figure = it;
  return interval95 ? [value, ...interval95] : [value];
}
