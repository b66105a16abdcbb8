import { METRICS } from '../../measure/metrics.ts';
import { idsIn } from '../read/body-links.ts';
import { texts } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import type { RawCollections } from './rule.ts';

/** Parts of pages that every guide has alike, beside those that its content decides; tests hold them against a build. */
export const PAGE_PARTS: Readonly<Record<string, readonly string[]>> = {
  '/agreement/': ['main'],
  '/compare/': ['main', 'reading'],
  '/data/': [
    'main',
    'cite',
    'tables',
    'whole',
    'panels',
    'sessions',
    'metrics',
    'figures',
    'readings',
    'prices',
  ].concat('carried', 'meters'),
  '/methods/': ['main', 'besides', 'beyond', 'cost', 'light', 'limits', 'sure', 'time'],
  '/plan/': ['main', 'plan', 'plan-every', 'plan-yours'],
  '/plots/': ['main', 'efficiency', 'power-by-price', 'price-per-watt'],
};

/** Parts of a panel's page, those that not every panel has too. */
export const PANEL_PARTS = [
  ...['main', 'panel', 'figures', 'flags', 'notes', 'notes-on-readings', 'photos', 'prices', 'sessions', 'step-ups'],
  ...['cautions-called', 'cite', 'claims', 'distances', 'emitted', 'exposure', 'exposure-note', 'grid', 'modes'],
  ...['limits', 'limits-beds', 'limits-eyes', 'limits-fields', 'limits-flicker', 'limits-skin', 'limits-sound'],
  ...['own-price', 'spectrum', 'surroundings'],
];

/** Parts of the pages that rank, beside classes and tables. */
const RANKING = ['main', 'all-panels', 'answers', 'ranking', 'guide-tools', 'filter-part', 'own-part'];

/** Pages that rank the panels: their parts beside classes and tables, those that not every guide has too. */
export const RANKING_PARTS: Readonly<Record<string, readonly string[]>> = {
  '/': [...RANKING, 'about', 'ask', 'disclosure', 'frontier', 'how-to-read', 'spend', 'withdrawn'],
  '/emitted/': RANKING,
  '/frame/': RANKING,
};

/** The class of panels whose LED field has not been measured. */
export const UNKNOWN_SIZE = 'unknown-size';

/** A table of panels that were measured otherwise than the rest of their class: `table-palm-30-cm-v1`, and before it the class. */
const APART = /^(table-.+?)-[\d-]+-cm-v\d+$/;

/** A part as lists name it: figures decide which tables a class has, and `check` looks there (links-to-figures.ts). */
export const listedPart = (id: string) => id.replace(APART, '$1');

/** Parts of a calculation page that belong to a day, before it, beside its figures. */
const OF_A_DAY = ['session', 'readings', 'flags', 'past-the-edges'];

/** Ids of the parts of a page that are the same for all, or follow from a panel's or maker's file; undefined for others. */
export function partsOf(page: string, { guide, panels, makers }: RawCollections): readonly string[] | undefined {
  const ranking = RANKING_PARTS[page];
  if (ranking) {
    const named = [...guide.values()].flatMap((it) => texts(it, 'sizeClasses', '*', 'id').map(({ value }) => value));
    const classes = [...named, UNKNOWN_SIZE];
    return [...ranking, ...classes, ...classes.map((it) => `table-${it}`)];
  }
  if (page === '/panels/') {
    const ids = [...makers].flatMap(([id, it]) => [id, ...texts(it, 'formerly', '*').map(({ value }) => value)]);
    return ['main', ...ids.map((it) => `maker-${it}`)];
  }
  const [, slug = '', calculation] = /^\/panels\/([^/]+)\/(methodology\/)?$/.exec(page) ?? [];
  const panel = panels.get(slug);
  if (!panel) return PAGE_PARTS[page];
  return calculation ? calculationParts(panel) : panelParts(panel);
}

const daysOf = (panel: Source) => texts(panel, 'sessions', '*', 'date').map((it) => it.value);

const panelParts = (panel: Source) => [...PANEL_PARTS, ...daysOf(panel).map((it) => `flags-${it}`), ...idsIn(panel)];

function calculationParts(panel: Source): string[] {
  const metrics = METRICS.map((it) => it.id);
  const named = [...OF_A_DAY, ...metrics];
  return ['main', 'cite', 'flags', ...metrics, ...daysOf(panel).flatMap((day) => named.map((it) => `${it}-${day}`))];
}
