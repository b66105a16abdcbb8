import type { Ledger, PanelEntry, RankBasis } from '../../ledger/ledger.ts';
import { besideNoEffectLine, panelBesideNoEffectLine } from '../../measure/exposure/no-effect.ts';
import { type FigureOrGap, gap, isFigure } from '../../measure/figure.ts';
import { type MetricId, rangeFilters } from '../../measure/metrics.ts';
import { currencySign } from '../../words/format.ts';
import type { FormerNames } from './browser/guide-address.ts';
import { encodeRow, FLICKER_VALUES } from './browser/row-data.ts';

/** A filter that takes numbers. */
export interface RangeView {
  name: string;
  label: string;
  unit: string;
  /** The unit is a currency's sign, which stands before an amount. */
  isMoney: boolean;
  method: string;
  ends: ReadonlyArray<'from' | 'to'>;
}

/** What the filters of the guide offer. */
export interface GuideFilterView {
  currency: string;
  /** In the order in which rows carry their numbers too. */
  ranges: RangeView[];
  classes: Array<{ id: string; name: string }>;
  makers: Array<{ id: string; name: string }>;
  /** Names of before that addresses may hold; left out where there are none. */
  formerly?: FormerNames;
  /** Wavelengths, nm, about which some panel has a measured peak. */
  wavelengths: number[];
}

/** Peaks are offered by the nearest of these, nm. */
const STEP = 10;

/** What can be filtered by, from the panels that the tables rank. */
export function guideFilterView(ledger: Ledger, basis: RankBasis = 'optical'): GuideFilterView {
  const classes = basis === 'optical' ? ledger.classes : ledger.classesByEmitted;
  const ranked = classes.flatMap((it) => it.groups.flatMap((group) => group.panels));
  const makers = new Map(ranked.map((it) => [it.data.maker, it.maker.name]));
  const peaks = new Set(ranked.flatMap(wavelengthsOf).map((nm) => STEP * Math.round(nm / STEP)));
  const former = formerNames(ranked);
  const byName = (a: { name: string }, b: { name: string }) => a.name.localeCompare(b.name, 'en');
  return {
    currency: ledger.guide.currency,
    ranges: rangeFilters().map(({ metric, filter }) => ({
      name: filter.key,
      label: filter.label,
      unit: metric.unit.replace('currency', currencySign(ledger.guide.currency)),
      isMoney: metric.unit === 'currency',
      method: metric.method,
      ends: filter.ends === 'both' ? ['from', 'to'] : ['to'],
    })),
    classes: classes.flatMap(({ sizeClass, groups }) =>
      sizeClass && groups.length > 0 ? [{ id: sizeClass.id, name: sizeClass.name }] : [],
    ),
    makers: [...makers].map(([id, name]) => ({ id, name })).toSorted(byName),
    ...(former && { formerly: former }),
    wavelengths: [...peaks].toSorted((a, b) => a - b),
  };
}

/** Names that panels and their makers had before; undefined where none had another. */
function formerNames(panels: readonly PanelEntry[]): FormerNames | undefined {
  const today = (them: ReadonlyArray<readonly [string, readonly string[] | undefined]>) =>
    Object.fromEntries(them.flatMap(([now, before = []]) => before.map((it) => [it, now])));
  const names = {
    panels: today(panels.map((it) => [it.slug, it.data.formerly])),
    makers: today(panels.map((it) => [it.data.maker, it.maker.formerly])),
  };
  return Object.values(names).some((it) => Object.keys(it).length > 0) ? names : undefined;
}

/**
 * What a panel's row can be filtered by and does not show.
 *
 * @param names of the numbers, in the order that the page tells the script too
 */
export function rowDataOf(panel: PanelEntry, names: readonly string[]): string {
  const figure = (metric: MetricId): FigureOrGap => panel.figures.get(metric) ?? gap(metric, { code: 'not-measured' });
  const value = (metric: MetricId) => {
    const it = figure(metric);
    return isFigure(it) ? it.value : undefined;
  };
  const beside = (mode: 'combined' | 'red') =>
    besideNoEffectLine(figure(`flicker-${mode}`), figure(`flicker-frequency-${mode}`));
  const flicker = panelBesideNoEffectLine(
    beside('combined'),
    isFigure(figure('flicker-red')) ? beside('red') : 'not-read',
  );
  const checked = panel.claims.filter((it) => it.outcome !== 'not-comparable');
  return encodeRow(
    {
      slug: panel.slug,
      maker: panel.data.maker,
      numbers: Object.fromEntries(rangeFilters().map(({ metric, filter }) => [filter.key, value(metric.id)])),
      flicker: flicker && FLICKER_VALUES[flicker],
      hasHeld:
        checked.length === 0 ? undefined : checked.every((it) => it.outcome === 'within' || it.outcome === 'apart'),
      tested: panel.current?.date,
    },
    names,
  );
}

/** A panel's measured peaks, nm. */
export function wavelengthsOf(panel: PanelEntry): number[] {
  return (['wavelength-red', 'wavelength-near-infrared'] as const).flatMap((metric) => {
    const it = panel.figures.get(metric);
    return isFigure(it) ? [it.value] : [];
  });
}
