import type { RankBasis, RankingColumn } from '../../measure/catalogue/rows.ts';
import type { MethodId } from '../../measure/method-versions.ts';
import { type ListedMetricId, rankingColumns } from '../../measure/metrics.ts';

/** A column of a ranking table, as its heading shows it. */
export interface Column {
  /** Its name in addresses and in the markup, where headings and cells carry it. */
  id: string;
  label: string;
  unit: string;
  /** Method page behind the label. */
  method: MethodId;
  /** Which way a first press sorts: the better end first. */
  first: RankingColumn['first'];
  /** The metric whose figures stand in it; the rank and the day of the test are none. */
  metric?: ListedMetricId;
}

/** Columns that hold no figure, and where they stand among those of the catalogue. */
const OTHERS: ReadonlyArray<{ column: Column & { id: 'rank' | 'tested' }; place: number }> = [
  { column: { id: 'rank', label: 'Rank', unit: '95 % range', method: 'rank', first: 'ascending' }, place: 10 },
  {
    column: { id: 'tested', label: 'Tested', unit: 'date', method: 'bench-procedure', first: 'descending' },
    place: Number.POSITIVE_INFINITY,
  },
];

/**
 * The columns of a ranking by a basis, after the panel's name, in their order: those that the catalogue gives its
 * metrics, with the rank and the day of the test.
 *
 * @param currency stands in the units in the place of `currency`
 */
export function guideColumns(currency: string, basis: RankBasis = 'optical'): Column[] {
  const measured = rankingColumns(basis).map(({ metric, column, place }) => {
    const { key: id, label, unitWords = metric.unit, first } = column;
    const unit = unitWords.replace('currency', currency);
    return { column: { id, label, unit, method: metric.method, first, metric: metric.id }, place };
  });
  return [...OTHERS, ...measured].toSorted((a, b) => a.place - b.place).map((it) => it.column);
}
