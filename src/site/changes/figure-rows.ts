import { isMetricId, metricById } from '../../measure/metrics.ts';
import { showDate } from '../../words/format.ts';
import { nameOf } from '../../words/names.ts';
import { calculationPage } from '../shared/shown-figure.ts';
import type { Row, Section } from '../shared/told.ts';
import type { FigureChange } from './changes.ts';
import { type FigureState, isNumber } from './guide-state.ts';
import { shownState } from './moved.ts';

/** Rows under one heading, unless all are asked for. */
export const MOST_ROWS = 8;

/**
 * Figures that moved, under the panel or under the measure, whichever makes fewer headings: a price moves a panel's
 * figures, a method moves a figure of every panel.
 *
 * @param most rows under a heading; what is left out is counted
 */
export function figureSections(figures: readonly FigureChange[], currency: string, most = MOST_ROWS): Section[] {
  const byPanel = Map.groupBy(figures, (it) => it.slug);
  const byMetric = Map.groupBy(figures, (it) => it.metric);
  const underPanels = byPanel.size <= byMetric.size;
  return [...(underPanels ? byPanel : byMetric).values()].flatMap((group): Section[] => {
    const [first] = group;
    if (!first) return [];
    const rows = group.slice(0, most).map((it): Row => {
      const name = underPanels ? nameOfMetric(it.metric) : it.name;
      const when = it.session === null ? '' : `, ${showDate(it.session)}`;
      return {
        name: `${underPanels ? capital(name) : name}${when}`,
        text: movedText(it.was, it.now, currency),
        ...(isMetricId(it.metric) && { address: `/panels/${it.slug}/${calculationPage(it.metric)}/#${it.metric}` }),
      };
    });
    const more = group.length - rows.length;
    return [
      {
        title: underPanels ? first.name : capital(nameOfMetric(first.metric)),
        rows: more > 0 ? [...rows, { name: '', text: `and ${more} more; --all lists them` }] : rows,
      },
    ];
  });
}

/** `48.0 ± 2.4 → 49.1 ± 2.5 mW/cm², method 1 → 2`. */
export function movedText(was: FigureState, now: FigureState, currency: string): string {
  if (!isNumber(was)) return isNumber(now) ? `new: ${shownState(now, currency).text}; it was ${was.reason}` : '';
  if (!isNumber(now)) return `${shownState(was, currency).text} → gone: ${now.reason}`;
  const [one, other] = [shownState(was, currency), shownState(now, currency)];
  // The unit once, behind both.
  const before = one.unit === other.unit && other.unit !== '' ? one.text.replace(one.unit, '').trim() : one.text;
  const method = was.method === now.method && was.version !== now.version;
  return `${before.replace('  ', ' ')} → ${other.text}${method ? `, by its method’s version ${now.version}` : ''}`;
}

function nameOfMetric(metric: string): string {
  return isMetricId(metric) ? nameOf(metricById(metric).id) : metric;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
