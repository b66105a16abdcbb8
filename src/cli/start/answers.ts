import { isBlock } from '../../content/schema/block.ts';
import { guideSchema } from '../../content/schema/guide.ts';
import { INSTRUMENT_KINDS, type InstrumentKind } from '../../content/schema/instrument.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { findings } from '../../content/schema/wording.ts';

/** What a guide is started from: the tester's own words and their bench. */
export interface Answers {
  title: string;
  publisher: string;
  disclosure: string;
  site: string;
  tagline: string;
  about: string;
  currency: string;
  tariff: number;
  tariffSource: string;
  distance: string;
  mainsFrequency: 50 | 60;
  instruments: ReadonlyArray<{ kind: InstrumentKind; name: string }>;
}

/** What the command line gives of it, as it was typed. */
export interface Given extends Partial<Record<Exclude<keyof Answers, 'instruments'>, string>> {
  instrument?: readonly string[];
}

/** One thing that has to be known, or that may be said otherwise. */
export interface Question {
  key: Exclude<keyof Answers, 'instruments'>;
  flag: string;
  /** What it is, as a terminal asks for it. */
  asks: string;
  /** What stands where nothing is said; undefined for what only the tester can say. */
  usual?: (given: Given) => string;
}

/** Countries whose mains have 60 Hz, by their currencies: common knowledge, no source. Everywhere else 50 is asked for. */
const SIXTY = ['USD', 'CAD', 'MXN', 'BRL', 'KRW', 'TWD', 'PHP', 'SAR', 'COP', 'PEN'];

export const QUESTIONS: readonly Question[] = [
  { key: 'title', flag: '--title', asks: 'Title of the guide' },
  { key: 'publisher', flag: '--publisher', asks: 'Who publishes it' },
  {
    key: 'disclosure',
    flag: '--disclosure',
    asks: 'Who pays for it, and every connection to makers and sellers',
  },
  { key: 'site', flag: '--site', asks: 'Address at which it will be published, https://…' },
  {
    key: 'tagline',
    flag: '--tagline',
    asks: 'What the guide is, in one line',
    usual: () => 'Light-therapy panels, all measured on one bench',
  },
  {
    key: 'about',
    flag: '--about',
    asks: 'The same in a paragraph',
    usual: ({ publisher }) =>
      `${publisher ?? 'Its publisher'} measures light-therapy panels on one bench, with the same meters in the same order. Every reading is shown, with what is calculated from it and how sure that is. What the light does for anyone is no subject of this guide.`,
  },
  { key: 'currency', flag: '--currency', asks: 'Currency in which prices are compared, such as EUR' },
  { key: 'tariff', flag: '--tariff', asks: 'Price of electricity, in that currency per kWh, such as 0.31' },
  {
    key: 'tariffSource',
    flag: '--tariff-source',
    asks: 'Whose tariff that is',
    usual: () => 'Household tariff at the bench',
  },
  { key: 'distance', flag: '--distance', asks: 'Distance at which panels are measured', usual: () => '6 in' },
  {
    key: 'mainsFrequency',
    flag: '--mains-frequency',
    asks: 'Frequency of the mains at the bench, 50 or 60',
    usual: ({ currency = '' }) => (SIXTY.includes(currency.toUpperCase()) ? '60' : '50'),
  },
];

/** Where the guide's schema has each of them. */
const FIELD: Readonly<Partial<Record<Question['key'], string>>> = {
  distance: 'referenceDistance',
  tariff: 'tariff.price',
};

/** What is wrong with one answer, in a sentence; undefined where it can stand. */
export function faultOf(key: Question['key'], text: string): string | undefined {
  const field = FIELD[key] ?? key;
  if (key === 'tariffSource') return text.trim() === '' ? 'wanted a text that is not empty' : undefined;
  const [name = '', inner] = field.split('.');
  const isNumber = ['tariff', 'mainsFrequency'].includes(key);
  // A text that is no number is left one, so that it is told why.
  const value = isNumber && text.trim() !== '' && !Number.isNaN(Number(text)) ? Number(text) : text;
  const data = inner ? { [name]: { [inner]: value, date: '2026-01-01', source: 'x' } } : { [name]: value };
  const parsed = guideSchema.safeParse(data);
  const [found] = parsed.success
    ? []
    : findings(guideSchema, data, parsed.error.issues).filter((it) => it.field === field);
  if (!found) return undefined;
  return `${found.found}: wanted ${found.wanted}${found.hint ? `; ${found.hint}` : ''}`;
}

/** `magnetic=Three-axis coil` as an instrument, or what is wrong with it. */
export function instrumentOf(text: string): { kind: InstrumentKind; name: string } | string {
  const [, typed = '', name = ''] = /^\s*([^=]*?)\s*=\s*(.*?)\s*$/s.exec(text) ?? [];
  const kind = INSTRUMENT_KINDS.find((it) => it === typed);
  if (kind && name) return { kind, name };
  const alone = INSTRUMENT_KINDS.find((it) => it === (typed || text.trim()));
  if (alone) return `${JSON.stringify(text)}: wanted a name too: ${alone}=NAME, as the bench calls the meter`;
  const near = kind ? undefined : nearest(typed || text, INSTRUMENT_KINDS);
  const hint = near ? `; did you mean "${near}"?` : '';
  return `${JSON.stringify(text)}: wanted KIND=name, the kind one of: ${INSTRUMENT_KINDS.join(', ')}${hint}`;
}

/**
 * Answers from what was given, the usual ones where nothing was said.
 *
 * @returns all that is missing or wrong, a line each, where something is
 */
export function answersFrom(given: Given): { answers: Answers } | { faults: string[] } {
  const faults: string[] = [];
  const said: Record<string, string> = {};
  for (const { key, flag, asks, usual } of QUESTIONS) {
    const text = given[key] ?? usual?.(given);
    const fault =
      text === undefined ? `is missing: ${asks.charAt(0).toLowerCase()}${asks.slice(1)}` : faultOf(key, text);
    if (fault) faults.push(`${flag} ${fault}`);
    else if (text !== undefined) said[key] = text.trim();
  }
  const instruments = (given.instrument ?? []).map(instrumentOf);
  for (const it of instruments) if (typeof it === 'string') faults.push(`--instrument ${it}`);
  if (faults.length > 0) return { faults };
  const { tariff, mainsFrequency, ...texts } = said;
  return {
    answers: {
      ...(texts as Omit<Answers, 'tariff' | 'mainsFrequency' | 'instruments'>),
      tariff: Number(tariff),
      mainsFrequency: Number(mainsFrequency) === 60 ? 60 : 50,
      instruments: instruments.filter((it) => isBlock(it)) as Answers['instruments'],
    },
  };
}
