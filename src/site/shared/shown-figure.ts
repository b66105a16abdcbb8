import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { type MetricId, metricById } from '../../measure/metrics.ts';
import { reasonText } from '../../words/figure-text.ts';
import { type Dagger, daggerOf } from '../../words/flags.ts';
import { type Shown, showFigure } from '../../words/format.ts';
import { inOtherUnit, unitKeys } from '../../words/other-unit.ts';
import { say } from '../../words/say.ts';
import { panelAddress } from './panel-address.ts';
import { asPriced } from './priced.ts';

/** A labelled figure of a page: its name leads to its method, its value to its working. */
export interface ShownFigure {
  metric: MetricId;
  name: string;
  method: string;
  /** Where the working stands. */
  calculation: string;
  shown?: Shown;
  /** The same in the unit that some readers prefer, and what the two ways are called. */
  other?: Shown;
  unitKey?: string;
  otherKey?: string;
  /** Why there is none. */
  gap?: string;
  dagger?: Dagger;
  /** Where its flags stand: on the panel's page for the current session, else with its working. */
  flagsAt: string;
  notes: string[];
}

/** Anchor of a metric's working: the plain id for the current session, dated for earlier ones. */
export function calculationAnchor(
  metric: MetricId,
  session: SessionEntry | undefined,
  current: SessionEntry | undefined,
): string {
  return session && session !== current ? `${metric}-${session.date}` : metric;
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
  const calculation = `${panelAddress(panel.slug)}methodology/#${calculationAnchor(metric, session, panel.current)}`;
  const base = {
    metric,
    name,
    method: `/methods/${method}/`,
    calculation,
    flagsAt: session && session !== panel.current ? calculation : '#flags',
  };
  if (!isFigure(it)) return { ...base, gap: reasonText(it), notes: [] };
  const dagger = daggerOf(it.flags);
  const other = metric === 'real-price' ? asPriced(panel, currency) : inOtherUnit(it, currency);
  return {
    ...base,
    shown: showFigure(it, currency),
    ...(other && { other, ...unitKeys(it.unit, other.unit) }),
    notes: it.notes.map(say),
    ...(dagger && { dagger }),
  };
}
