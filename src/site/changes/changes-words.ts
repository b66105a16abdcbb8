import { counted } from '../../content/read/problem-list.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { METHODS } from '../../measure/methods.ts';
import { listed, money, showDate } from '../../words/format.ts';
import type { Row, Section } from '../shared/told.ts';
import type { Changes } from './changes.ts';
import { isUnchanged } from './compare-states.ts';
import { figureSections, MOST_ROWS } from './figure-rows.ts';
import type { PriceState } from './guide-state.ts';
import { rankRows, tieRows } from './rank-rows.ts';

/** What changes are put into words with. */
export interface ChangesWords {
  /** What they were found against. */
  against: string;
  guide: Pick<Ledger['guide'], 'currency' | 'sizeClasses'>;
  /** All figures, and not the weightiest alone. */
  isAll?: boolean;
}

/** The answer in a sentence or two. */
export function changesLead(changes: Changes, { against }: Pick<ChangesWords, 'against'>): string {
  const { was, now, lastDigits } = changes;
  const days =
    was.builtFor === now.builtFor
      ? `both for ${showDate(now.builtFor)}`
      : `for ${showDate(was.builtFor)}, now for ${showDate(now.builtFor)}`;
  const held = `Against ${against}, ${days}`;
  if (isUnchanged(changes)) return `${held}: nothing changes for readers.`;
  const counts = countsOf(changes);
  const digits = lastDigits > 0 ? ` ${counted(lastDigits, 'figure')} moved by no more than the last digit.` : '';
  return `${held}: ${counts.length > 0 ? listed(counts) : 'nothing that readers would notice'}.${digits}`;
}

function countsOf(it: Changes): string[] {
  const count = (n: number, one: string, after: string) => (n > 0 ? [`${counted(n, one)} ${after}`] : []);
  const dead = it.gonePages.filter(({ leadsTo }) => leadsTo === undefined).length;
  return [
    ...(dead > 0 ? [`${dead} address${dead === 1 ? '' : 'es'} gone`] : []),
    ...count(it.newPanels.length, 'panel', 'new'),
    ...count(it.gonePanels.length, 'panel', 'gone'),
    ...count(it.renamedPanels.length, 'panel', 'renamed'),
    ...count(it.ranks.length, 'rank', 'moved'),
    ...count(it.ties.filter(({ change }) => change === 'made').length, 'tie', 'made'),
    ...count(it.ties.filter(({ change }) => change === 'undone').length, 'tie', 'undone'),
    ...count(it.prices.length, 'price', 'changed'),
    ...count(it.figures.length, 'figure', 'moved'),
    ...count(it.flags.filter(({ change }) => change === 'come').length, 'flag', 'raised'),
    ...count(it.flags.filter(({ change }) => change === 'gone').length, 'flag', 'cleared'),
    ...count(it.claims.length, 'claim', 'turned'),
    ...count(it.methods.length, 'method', 'changed'),
    ...(it.currency ? [`the currency is ${it.currency.now}`] : []),
  ];
}

/** Everything that changes, under its headings, what weighs most first. */
export function changesSections(changes: Changes, { guide, isAll = false }: ChangesWords): Section[] {
  const { currency } = guide;
  const section = (title: string, rows: readonly Row[], lead?: string): Section[] =>
    rows.length > 0 ? [{ title, rows, ...(lead !== undefined && { lead }) }] : [];
  const dead = changes.gonePages.filter((it) => it.leadsTo === undefined);
  const moved = changes.gonePages.flatMap(({ address, leadsTo }) => (leadsTo ? [{ address, leadsTo }] : []));
  const byWeight = figureSections(changes.figures, currency, isAll ? Number.POSITIVE_INFINITY : MOST_ROWS);
  return [
    ...section(
      'Addresses gone',
      dead.map(({ address }) => ({ name: address, text: 'answers nothing any more, and nothing leads on from it' })),
      'Links to these will break. A withdrawn panel keeps its page: status: withdrawn.',
    ),
    ...section(
      'Addresses that lead on',
      moved.map(({ address, leadsTo }) => ({ name: address, text: `→ ${leadsTo}`, address: leadsTo })),
    ),
    ...section('Panels', panelRows(changes)),
    ...section('Ranks', rankRows(changes, guide)),
    ...section('Ties', tieRows(changes)),
    ...section(
      'Prices',
      changes.prices.map((it) => ({
        name: it.name,
        text: `${priceWords(it.was)} → ${priceWords(it.now)}`,
        address: `/panels/${it.slug}/#prices`,
      })),
    ),
    ...(changes.currency
      ? section('Currency', [
          {
            name: '',
            text: `The guide’s currency was ${changes.currency.was}, and is ${changes.currency.now}; figures in money are not compared.`,
          },
        ])
      : []),
    ...byWeight.map((it) => ({ ...it, title: `Figures: ${it.title}` })),
    ...section(
      'Flags',
      changes.flags.map(({ name, slug, change, flag, date }) => ({
        name: `${name}${date === null ? '' : `, ${showDate(date)}`}`,
        text: `${change === 'come' ? 'raised' : 'cleared'} (${flag.severity}): ${flag.text}`,
        address: `/panels/${slug}/`,
      })),
    ),
    ...section(
      'Claims',
      changes.claims.map(({ name, slug, was, now }) => ({
        name: `${name}, ${now?.subject ?? was?.subject}`,
        text: `${was?.text ?? 'not claimed'} → ${now?.text ?? 'not claimed any more'}`,
        address: `/panels/${slug}/`,
      })),
    ),
    ...section('Methods', changes.methods.map(methodRow)),
    ...section(
      'New pages',
      changes.newPages.map((address) => ({ name: address, text: '', address })),
    ),
  ];
}

function panelRows(changes: Changes): Row[] {
  return [
    ...changes.newPanels.map(({ name, slug }) => ({ name, text: 'new', address: `/panels/${slug}/` })),
    ...changes.renamedPanels.map(({ name, slug, wasSlug }) => ({
      name,
      text: `was at /panels/${wasSlug}/`,
      address: `/panels/${slug}/`,
    })),
    ...changes.gonePanels.map(({ name, keepsPage }) => ({
      name,
      text: keepsPage ? 'withdrawn: out of the rankings, its page stays' : 'gone from the guide',
    })),
    ...changes.newSessions.map(({ name, slug, date, isNewest }) => ({
      name,
      text: `${isNewest ? 'read again' : 'an earlier session came in'}, ${showDate(date)}`,
      address: `/panels/${slug}/`,
    })),
    ...changes.goneSessions.map(({ name, slug, date }) => ({
      name,
      text: `the session of ${showDate(date)} is gone`,
      address: `/panels/${slug}/`,
    })),
  ];
}

function priceWords(price: PriceState | null): string {
  if (!price) return 'none';
  const { list, paid, currency, date } = price;
  const amount = paid ?? list ?? 0;
  const from = paid !== null && list !== null && list !== paid ? `, list ${money(list, currency)}` : '';
  return `${money(amount, currency)} (${showDate(date)}${from})`;
}

function methodRow({ id, was, now }: Changes['methods'][number]): Row {
  const name = METHODS.find((it) => it.id === id)?.name ?? id;
  const versions = was === null ? `new, version ${now}` : now === null ? 'gone' : `version ${was} → ${now}`;
  return { name, text: versions, ...(now !== null && { address: `/methods/${id}/` }) };
}
