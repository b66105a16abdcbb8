import type { GuideEvent, MethodChange } from '../../ledger/events.ts';
import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import { showText } from '../../words/figure-text.ts';
import { listed, money, ordinal, showDate } from '../../words/format.ts';
import { carriedLines } from '../shared/carried-lines.ts';
import { correctionAddress, correctionWords } from '../shared/corrections.ts';
import { panelAddress } from '../shared/panel-address.ts';

/** Something that happened, in words. */
export interface EventWords {
  id: string;
  date: string;
  shownDate: string;
  /** What kind of thing it is: `New test`. */
  label: string;
  /** What it is about: `Kelpwright Gannet`. */
  name: string;
  /** Where it stands for good. */
  address: string;
  /** Whole sentences. */
  text: string;
  /** What else it is about, each with its address. */
  rows: EventRow[];
}

export interface EventRow {
  name: string;
  address: string;
  text: string;
}

/** An event in words; figures as they are worked out today. */
export function eventWords(event: GuideEvent, ledger: Ledger): EventWords {
  const { currency } = ledger.guide;
  const { id, date } = event;
  const words = { id, date, shownDate: showDate(date), rows: [] };
  switch (event.kind) {
    case 'tested':
    case 'retested': {
      const { panel, session } = event;
      const label = event.kind === 'tested' ? 'New test' : 'Re-test';
      const address = `${panelAddress(panel.slug)}methodology/#session-${session}`;
      return { ...words, label, name: panel.name, address, text: sessionText(panel, session, currency) };
    }
    case 'withdrawn': {
      const { slug, name, data } = event.panel;
      return { ...words, label: 'Withdrawn', name, address: panelAddress(slug), text: data.statusReason ?? '' };
    }
    case 'prices':
      return { ...words, label: 'Prices', ...pricesWords(event, ledger.guide.rankBy) };
    case 'methods': {
      const { changed, added } = event;
      const counts = [
        ...(changed.length > 0 ? [`${methodsIn(changed)} changed`] : []),
        ...(added.length > 0 ? [`${added.length} new`] : []),
      ];
      const rows = [...changed, ...added].map(methodRow);
      return { ...words, label: 'Methods', name: listed(counts), address: '/methods/', text: '', rows };
    }
    case 'correction': {
      const { correction } = event;
      const it = correctionWords(correction, ledger);
      return {
        ...words,
        label: 'Correction',
        name: [it.panelName, it.subject].filter(Boolean).join(': '),
        address: correctionAddress(correction),
        text: `${it.moved}. ${it.why}`,
      };
    }
  }
}

/** What a session came to: the light in the frame and its mean; of a re-test how the light has changed. */
function sessionText(panel: PanelEntry, date: string, currency: string): string {
  const session = panel.sessions.find((it) => it.date === date);
  if (!session) return '';
  const { figures, change, readings } = session;
  const [power, mean] = [figures.get('optical-power'), figures.get('mean-irradiance')];
  const came = [
    ...(isFigure(power) ? [`light in the frame ${showText(power, currency)}`] : []),
    ...(isFigure(mean) ? [`mean ${showText(mean, currency)}`] : []),
    ...(isFigure(change) ? [`the light changed by ${showText(change, currency)} since the session before`] : []),
  ];
  const carried = carriedLines(readings).map((it) => it.text);
  return [...came, ...(carried.length > 0 ? [`not read again: ${carried.join('; ')}`] : [])]
    .map((it) => `${capital(it)}.`)
    .join(' ');
}

function pricesWords(
  { sizeClass, of, changes, moves }: Extract<GuideEvent, { kind: 'prices' }>,
  rankBy: Ledger['guide']['rankBy'],
): Pick<EventWords, 'name' | 'address' | 'text'> {
  const amount = ({ price }: (typeof changes)[number]['was']) => money(price.paid ?? price.list ?? 0, price.currency);
  // One panel has been named already.
  const who = (panel: PanelEntry) => (changes.length > 1 ? `${panel.name} ` : '');
  const prices = changes.map(({ panel, was, now }) => `${who(panel)}${amount(was)} → ${amount(now)}`);
  const places = moves.map(({ panel, was, now }) => `${panel.name} ${ordinal(was)} → ${ordinal(now)}`);
  return {
    name: `${sizeClass.name}: ${listed(changes.map((it) => it.panel.name))}`,
    address: `/#${sizeClass.id}`,
    text: `${listed(prices)}. Of ${of} by the price of ${rankBy === 'emitted' ? 'an emitted' : 'a'} watt: ${listed(places)}.`,
  };
}

/** A method may have got two versions on one day. */
const methodsIn = (changes: readonly MethodChange[]) => new Set(changes.map((it) => it.id)).size;

/** Of a new method there is nothing to tell that its page does not. */
function methodRow({ id, name, version, change }: MethodChange): EventRow {
  const address = `/methods/${id}/#version-${version}`;
  return version === 1
    ? { name: `${name}, new`, address, text: '' }
    : { name: `${name}, version ${version}`, address, text: change };
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
