/**
 * The state of the guide's tools in the address: filters, own prices, what can be spent, and how tables are sorted.
 * Whatever an address holds that the guide does not know is left aside and named; nothing of it is ever run or shown
 * as markup.
 */

/** Filters of which any of several may hold. */
export const SETS = ['class', 'maker', 'nm', 'flicker'] as const;
export type SetName = (typeof SETS)[number];

export interface FilterRange {
  from?: number;
  to?: number;
}

/** How the ranking is sorted: within each size class, or all of them together. */
export interface SortState {
  scope: 'each' | 'all';
  column: string;
  direction: 'ascending' | 'descending';
}

export interface GuideState {
  /** By the name of the filter. */
  ranges: Readonly<Record<string, FilterRange>>;
  sets: Partial<Record<SetName, readonly string[]>>;
  /** `2026-10-06` */
  since?: string;
  hasHeld?: boolean;
  /** Own prices by panel, base currency. */
  own: ReadonlyMap<string, number>;
  /** Tax and shipping on top of every other price, %. */
  extra?: number;
  /** What can be spent, base currency. */
  spend?: number;
  /** Left out where it is sorted as it came: by the price of a watt within each size class. */
  sort?: SortState;
}

/** Names that panels and makers had before, each with that of today. */
export interface FormerNames {
  panels: Readonly<Record<string, string>>;
  makers: Readonly<Record<string, string>>;
}

/** What an address may name. */
export interface Known {
  /** Filters that take numbers, in their order. */
  ranges: readonly string[];
  sets: Readonly<Record<SetName, readonly string[]>>;
  panels: readonly string[];
  /** Names of before, each with that of today. */
  formerly?: FormerNames;
  /** Ids of the ranking's bodies: addresses used to name one, and are understood as within each size class. */
  tables: readonly string[];
  columns: readonly string[];
}

/** Longer addresses are left aside as a whole. */
const LONGEST = 8000;
/** Names of what is left aside that are shown. */
const MOST_NAMED = 3;
const LONGEST_NAME = 30;
const MOST_NUMBER = 1e9;
const OWN = 'own.';

export const EMPTY_STATE: GuideState = { ranges: {}, sets: {}, own: new Map() };

/** A state has other prices than the guide's. */
export const hasOwnPrices = ({ own, extra }: GuideState) => own.size > 0 || (extra ?? 0) > 0;

/** A number from an address or a field; undefined where it is none from 0 to a thousand million. */
export function plainNumber(text: string): number | undefined {
  const trimmed = text.trim();
  if (!/^\d{1,10}(\.\d{1,6})?$/.test(trimmed)) return undefined;
  const value = Number(trimmed);
  return value <= MOST_NUMBER ? value : undefined;
}

const isDay = (text: string) => /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text));

/** Reads an address. `ignored` is a sentence about what was left aside, empty where nothing was. */
export function readAddress(search: string, known: Known): { state: GuideState; ignored: string } {
  if (search.length > LONGEST) {
    return {
      state: EMPTY_STATE,
      ignored: 'The address is too long to be one of this guide’s; all of it was left aside.',
    };
  }
  const ranges: Record<string, FilterRange> = {};
  const sets: Partial<Record<SetName, string[]>> = {};
  const own = new Map<string, number>();
  const single: { -readonly [Key in 'since' | 'hasHeld' | 'extra' | 'spend' | 'sort']?: GuideState[Key] } = {};
  const odd: string[] = [];

  const readers: Record<string, (value: string) => boolean> = {
    since: (value) => {
      if (!isDay(value)) return false;
      single.since = value;
      return true;
    },
    claims: (value) => {
      single.hasHeld ||= value === 'held';
      return value === 'held';
    },
    extra: (value) =>
      setNumber(value, (it) => {
        single.extra = it;
      }),
    spend: (value) =>
      setNumber(value, (it) => {
        single.spend = it;
      }),
    sort: (value) => {
      const sort = readSort(value, known);
      if (sort) single.sort = sort;
      return sort !== undefined;
    },
  };
  for (const name of known.ranges) {
    for (const end of ['from', 'to'] as const) {
      readers[`${name}-${end}`] = (value) =>
        setNumber(value, (it) => {
          ranges[name] = { ...ranges[name], [end]: it };
        });
    }
  }
  for (const name of SETS) {
    readers[name] = (written) => {
      const value = name === 'maker' ? today(written, known.formerly?.makers) : written;
      if (!known.sets[name].includes(value)) return false;
      sets[name] = [...new Set([...(sets[name] ?? []), value])];
      return true;
    };
  }

  for (const [name, value] of new URLSearchParams(search)) {
    // A form sends its empty fields too.
    if (value === '') continue;
    const slug = name.startsWith(OWN) ? today(name.slice(OWN.length), known.formerly?.panels) : undefined;
    const isRead =
      slug === undefined
        ? Object.hasOwn(readers, name) && readers[name]?.(value)
        : known.panels.includes(slug) && setNumber(value, (it) => own.set(slug, it));
    if (!isRead) odd.push(`${name}=${value}`);
  }
  const { hasHeld, ...rest } = single;
  return {
    state: { ranges, sets, own, ...rest, ...(hasHeld && { hasHeld }) },
    ignored: ignoredWords(odd),
  };
}

/** The name of today for one that an address holds. */
function today(name: string, formerly: Readonly<Record<string, string>> = {}): string {
  return Object.hasOwn(formerly, name) ? (formerly[name] ?? name) : name;
}

/** Columns of old addresses that are the price of a watt by another name, as the rank is. */
const BY_THE_WATT = ['rank', 'price-per-watt', 'price-per-emitted-watt'];

/** `all.efficiency.descending`; of old addresses, with a table's name in the first place, too. */
function readSort(value: string, { tables, columns }: Known): SortState | undefined {
  const [scope = '', named = '', direction, ...more] = value.split('.');
  const watt = columns.find((it) => BY_THE_WATT.includes(it));
  const column = BY_THE_WATT.includes(named) ? watt : columns.find((it) => it === named);
  if (more.length > 0 || !column || (direction !== 'ascending' && direction !== 'descending')) return undefined;
  if (scope === 'all') return { scope, column, direction };
  return scope === 'each' || tables.includes(scope) ? { scope: 'each', column, direction } : undefined;
}

function setNumber(text: string, set: (value: number) => void): boolean {
  const value = plainNumber(text);
  if (value === undefined) return false;
  set(value);
  return true;
}

function ignoredWords(odd: readonly string[]): string {
  if (odd.length === 0) return '';
  const named = odd
    .slice(0, MOST_NAMED)
    .map((it) => `“${it.length > LONGEST_NAME ? `${it.slice(0, LONGEST_NAME)}…` : it}”`)
    .join(', ');
  const more = odd.length > MOST_NAMED ? ` and ${odd.length - MOST_NAMED} more` : '';
  return `Left aside from the address, since the guide does not know it: ${named}${more}.`;
}

/** Writes an address; empty where nothing is set. The same state gives the same address. */
export function writeAddress(state: GuideState, { ranges }: Pick<Known, 'ranges'>): string {
  const params = new URLSearchParams();
  for (const name of SETS) for (const value of state.sets[name] ?? []) params.append(name, value);
  for (const name of ranges) {
    const { from, to } = state.ranges[name] ?? {};
    if (from !== undefined) params.append(`${name}-from`, String(from));
    if (to !== undefined) params.append(`${name}-to`, String(to));
  }
  if (state.since) params.append('since', state.since);
  if (state.hasHeld) params.append('claims', 'held');
  if (state.spend !== undefined) params.append('spend', String(state.spend));
  if (state.extra !== undefined) params.append('extra', String(state.extra));
  for (const [slug, price] of state.own) params.append(`${OWN}${slug}`, String(price));
  if (state.sort) params.append('sort', `${state.sort.scope}.${state.sort.column}.${state.sort.direction}`);
  const text = params.toString();
  return text === '' ? '' : `?${text}`;
}
