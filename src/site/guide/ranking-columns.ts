import type { RankBasis, RankingColumn } from '../../measure/catalogue/rows.ts';
import type { MethodId } from '../../measure/method-versions.ts';
import { type ListedMetricId, rangeFilters, rankingColumns } from '../../measure/metrics.ts';
import { currencySign } from '../../words/format.ts';
import { plainName } from '../../words/plain-names.ts';
import { BASES } from './rank-basis.ts';

/** A column of figures in the ranking, as its heading shows it. */
export interface Column {
  /** Its name in addresses and in the markup. */
  id: string;
  label: string;
  /** Behind the label; empty where the label says it. */
  unit: string;
  /** The same within a sentence: what a reader sorts by. */
  words: string;
  /** Name of its number: that of the filter by it, where there is one. */
  number: string;
  /** Method page that explains it. */
  method: MethodId;
  /** Which way a first press sorts: the better end first. */
  first: RankingColumn['first'];
  metric: ListedMetricId;
  /** The ranking goes by it, and it has its interval drawn. */
  isRanked: boolean;
}

/**
 * The columns of figures of a ranking by a basis, in their order, as the catalogue gives them to its metrics. The rank and
 * the panel stand before them, the wavelengths behind.
 *
 * @param currency of the guide
 */
export function guideColumns(currency: string, basis: RankBasis = 'optical'): Column[] {
  const filters = new Map(rangeFilters().map(({ metric, filter }) => [metric.id, filter.key]));
  return rankingColumns(basis).map(({ metric, column }) => {
    const { key: id, label, unitWords = metric.unit, first } = column;
    const sign = currencySign(currency);
    return {
      id,
      label: label.replace('currency', sign),
      unit: unitWords,
      words: plainName(metric.id),
      number: filters.get(metric.id) ?? id,
      method: metric.method,
      first,
      metric: metric.id,
      isRanked: metric.id === BASES[basis].metric,
    };
  });
}

/** Names of the numbers that a row carries besides those that its columns show: of filters without a column. */
export function hiddenNumbers(columns: readonly Column[]): string[] {
  const shown = new Set(columns.map((it) => it.number));
  return rangeFilters()
    .map(({ filter }) => filter.key)
    .filter((key) => !shown.has(key));
}
