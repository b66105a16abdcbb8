import { isBlock } from '../schema/block.ts';
import { CARRIED_NAMES, type CarriedName, carriedBlock } from '../schema/carried.ts';
import { INSTRUMENT_KINDS } from '../schema/instrument.ts';
import { blanks, readLines } from './blanks.ts';
import { inFlow } from './yaml-text.ts';

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
  /** What has been read already; left out for a session that is only to begin. */
  taken?: TakenReadings;
}

/** Readings that a new session has from the start. */
export interface TakenReadings {
  /** The meter of each kind. */
  instruments: Readonly<Record<string, string>>;
  /** Fields of the session in the shape of the file. */
  fields: RawSession;
  /** Nothing more is to be read: it is no draft, and has no blanks. */
  isFinished: boolean;
}

/** Of fields beside the blocks, what stands before them, and what after. */
const BEFORE = ['warmUp', 'roomTemperature'] as const;
const AFTER = ['photos', 'notes'] as const;

/** The session, newest first, that read a block last and is no draft; undefined where none did. */
export function lastRead(sessions: readonly RawSession[], name: CarriedName): RawSession | undefined {
  return sessions
    .filter((it) => it.draft !== true && carriedBlock(name).fields.some((field) => it[field] !== undefined))
    .toSorted((a, b) => String(b.date).localeCompare(String(a.date)))[0];
}

/**
 * A new session as YAML: a draft that carries over what is not read again, with the meters and settings of last time and,
 * as comments, a gap for each reading that is to be taken. What is read already stands in the place of its gaps.
 */
export function newSession({ date, methodVersion, earlier, carried, taken }: SessionStart): string {
  const fields = taken?.fields ?? {};
  const toRead = taken?.isFinished ? [] : CARRIED_NAMES.filter((it) => !carried.has(it));
  const newest = earlier.toSorted((a, b) => String(b.date).localeCompare(String(a.date)));
  const last = (field: string) => newest.find((it) => it[field] !== undefined)?.[field];
  const meters = taken
    ? INSTRUMENT_KINDS.flatMap((kind) => {
        const id = taken.instruments[kind];
        return id === undefined ? [] : [`  ${kind}: ${inFlow(id)}`];
      })
    : metersOf(newest, carried);
  const light = lastRead(earlier, 'light');
  const usual = carried.has('light') || taken?.isFinished ? undefined : (light?.distance ?? last('distance'));
  const distance = fields.distance === undefined ? usual && String(usual) : inFlow(fields.distance);
  const before = BEFORE.map((key) => (fields[key] === undefined ? [] : readLines(key, fields[key])));
  const blocks = CARRIED_NAMES.flatMap((name) => {
    const keys: readonly string[] = carriedBlock(name).fields;
    const blank = (key: string) =>
      blanks([name], (it) => lastRead(earlier, it), new Set(keys.filter((it) => it !== key)));
    return keys.flatMap((key) => {
      if (fields[key] !== undefined) return readLines(key, fields[key]);
      return toRead.includes(name) ? blank(key) : [];
    });
  });
  const isAllRead = toRead.length === 0 || !blocks.some((it) => it.startsWith('# '));
  return [
    `date: ${date}`,
    `methodVersion: ${methodVersion}`,
    ...(meters.length > 0 ? ['instruments:', ...meters] : []),
    ...(carried.size > 0 ? ['carried:', ...[...carried].map(([name, from]) => `  ${name}: ${from}`)] : []),
    ...(taken?.isFinished ? [] : [DRAFT]),
    ...(distance === undefined ? [] : [`distance: ${distance}`]),
    ...(meters.length === 0 ? unnamedMeters(toRead) : []),
    ...(isAllRead ? [] : ['# To be read: fill in, and take the # away; take out what you leave unread.']),
    ...before.flatMap((lines, i) => (lines.length > 0 || isAllRead ? lines : [BLANK_BEFORE[i] ?? ''])),
    ...blocks,
    ...AFTER.flatMap((key) => (fields[key] === undefined ? [] : readLines(key, fields[key]))),
  ].join('\n');
}

const DRAFT = 'draft: true   # take this line out when all is read; until then only check and dev show the session';
const BLANK_BEFORE = ['# warmUp: min', '# roomTemperature: C'];

/** The meters of last time, for what is to be read. */
function metersOf(newest: readonly RawSession[], carried: SessionStart['carried']): string[] {
  return INSTRUMENT_KINDS.flatMap((kind) => {
    const isCarried = [...carried.keys()].some((it) => carriedBlock(it).instrument === kind);
    const used = newest.map((it) => (isBlock(it.instruments) ? it.instruments[kind] : undefined));
    const id = used.find((it) => typeof it === 'string');
    return isCarried || id === undefined ? [] : [`  ${kind}: ${String(id)}`];
  });
}

/** Which meters are to be named, as a comment, where no earlier session tells them. */
function unnamedMeters(toRead: readonly CarriedName[]): string[] {
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
