import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { isMetricId, type MetricId, metricById } from '../../measure/metrics.ts';
import { type FigureWords, figureWords } from '../../words/figure-words.ts';
import { markOf } from '../../words/flags.ts';
import { say } from '../../words/say.ts';
import { correctedMark } from './corrections.ts';
import { asPriced } from './priced.ts';

/** A labelled figure of a page: its name leads to its method, its value to its calculation. */
export interface ShownFigure extends FigureWords {
  metric: MetricId;
  name: string;
  method: string;
  /** Where the calculation stands, from the panel's own page. */
  calculation: string;
  /** Where its flags stand: on the panel's page for the current session, else with its calculation. */
  flagsAt: string;
  notes: string[];
}

/** Anchor of a metric's calculation: the plain id for the current session, dated for earlier ones. */
export function calculationAnchor(
  metric: MetricId,
  session: SessionEntry | undefined,
  current: SessionEntry | undefined,
): string {
  return session && session !== current ? `${metric}-${session.date}` : metric;
}

/** Pages of a panel that tell how its figures are worked out. */
export type CalculationPage = 'methodology' | 'files';

/** The page on which a metric's calculation stands. */
export function calculationPage(metric: MetricId): CalculationPage {
  return isMetricId(metric) && metricById(metric).isOfFiles ? 'files' : 'methodology';
}

/** A figure or gap of a panel with its addresses. */
export function shownFigure(
  panel: PanelEntry,
  it: FigureOrGap | undefined,
  metric: MetricId,
  currency: string,
  session?: SessionEntry,
): ShownFigure {
  const { name, method } = metricById(metric);
  const calculation = `${calculationPage(metric)}/#${calculationAnchor(metric, session, panel.current)}`;
  return {
    metric,
    name,
    method: `/methods/${method}/`,
    calculation,
    flagsAt: session && session !== panel.current ? calculation : '#flags',
    ...figureWords(it, {
      currency,
      say,
      priced: metric === 'real-price' ? asPriced(panel, currency) : undefined,
      dagger: markOf(it),
      corrected: correctedMark(panel.corrections, it, currency),
    }),
    notes: isFigure(it) ? it.notes.map(say) : [],
  };
}
