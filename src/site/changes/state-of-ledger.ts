import { FIXED_PAGES } from '../../content/rules/site-addresses.ts';
import type { Ledger, PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type FigureMap, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { METHODS } from '../../measure/methods.ts';
import { METRICS } from '../../measure/metrics.ts';
import type { Rank } from '../../measure/money/ranking.ts';
import type { Statement } from '../../measure/statement.ts';
import { claimText } from '../../words/claim-text.ts';
import { say } from '../../words/say.ts';
import { dataUnit, figureNumbers, publishedPanels } from '../export/data-parts.ts';
import { isLeftOut } from '../export/figure-rows.ts';
import { filesAddress, hasFiles } from '../shared/file-addresses.ts';
import { panelAddress } from '../shared/panel-address.ts';
import type { RankedGuide, RankedPanel } from './compare-ranks.ts';
import type { FigureState, GuideState, PanelState, RankState, SessionState } from './guide-state.ts';

/** What a build of the ledger would publish. */
export function stateOfLedger(ledger: Ledger): GuideState {
  const { today, guide } = ledger;
  return {
    builtFor: today,
    currency: guide.currency,
    panels: new Map(publishedPanels(ledger).map((panel) => [panel.slug, panelState(panel, guide.currency)])),
    methods: new Map(METHODS.map(({ id, version }) => [id, version])),
    knowsAllMethods: true,
    pages: pagesOf(ledger),
    knowsAllPages: true,
    renamed: new Map(
      [...ledger.panels.values()].flatMap(({ slug, data }) => formerNames(data).map((it) => [it, slug])),
    ),
  };
}

/** Addresses of all pages that readers can have; withdrawn panels keep theirs. */
function pagesOf({ panels }: Ledger): Set<string> {
  return new Set([
    ...FIXED_PAGES,
    ...METHODS.map(({ id }) => methodAddress(id)),
    ...[...panels.values()]
      .filter((it) => it.data.status !== 'draft')
      .flatMap((it) => [...panelPages(it.slug), ...(hasFiles(it) ? [filesAddress(it.slug)] : [])]),
  ]);
}

/** Names that a panel had before, where its file keeps them. */
function formerNames(data: object): readonly string[] {
  return (data as { formerly?: readonly string[] }).formerly ?? [];
}

/** Address of a method's page. */
export const methodAddress = (id: string) => `/methods/${id}/`;

/** Addresses of the pages that every panel has. */
export const panelPages = (slug: string) => [panelAddress(slug), `${panelAddress(slug)}methodology/`];

/** The places alone. */
export function ranksOfLedger(ledger: Ledger): RankedGuide {
  return { panels: new Map(publishedPanels(ledger).map((panel) => [panel.slug, rankedPanel(panel)])) };
}

function rankedPanel(panel: PanelEntry): RankedPanel {
  const { slug, name, sizeClass, byEmitted } = panel;
  const ranks = { optical: rankState(panel), emitted: rankState(byEmitted) };
  return { slug, name, sizeClass: sizeClass?.id ?? null, ranks };
}

function panelState(panel: PanelEntry, currency: string): PanelState {
  const { prices, sessions } = panel;
  const price = prices[0]?.price;
  return {
    ...rankedPanel(panel),
    price: price && {
      date: price.date,
      list: price.list ?? null,
      paid: price.paid ?? null,
      currency: price.currency,
    },
    sessions:
      sessions.length > 0
        ? sessions.map((it) => sessionState(it, currency))
        : [{ date: null, figures: figureStates(panel.figures, currency), flags: [], claims: [] }],
  };
}

/** A place among those that were measured alike, or why there is none. */
export function rankState({
  rank,
  rankAbsent,
}: {
  rank: Rank | undefined;
  rankAbsent: Statement | undefined;
}): RankState {
  if (!rank) return { absent: rankAbsent ? say(rankAbsent) : '' };
  const { place, of, range, tiedWith } = rank;
  return { place, of, range, tiedWith };
}

function sessionState({ date, figures, flags, claims }: SessionEntry, currency: string): SessionState {
  return {
    date,
    figures: figureStates(figures, currency),
    flags: flags.map(({ check, severity, finding, concerns }) => ({ check, severity, text: say(finding), concerns })),
    claims: claims.map((it) => ({ ...claimText(it), claimed: it.claimed, unit: it.unit })),
  };
}

function figureStates(figures: FigureMap, currency: string): Map<string, FigureState> {
  return new Map(
    METRICS.flatMap((metric) => {
      const it = figures.get(metric.id);
      return it && !isLeftOut(metric, it) ? [[metric.id, figureState(it, currency)]] : [];
    }),
  );
}

function figureState(it: FigureOrGap, currency: string): FigureState {
  if (!isFigure(it)) return { reason: say(it.reason) };
  return {
    // As published, so that no digit tips over the edge of its rounding.
    ...figureNumbers(it),
    unit: dataUnit(it.unit, currency),
    bound: it.bound ?? null,
    basis: it.basis,
    method: it.method.id,
    version: it.method.version,
  };
}
