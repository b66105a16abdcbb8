import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import { type MetricId, metricById, metricsOnPanelPage } from '../../measure/metrics.ts';
import { showDate } from '../../words/format.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { shownFigure } from '../shared/shown-figure.ts';
import { siteAddress } from '../shared/site-address.ts';
import { badgeAddress } from './card-files.ts';

/** A figure as other writers embed it: it keeps its address, whatever becomes of the figure. */
export interface BadgeView {
  metric: MetricId;
  panel: string;
  name: string;
  /** `48.0 ± 2.7 mW/cm²`, or why there is none. */
  value: string;
  /** There is no figure: words take its place. */
  isGap: boolean;
  /** `95 % interval 45.4 to 50.6`; left out where it is not known. */
  interval?: string;
  /** Doubts, and a panel that is no more in the guide. */
  remark?: string;
  /** Its day, and whose figure it is. */
  from: string;
  /** Where its calculation stands, in full. */
  calculation: string;
  /** Addresses of badge and card in the guide, without the ending. */
  address: string;
}

/** The badges of a panel, one for each of its key figures. */
export function badgeViews(panel: PanelEntry, ledger: Ledger): BadgeView[] {
  return metricsOnPanelPage('key').map((metric) => badgeView(panel, metric, ledger));
}

function badgeView(panel: PanelEntry, metric: MetricId, { guide }: Ledger): BadgeView {
  const it = panel.figures.get(metric);
  const { shown, gap, dagger, carried, absent, calculation } = shownFigure(panel, it, metric, guide.currency);
  const price = metricById(metric).unit.startsWith('currency') ? panel.prices[0]?.price.date : undefined;
  const day = price ?? panel.current?.date;
  const remarks = [
    panel.data.status === 'withdrawn' && 'withdrawn from the guide',
    dagger?.label.replace(/, see the flags$/, ''),
    carried,
    absent && `± not known: ${absent}`,
  ].filter((text) => typeof text === 'string');
  const dated = day ? `${price ? 'Price of ' : ''}${showDate(day)}` : 'Not on the bench yet';
  return {
    metric,
    panel: panel.name,
    name: metricById(metric).name,
    value: shown?.text ?? gap ?? '',
    isGap: !shown,
    ...(isFigure(it) && it.interval95 && shown && { interval: intervalWords(it.interval95, shown.interval) }),
    ...(remarks.length > 0 && { remark: remarks.join('; ') }),
    from: `${dated}, ${guide.title}`,
    calculation: siteAddress(`${panelAddress(panel.slug)}${calculation}`, guide.site),
    address: badgeAddress(panel.slug, metric),
  };
}

/** What ± is; the ends of an interval that is not symmetric stand in the value itself. */
function intervalWords([low, high]: readonly [number, number], ends: string | undefined): string {
  if (low === high) return 'without uncertainty';
  return ends ? 'in brackets: 95 % interval' : '±: half of the 95 % interval';
}
