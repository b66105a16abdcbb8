import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import type { MetricId } from '../../measure/metrics.ts';
import { markOf } from '../../words/flags.ts';
import { say } from '../../words/say.ts';
import { shortModel } from '../plan/plan-data.ts';
import { packFigures } from '../shared/browser/figure-pack.ts';
import { asPriced } from '../shared/priced.ts';
import { photoEntry } from '../shared/small-photo.ts';
import { COMPARE_METRICS, DISTANCE_ROWS } from './browser/compare-rows.ts';
import {
  COMPARE_FORMAT,
  type ComparedPanel,
  type ListedPanel,
  type PanelList,
  type ReadDistance,
  type Size,
} from './browser/compared-panel.ts';
import { packedSpectrum } from './packed-spectrum.ts';

/** Metrics that a file holds: those of the rows, the size of the field, and the means of the table by distance. */
const METRICS: readonly MetricId[] = [
  ...COMPARE_METRICS,
  'field-width',
  'field-height',
  ...DISTANCE_ROWS.map((it) => it.metric),
];

/** One panel's file. */
export function comparedPanel(panel: PanelEntry, ledger: Ledger): ComparedPanel {
  const { current, data, figures } = panel;
  const spectrum = packedSpectrum(panel);
  const marks = METRICS.flatMap((metric) => {
    const mark = markOf(figures.get(metric));
    return mark ? [[metric, mark] as const] : [];
  });
  const size = (it: typeof data.field): Size | null => (it ? { width: it.width.value, height: it.height.value } : null);
  const readAt = (kind: 'magnetic' | 'electric' | 'sound'): ReadDistance | null => {
    const it = current?.used[kind]?.distance;
    return it ? { value: it.value, written: it.written } : null;
  };
  return {
    format: COMPARE_FORMAT,
    slug: panel.slug,
    name: panel.name,
    maker: panel.maker.name,
    model: data.model,
    status: data.status,
    ...photoEntry(panel),
    sizeClass: panel.sizeClass?.name ?? null,
    currency: ledger.guide.currency,
    priced: panel.prices[0]?.price.date ?? null,
    asPriced: asPriced(panel, ledger.guide.currency)?.value ?? null,
    tested: current?.date ?? null,
    conditions: current?.conditions ?? null,
    distances: { magnetic: readAt('magnetic'), electric: readAt('electric'), sound: readAt('sound') },
    frequencies: (['magnetic', 'electric'] as const).filter((kind) => current?.used[kind]?.frequency),
    marks: Object.fromEntries(marks),
    field: size(data.field),
    housing: size(data.housing),
    light: current?.light.model ? shortModel(current.light.model) : { absent: lightAbsence(panel) },
    ...(spectrum && { spectrum }),
    ...packFigures(
      METRICS.map(
        (metric) => [metric, figures.get(metric) ?? { gap: true, metric, reason: { code: 'not-measured' } }] as const,
      ),
      say,
      current ? `${panel.slug}/${current.date}/` : `${panel.slug}/`,
    ),
  };
}

function lightAbsence({ current, figures }: PanelEntry): string {
  if (!current) return 'it has not been on the bench yet';
  const emitted = figures.get('emitted-power');
  return emitted && 'gap' in emitted ? say(emitted.reason) : 'the beam is not known';
}

/** The file of the short list. */
export function panelList(ledger: Ledger): PanelList {
  return { format: COMPARE_FORMAT, panels: listedPanels(ledger) };
}

/**
 * The short list, by size class as the guide has them, and in each in the order of the names; withdrawn panels keep their
 * place, since links name them.
 */
export function listedPanels(ledger: Ledger): ListedPanel[] {
  const classes = ledger.classes.map((it) => it.sizeClass?.name);
  const place = (it: ListedPanel) => {
    const at = classes.indexOf(it.class ?? undefined);
    return at < 0 ? classes.length : at;
  };
  return [...ledger.panels.values()]
    .map(({ slug, name, maker, sizeClass, data, photos }) => ({
      slug,
      ...(data.formerly && { formerly: data.formerly }),
      name,
      maker: maker.name,
      class: sizeClass?.name ?? null,
      status: data.status,
      ...photoEntry({ slug, photos }),
    }))
    .toSorted((a, b) => place(a) - place(b) || a.name.localeCompare(b.name, 'en', { numeric: true }));
}
