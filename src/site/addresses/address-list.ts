import type { Problem } from '../../content/schema/problem.ts';

/** What is kept of one address. */
export interface KeptAddress {
  /** Parts of its page that links may name, without the sign before them. */
  parts: Set<string>;
  /** On a calculation page and on that of files: by the day of a session the metrics whose parts, `#<metric>-<day>`, are there. */
  sessions: Map<string, Set<string>>;
  /** Where it stands first in the file, from 1; 0 where it has not been read from one. */
  line: number;
}

/** Addresses by their path, `/panels/kelpwright-gannet/`. */
export type AddressList = Map<string, KeptAddress>;

const HEAD = `# Addresses that this guide has published. They stay: a build that would drop one stops and says what to do.
# Written by "build --record"; keep this file with the content. A line is an address and the parts of its page. A day is
# that of a session, with the part #<metric>-<day> for every metric below but those named after "but"; on pages of files
# for every file-metric.
`;

/** The entry of an address; begun where there is none. */
export function entryOf(list: AddressList, address: string, line = 0): KeptAddress {
  const entry = list.get(address) ?? { parts: new Set<string>(), sessions: new Map(), line };
  list.set(address, entry);
  return entry;
}

/** Both lists in one. */
export function united(one: AddressList, other: AddressList): AddressList {
  const all: AddressList = new Map();
  for (const [address, { parts, sessions, line }] of [...one, ...other]) {
    const entry = entryOf(all, address, line);
    for (const part of parts) entry.parts.add(part);
    for (const [day, metrics] of sessions)
      entry.sessions.set(day, new Set([...(entry.sessions.get(day) ?? []), ...metrics]));
  }
  return all;
}

/** True where the first list has everything that the second has. */
export function hasAll(list: AddressList, wanted: AddressList): boolean {
  return [...wanted].every(([address, { parts, sessions }]) => {
    const entry = list.get(address);
    return (
      entry !== undefined &&
      [...parts].every((it) => entry.parts.has(it)) &&
      [...sessions].every(([day, metrics]) => [...metrics].every((it) => entry.sessions.get(day)?.has(it)))
    );
  });
}

/** The file: sorted, a line an address or session, so that a new one is one line more in a comparison of versions. */
export function addressListText(list: AddressList): string {
  const told = [...list].map(([page, { sessions }]) => [kindOf(page), [...sessions.values()]] as const);
  const [metrics, fileMetrics] = KINDS.map((kind) => {
    const all = told.flatMap(([own, sessions]) => (own === kind ? sessions.flatMap((it) => [...it]) : []));
    return [...new Set(all)].toSorted();
  }) as [string[], string[]];
  const lines = [...list].toSorted(byText).flatMap(([address, { parts, sessions }]) => [
    [address, ...[...parts].toSorted(byNumber).map((it) => `#${it}`)].join(' '),
    ...[...sessions].toSorted(byText).map(([day, of]) => {
      const but = (kindOf(address) === 'metric' ? metrics : fileMetrics).filter((it) => !of.has(it));
      return [address, day, ...(but.length > 0 ? ['but', ...but] : [])].join(' ');
    }),
  ]);
  const heads = [...metrics.map((it) => `metric ${it}`), ...fileMetrics.map((it) => `file-metric ${it}`)];
  return `${HEAD}${[...heads, ...lines].join('\n')}\n`;
}

// By the signs' numbers and not by a language, so that every machine writes the same file.
const byText = ([a]: readonly [string, unknown], [b]: readonly [string, unknown]) => (a < b ? -1 : a > b ? 1 : 0);
const byNumber = (a: string, b: string) => a.localeCompare(b, 'en', { numeric: true });

/** What the figures of a page are called: those that files alone give have their parts on pages of their own. */
const KINDS = ['metric', 'file-metric'] as const;
const kindOf = (page: string): (typeof KINDS)[number] => (page.endsWith('/files/') ? 'file-metric' : 'metric');

const METRIC = /^(metric|file-metric) ([a-z0-9-]+)$/;
const SESSION = /^(\/\S*) (\d{4}-\d{2}-\d{2})(?: but((?: [a-z0-9-]+)+))?$/;
const PAGE = /^(\/[^\s#]*)((?: #\S+)*)$/;

/**
 * Reads the file.
 *
 * @param file what problems call it
 */
export function readAddressList(text: string, file: string): { list: AddressList; problems: Problem[] } {
  const list: AddressList = new Map();
  const problems: Problem[] = [];
  const lines = text.split(/\r?\n/);
  const metrics = lines.flatMap((it) => {
    const [, kind, id] = METRIC.exec(it) ?? [];
    return kind !== undefined && id !== undefined ? [{ kind, id }] : [];
  });
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '' || line.startsWith('#') || METRIC.test(line)) continue;
    const [, page, day, but = ''] = SESSION.exec(line) ?? [];
    const [, address, parts = ''] = PAGE.exec(line) ?? [];
    if (page !== undefined && day !== undefined) {
      const missing = new Set(but.trim().split(' '));
      const own = metrics.flatMap(({ kind, id }) => (kind === kindOf(page) && !missing.has(id) ? [id] : []));
      entryOf(list, page, i + 1).sessions.set(day, new Set(own));
    } else if (address !== undefined) {
      const entry = entryOf(list, address, i + 1);
      for (const part of parts.split(' #').slice(1)) entry.parts.add(part);
    } else problems.push(unreadable(file, i + 1, line));
  }
  return { list, problems };
}

const unreadable = (file: string, line: number, text: string): Problem => ({
  ...{ file, line, field: '', found: /^[<=>]{7}/.test(text) ? 'a mark of a merge' : `"${text.slice(0, 60)}"` },
  wanted: 'an address with parts (#…) or a day behind it, or "metric" or "file-metric" and its id',
  hint: 'the file is written by `build --record`; after a merge keep the lines of both sides',
});
