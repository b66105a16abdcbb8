import type { Ledger, PanelEntry, RankBasis } from '../../../ledger/ledger.ts';
import { panelAddress } from '../../shared/panel-address.ts';
import { type ShownFigure, shownFigure } from '../../shared/shown-figure.ts';
import { BASES, placing } from '../rank-basis.ts';

/** A panel that has the lowest price of a watt in its size class, or is not told from the one that has. */
export interface Answer {
  name: string;
  address: string;
  /** Width and height of its LED field, cm. */
  field: readonly [width: number, height: number] | undefined;
  price: ShownFigure;
  perWatt: ShownFigure;
}

/** The lowest price of a watt in one size class. */
export interface ClassAnswer {
  /** Where the class has its table on the page. */
  address: string;
  name: string;
  /** By rank; more than one where the readings do not tell them apart. */
  panels: Answer[];
}

/**
 * The answer to the guide's first question: the lowest price of a watt in each size class, with all that tie with it. By
 * panels that were measured under the guide's own conditions alone; a class without any has no answer. The watt is that
 * which the guide's ranking goes by.
 */
export function classAnswers(ledger: Ledger, basis: RankBasis): ClassAnswer[] {
  const { currency } = ledger.guide;
  const classes = basis === 'optical' ? ledger.classes : ledger.classesByEmitted;
  return classes.flatMap(({ sizeClass, groups }): ClassAnswer[] => {
    const ranked = groups.find(({ conditions }) => conditions.isReference)?.panels ?? [];
    const first = ranked[0];
    const rank = first && placing(first, basis).rank;
    if (!sizeClass || !rank) return [];
    const lowest = new Set([first.slug, ...rank.tiedWith]);
    return [
      {
        address: `#${sizeClass.id}`,
        name: sizeClass.name,
        panels: ranked.filter((it) => lowest.has(it.slug)).map((it) => answer(it, basis, currency)),
      },
    ];
  });
}

function answer(panel: PanelEntry, basis: RankBasis, currency: string): Answer {
  const figure = (metric: 'real-price' | (typeof BASES)[RankBasis]['metric']) => {
    const shown = shownFigure(panel, panel.figures.get(metric), metric, currency);
    const page = panelAddress(panel.slug);
    return { ...shown, calculation: `${page}${shown.calculation}`, flagsAt: `${page}${shown.flagsAt}` };
  };
  const perWatt = figure(BASES[basis].metric);
  return {
    name: panel.name,
    address: panelAddress(panel.slug),
    field: fieldOf(panel),
    price: figure('real-price'),
    // The head of its column has the unit.
    perWatt: { ...perWatt, ...(perWatt.shown && { shown: { ...perWatt.shown, unit: '' } }) },
  };
}

/** Width and height of a panel's LED field, cm, as far as a drawing to scale shows them. */
export function fieldOf({ data: { field } }: PanelEntry): readonly [width: number, height: number] | undefined {
  return field && [field.width.value, field.height.value];
}
