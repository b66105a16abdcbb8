import { isBlock } from '../../content/schema/block.ts';
import { CARRIED_NAMES, type CarriedName, carriedBlock } from '../../content/schema/carried.ts';
import { INSTRUMENT_KINDS } from '../../content/schema/instrument.ts';
import { blanks } from './blanks.ts';

/** A session as it stands in a file. */
export type RawSession = Readonly<Record<PropertyKey, unknown>>;

/** What a new session of a panel is made from. */
export interface SessionStart {
  /** `YYYY-MM-DD` */
  date: string;
  /** Version of the bench procedure that is followed. */
  methodVersion: number;
  /** The panel's sessions before that day, as they stand in the file. */
  earlier: readonly RawSession[];
  /** What is not to be read again, each with the day on which it was read last. */
  carried: ReadonlyMap<CarriedName, string>;
}

/** The session, newest first, that read a block last and is no draft; undefined where none did. */
export function lastRead(sessions: readonly RawSession[], name: CarriedName): RawSession | undefined {
  return sessions
    .filter((it) => it.draft !== true && carriedBlock(name).fields.some((field) => it[field] !== undefined))
    .toSorted((a, b) => String(b.date).localeCompare(String(a.date)))[0];
}

/**
 * A new session as YAML: a draft that carries over what is not read again, with the meters and settings of last time and,
 * as comments, a gap for each reading that is to be taken.
 */
export function newSession({ date, methodVersion, earlier, carried }: SessionStart): string {
  const toRead = CARRIED_NAMES.filter((it) => !carried.has(it));
  const newest = earlier.toSorted((a, b) => String(b.date).localeCompare(String(a.date)));
  const last = (field: string) => newest.find((it) => it[field] !== undefined)?.[field];
  const meters = INSTRUMENT_KINDS.flatMap((kind) => {
    const isCarried = [...carried.keys()].some((it) => carriedBlock(it).instrument === kind);
    const used = newest.map((it) => (isBlock(it.instruments) ? it.instruments[kind] : undefined));
    const id = used.find((it) => typeof it === 'string');
    return isCarried || id === undefined ? [] : [`  ${kind}: ${String(id)}`];
  });
  const isLit = carried.has('light');
  const light = lastRead(earlier, 'light');
  const distance = light?.distance ?? last('distance');
  return [
    `date: ${date}`,
    `methodVersion: ${methodVersion}`,
    ...(meters.length > 0 ? ['instruments:', ...meters] : []),
    ...(carried.size > 0 ? ['carried:', ...[...carried].map(([name, from]) => `  ${name}: ${from}`)] : []),
    'draft: true   # take this line out when all is read; until then only check and dev show the session',
    ...(isLit || distance === undefined ? [] : [`distance: ${String(distance)}`]),
    ...(meters.length === 0 ? metersOf(toRead) : []),
    '# To be read: fill in, and take the # away; take out what you leave unread.',
    '# warmUp: min',
    '# roomTemperature: C',
    ...blanks(toRead, (name) => lastRead(earlier, name)),
  ].join('\n');
}

/** Which meters are to be named, as a comment, where no earlier session tells them. */
function metersOf(toRead: readonly CarriedName[]): string[] {
  const kinds = toRead.flatMap((name) => carriedBlock(name).instrument ?? []);
  return kinds.length === 0
    ? []
    : [
        `# instruments: { ${kinds
          .map((it) => `${it}: `)
          .join(', ')
          .trimEnd()} }`,
      ];
}
