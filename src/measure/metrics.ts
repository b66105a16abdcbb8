import { BEAM_METRICS } from './catalogue/beam.ts';
import { EXPOSURE_METRICS } from './catalogue/exposure.ts';
import { type INNER_METRICS, LIGHT_METRICS } from './catalogue/light.ts';
import { LOG_METRICS } from './catalogue/logs.ts';
import { PICTURE_METRICS } from './catalogue/picture.ts';
import type { MetricRow, PanelList, RangeFilter, RankBasis, RankingColumn } from './catalogue/rows.ts';
import { SOUND_METRICS } from './catalogue/sound.ts';
import { SPECTRUM_METRICS } from './catalogue/spectrum.ts';
import { USE_METRICS } from './catalogue/use.ts';
import { type MethodId, type MethodReference, methodReference } from './method-versions.ts';

const ROWS = [
  ...LIGHT_METRICS,
  ...BEAM_METRICS,
  ...USE_METRICS,
  ...SPECTRUM_METRICS,
  ...EXPOSURE_METRICS,
  ...LOG_METRICS,
  ...PICTURE_METRICS,
  ...SOUND_METRICS,
] as const;

/** Id of a figure that a panel has, and that pages and files list. */
export type ListedMetricId = (typeof ROWS)[number]['id'];

/** Id of any figure: those that are listed, and those that only others are made of. */
export type MetricId = ListedMetricId | (typeof INNER_METRICS)[number];

/**
 * The canonical units of figures: those of the rows. One quantity, one unit; readers' units are a matter of
 * presentation.
 */
export type Unit = (typeof ROWS)[number]['unit'];

/** A row of the catalogue. */
export interface Metric extends MetricRow {
  id: ListedMetricId;
  method: MethodId;
  unit: Unit;
}

/** Every metric, in the order in which a panel's calculation page shows them. */
export const METRICS: readonly Metric[] = ROWS;

const byId: ReadonlyMap<string, Metric> = new Map(METRICS.map((metric) => [metric.id, metric]));

/** True for the id of a listed metric. */
export function isMetricId(id: string): id is ListedMetricId {
  return byId.has(id);
}

/** The metric, or an error naming the id: an unknown metric is a fault of the program. */
export function metricById(id: string): Metric {
  const metric = byId.get(id);
  if (!metric) throw new Error(`no metric is registered as "${id}"`);
  return metric;
}

/** What a figure is, so far as its row in the catalogue says it. */
export interface MetricIdentity {
  id: string;
  metric: ListedMetricId;
  unit: Unit;
  method: MethodReference;
}

/**
 * What `makeFigure` wants to know of a figure besides its basis and inputs.
 *
 * @param owner what the figure is of: `<panel>/<session date>`, or the panel alone
 */
export function identityOf(id: ListedMetricId, owner: string): MetricIdentity {
  const { unit, method } = metricById(id);
  return { id: `${owner}/${id}`, metric: id, unit, method: methodReference(method) };
}

/** A metric with one of the places that it is shown at. */
type ShownAt<Where> = { metric: Metric } & Where;

const byPlace = <T>(all: ReadonlyArray<T & { place: number }>): T[] => all.toSorted((a, b) => a.place - b.place);

/** Columns of the tables that rank by a basis, with where they stand, in their order. */
export function rankingColumns(basis: RankBasis): Array<ShownAt<{ column: RankingColumn; place: number }>> {
  return byPlace(
    METRICS.flatMap((metric) => {
      const column = metric.ranking;
      const place = column?.place[basis];
      return column && place !== undefined ? [{ metric, column, place }] : [];
    }),
  );
}

/** Metrics of a list of a panel's page, in their order. */
export function metricsOnPanelPage(list: PanelList): ListedMetricId[] {
  const all = METRICS.flatMap(({ id, panelPage }) => {
    const place = panelPage?.[list];
    return place === undefined ? [] : [{ id, place }];
  });
  return byPlace(all).map((it) => it.id);
}

/** What the guide can be narrowed by, in the order of its fields. */
export function rangeFilters(): Array<ShownAt<{ filter: RangeFilter }>> {
  const all = METRICS.flatMap((metric) =>
    metric.filter ? [{ metric, filter: metric.filter, place: metric.filter.place }] : [],
  );
  return byPlace(all);
}
