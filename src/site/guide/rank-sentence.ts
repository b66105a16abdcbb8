import type { Ledger, PanelEntry, RankBasis } from '../../ledger/ledger.ts';
import { orderDisagreement } from '../../ledger/order-disagreement.ts';
import { versionsAlike } from '../../measure/irradiance/bench-procedure.ts';
import type { Rank } from '../../measure/money/ranking.ts';
import { listed, ordinal } from '../../words/format.ts';
import { ALONE, isAlone, rankRange } from '../../words/rank-words.ts';
import { madeOfAll } from '../shared/page-reads.ts';
import { markOfRank, placing, rankAbsence, saidOr } from './rank-basis.ts';

/** The rank in the guide’s own ranking, as a panel’s page says it. */
export const standingSentence = madeOfAll('standing', (panel, ledger): string => rankSentence(panel, ledger));

/** The rank as a sentence, ties named; with a mark where it goes by a figure in doubt. */
export function rankSentence(panel: PanelEntry, ledger: Ledger, basis: RankBasis = 'optical'): string {
  const plain = plainRankSentence(panel, ledger, basis);
  const mark = placing(panel, basis).rank && markOfRank(panel, basis);
  const doubt = mark ? ` ${mark.mark} The figure it goes by is in doubt.` : '';
  return `${plain}${doubt}${basis === 'optical' ? disagreementSentence(panel, ledger) : ''}`;
}

/** Beside a panel that the other basis puts in another order, beyond the uncertainty: its rank by that basis. */
export function disagreementRemark(panel: PanelEntry, basis: RankBasis): string {
  const other = basis === 'optical' ? 'emitted' : 'optical';
  const { rank } = placing(panel, other);
  const place = rank ? rankRange(rank.range ?? [rank.place, rank.place]) : '';
  return `${place} by ${other === 'emitted' ? 'all the light' : 'the light in the frame'}`;
}

/** That all the light puts a panel behind or before others, beyond the uncertainty; empty where it does not. */
function disagreementSentence(panel: PanelEntry, ledger: Ledger): string {
  const found = orderDisagreement(panel, ledger);
  if (!found) return '';
  const named = (them: readonly PanelEntry[], where: string) =>
    them.length > MOST_TIES
      ? [`${where} ${them.length} panels`]
      : them.length > 0
        ? [`${where} ${listed(them.map((it) => it.name))}`]
        : [];
  const places = [...named(found.before, 'before'), ...named(found.behind, 'behind')].join(' and ');
  return ` By all the light that leaves the LEDs it comes ${places} instead, beyond the uncertainty.`;
}

function plainRankSentence(panel: PanelEntry, ledger: Ledger, basis: RankBasis): string {
  const { sizeClass, current } = panel;
  const place = placing(panel, basis);
  const { rank } = place;
  if (!rank || !sizeClass) return `Not ranked: ${rankAbsence(place)}.`;
  if (isAlone(rank)) {
    return `${capital(ALONE)}: no other panel of the class ${sizeClass.name} ${basis === 'optical' ? 'was measured' : 'has an emitted power'} at ${current?.conditions.distance} cm under ${versionWords(current?.conditions.methodVersion)} of the bench procedure, so there is none to rank it with.`;
  }
  const among = `of ${rank.of} in the class ${sizeClass.name}${current?.conditions.isReference ? '' : `, among those measured at ${current?.conditions.distance} cm under ${versionWords(current?.conditions.methodVersion)}`}`;
  if (!rank.range) return `${ordinal(rank.place)} ${among}; no range, since ${saidOr(rank.rangeAbsent)}.`;
  const tied = tiedNames(rank, ledger, basis);
  const tie = tied.length > 0 ? ` A tie with ${listed(tied)}: the readings do not show which is the better value.` : '';
  return `${rankRange(rank.range)} ${among}.${tie}`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Ties that a sentence names; where it is one of hundreds, a panel can tie with dozens. */
const MOST_TIES = 6;

/** The panels of a tie by name, or the nearest of them and how many others there are. */
function tiedNames({ place, tiedWith }: Rank, ledger: Ledger, basis: RankBasis): string[] {
  const nameOf = (slug: string) => ledger.panels.get(slug)?.name ?? slug;
  if (tiedWith.length <= MOST_TIES) return tiedWith.map(nameOf);
  const away = (slug: string) => {
    const panel = ledger.panels.get(slug);
    return Math.abs(((panel && placing(panel, basis).rank?.place) ?? Number.POSITIVE_INFINITY) - place);
  };
  // Looked up once each: who reads a panel of the ledger may be noted.
  const near = new Set(
    tiedWith
      .map((slug) => ({ slug, away: away(slug) }))
      .toSorted((a, b) => a.away - b.away)
      .slice(0, MOST_TIES - 1)
      .map((it) => it.slug),
  );
  const named = tiedWith.filter((slug) => near.has(slug)).map(nameOf);
  return [...named, `${tiedWith.length - near.size} others near it in the table`];
}

/** "version 1 or 2": the versions of the bench procedure under which the grid is read alike. */
export function versionWords(version: number | undefined): string {
  return version === undefined ? 'no version' : `version ${versionsAlike(version).join(' or ')}`;
}
