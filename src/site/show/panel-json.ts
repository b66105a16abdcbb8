import type { Ledger, PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { METRICS } from '../../measure/metrics.ts';
import { claimText } from '../../words/claim-text.ts';
import { say } from '../../words/say.ts';
import { rankState } from '../changes/state-of-ledger.ts';
import { carriedData, dataUnit, figureNumbers, flagsData, short } from '../export/data-parts.ts';
import { isLeftOut } from '../export/figure-rows.ts';

/**
 * A panel with the figures of a session in full digits, under the names that `data/panels.json` has for them; a figure
 * says everything itself here, and a place is an object with `place`, or with `absent` where there is none.
 */
export function panelJson(panel: PanelEntry, ledger: Ledger, session: SessionEntry | undefined = panel.current) {
  const { currency } = ledger.guide;
  const isNewest = session === panel.current;
  const figures = isNewest ? panel.figures : (session?.figures ?? panel.figures);
  return {
    slug: panel.slug,
    maker: panel.maker.name,
    model: panel.data.model,
    status: panel.data.status,
    size_class: panel.sizeClass?.id ?? null,
    built_for: ledger.today,
    currency,
    session: session
      ? {
          date: session.date,
          distance_cm: session.conditions.distance,
          method_version: session.conditions.methodVersion,
          is_newest: isNewest,
        }
      : null,
    // Only the newest session is ranked.
    rank: isNewest ? rankState(panel) : null,
    rank_by_emitted: isNewest ? rankState(panel.byEmitted) : null,
    figures: Object.fromEntries(
      METRICS.flatMap((metric) => {
        const it = figures.get(metric.id);
        return it && !isLeftOut(metric, it) ? [[metric.id, figureJson(it, currency)]] : [];
      }),
    ),
    flags: (isNewest ? panel.flags : (session?.flags ?? [])).map(({ check, severity, finding, concerns }) => ({
      check,
      severity,
      text: say(finding),
      concerns,
    })),
    claims: (session?.claims ?? panel.claims).map((it) => ({
      ...claimText(it),
      claimed: it.claimed,
      unit: it.unit,
      measured: it.measured?.id ?? null,
      difference: short(it.difference),
    })),
    prices: panel.prices.map(({ price, figure }) => ({ ...price, base: { value: figure.value, currency } })),
    sessions: panel.sessions.map((it) => it.date),
  };
}

function figureJson(it: FigureOrGap, currency: string) {
  if (!isFigure(it)) return { value: null, reason: say(it.reason) };
  const { value, uncertainty, interval95 } = figureNumbers(it);
  return {
    value,
    unit: dataUnit(it.unit, currency),
    standard_uncertainty: uncertainty,
    interval95,
    bound: it.bound ?? null,
    uncertainty_absent: it.uncertaintyAbsent ? say(it.uncertaintyAbsent) : null,
    basis: it.basis,
    method: it.method.id,
    method_version: it.method.version,
    notes: it.notes.map(say),
    flags: flagsData(it),
    ...(it.carriedOver && { carried_over: carriedData(it.carriedOver) }),
  };
}
