import type { Ledger, PanelEntry, RankBasis } from '../../../ledger/ledger.ts';
import { type Figure, isFigure } from '../../../measure/figure.ts';
import { showFigure } from '../../../words/format.ts';
import { inInches } from '../../../words/other-unit.ts';
import { LENGTH, type PlacedInterval } from '../browser/interval-scale.ts';
import { guideView } from '../guide-view.ts';
import { BASES, placing } from '../rank-basis.ts';

/** One line of the tables, taken apart. */
export interface Specimen {
  basis: RankBasis;
  /** "2–3" */
  rank: string;
  name: string;
  value: string;
  plusMinus: string;
  /** As the ranking draws it. */
  bar: PlacedInterval;
  /** Distance of the readings, as readers of centimetres and of inches write it. */
  distance: { cm: string; in: string };
}

/**
 * A line of the tables to read them by: of a panel whose rank is a range, and that ties, where there is one. Nothing where
 * no panel has a rank with a range.
 */
export function specimen(ledger: Ledger, basis: RankBasis): Specimen | undefined {
  const classes = basis === 'optical' ? ledger.classes : ledger.classesByEmitted;
  const ranked = classes.flatMap(({ groups }) => groups.find(({ conditions }) => conditions.isReference)?.panels ?? []);
  const rows = guideView(ledger, basis).classes.flatMap((it) => it.tables.flatMap((table) => table.rows));
  const bars = new Map(rows.map((it) => [it.slug, it.interval]));
  const lines = ranked.flatMap((panel) => line(panel, bars.get(panel.slug), ledger, basis) ?? []);
  const telling = ({ panel }: { panel: PanelEntry }) => {
    const { rank } = placing(panel, basis);
    return Number((rank?.range?.[0] ?? 0) < (rank?.range?.[1] ?? 0)) + Number((rank?.tiedWith.length ?? 0) > 0);
  };
  // Of equals the one that stands nearest to the middle of the scale.
  const off = ({ specimen: { bar } }: { specimen: Specimen }) => Math.abs(bar.at - LENGTH / 2);
  return lines.toSorted((a, b) => telling(b) - telling(a) || off(a) - off(b))[0]?.specimen;
}

function line(
  panel: PanelEntry,
  bar: PlacedInterval | undefined,
  { guide }: Ledger,
  basis: RankBasis,
): { panel: PanelEntry; specimen: Specimen } | undefined {
  const perWatt = panel.figures.get(BASES[basis].metric);
  const range = placing(panel, basis).rank?.range;
  if (!range || !bar || !isFigure(perWatt)) return undefined;
  const { value, plusMinus } = showFigure(perWatt satisfies Figure, guide.currency);
  if (plusMinus === undefined) return undefined;
  const { value: cm } = guide.referenceDistance;
  return {
    panel,
    specimen: {
      basis,
      rank: range[0] === range[1] ? String(range[0]) : `${range[0]}–${range[1]}`,
      name: panel.name,
      value,
      plusMinus,
      bar,
      distance: { cm: `${cm} cm`, in: inInches(cm) },
    },
  };
}
