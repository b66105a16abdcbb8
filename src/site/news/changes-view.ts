import { counted } from '../../content/read/problem-list.ts';
import { type GuideEvent, guideEvents } from '../../ledger/events.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { listed, showDate } from '../../words/format.ts';
import { publicCorrections } from '../export/corrections-data.ts';
import { type CorrectionWords, correctionWords } from '../shared/corrections.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { type EventWords, eventWords } from './event-words.ts';

/** What has happened in the guide, as its page tells it. */
export interface ChangesView {
  /** What is new this month, in a sentence. */
  lead: string;
  /** Panels that have a page and no session: that is no event, since nothing was read and no file has its day. */
  waiting: Array<{ name: string; address: string }>;
  /** By month, the newest first; not older than a year. */
  months: EventMonth[];
  /** The rest, by year. */
  older: Array<{ year: string; count: string; events: EventWords[] }>;
  corrections: CorrectionWords[];
}

interface EventMonth {
  /** `2026-11`, its anchor. */
  id: string;
  name: string;
  events: EventWords[];
}

/** The page of changes, as of the guide's day. */
export function changesView(ledger: Ledger): ChangesView {
  const { today } = ledger;
  const events = guideEvents(ledger);
  const aYearAgo = `${Number(today.slice(0, 4)) - 1}${today.slice(4)}`;
  const [recent, older] = [events.filter((it) => it.date > aYearAgo), events.filter((it) => it.date <= aYearAgo)];
  const words = (these: readonly GuideEvent[]) => these.map((it) => eventWords(it, ledger));
  return {
    lead: leadOf(events, today),
    waiting: [...ledger.panels.values()]
      .filter(({ current, data }) => !current && data.status === 'published')
      .map(({ name, slug }) => ({ name, address: panelAddress(slug) })),
    months: [...Map.groupBy(recent, (it) => it.date.slice(0, 7))].map(([month, group]) => ({
      id: month,
      name: monthName(month),
      events: words(group),
    })),
    older: [...Map.groupBy(older, (it) => it.date.slice(0, 4))].map(([year, group]) => ({
      year,
      count: counted(group.length, 'change'),
      events: words(group),
    })),
    corrections: publicCorrections(ledger).map((it) => correctionWords(it, ledger)),
  };
}

/** Parts of the page, as links name them. */
export function changesParts(ledger: Ledger): string[] {
  const { months, older, corrections } = changesView(ledger);
  return [
    ...['main', 'corrections'],
    ...months.flatMap(({ id, events }) => [`month-${id}`, ...events.map((it) => it.id)]),
    ...older.flatMap(({ year, events }) => [`year-${year}`, ...events.map((it) => it.id)]),
    ...corrections.map((it) => it.id),
  ];
}

/** What of each kind is new, in the order of its weight. */
const COUNTS: ReadonlyArray<readonly [kind: GuideEvent['kind'], one: string]> = [
  ['correction', 'correction'],
  ['tested', 'new test'],
  ['retested', 're-test'],
  ['withdrawn', 'withdrawal'],
];

function leadOf(events: readonly GuideEvent[], today: string): string {
  const month = today.slice(0, 7);
  const own = events.filter((it) => it.date.startsWith(month));
  const [newest] = events;
  if (!newest) return 'Nothing has been read yet.';
  if (own.length === 0) return `Nothing in ${monthName(month)} so far; the newest is of ${showDate(newest.date)}.`;
  const methods = own.flatMap((it) => (it.kind === 'methods' ? [...it.changed, ...it.added] : []));
  const methodCount = new Set(methods.map((it) => it.id)).size;
  const moved = own.filter((it) => it.kind === 'prices').length;
  const counts = [
    ...COUNTS.flatMap(([kind, one]) => {
      const n = own.filter((it) => it.kind === kind).length;
      return n > 0 ? [counted(n, one)] : [];
    }),
    ...(moved > 0 ? [`prices that moved a rank on ${counted(moved, 'day')}`] : []),
    ...(methodCount > 0 ? [`${counted(methodCount, 'method')} new or changed`] : []),
  ];
  return `${monthName(month)}: ${listed(counts)}.`;
}

/** `2026-11` to `November 2026`. */
const monthName = (month: string) =>
  new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric', timeZone: 'UTC' }).format(
    new Date(`${month}-01T00:00:00Z`),
  );
