import { basename, dirname, join, resolve } from 'node:path';
import { parse } from 'yaml';
import { openContent } from '../../content/edit/content-text.ts';
import { fields } from '../../content/read/fields.ts';
import type { FilePlace } from '../../content/read/files/file-kind.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { isBlock } from '../../content/schema/block.ts';
import { nearest } from '../../content/schema/suggest.ts';
import type { Terminal } from '../ask/terminal.ts';
import type { PanelFile } from '../files/panel-files.ts';
import type { Understood } from './understood.ts';

/** Where a file is said to go, as far as the tester says it. */
export interface Said {
  panel?: string;
  session?: string;
  as?: string;
}

/** A session of a panel's file. */
export interface SessionAt {
  /** Its place in the file's list. */
  index: number;
  date: string;
  data: Readonly<Record<string, unknown>>;
}

/**
 * The panel that a file is of: as said, or beside whose index it lies, or whose name the file's name holds; else asked.
 *
 * @throws UsageError where it can't be told
 */
export async function panelFor(
  { path, name }: Understood,
  { panel: said }: Said,
  panels: readonly PanelFile[],
  folder: string,
  { ask, say }: Terminal,
): Promise<PanelFile> {
  const names = panels.map((it) => it.slug);
  if (said !== undefined) return panelCalled(said, panels);
  const beside = panels.find((it) => resolve(dirname(join(folder, it.path))) === resolve(dirname(path)));
  if (beside) return beside;
  const inName = panels.filter((it) => holdsName(name, it.slug));
  if (inName.length === 1 && inName[0]) return inName[0];
  if (!ask) throw new UsageError(`Of which panel is ${name}? Add --panel with one of: ${names.join(', ')}. ${NOTHING}`);
  say(`\nPanels: ${names.join(', ')}`);
  return panelCalled(await ask(`Of which panel is ${name}? `), panels);
}

function panelCalled(said: string, panels: readonly PanelFile[]): PanelFile {
  const found = panels.find((it) => it.slug === said);
  if (found) return found;
  const near = nearest(
    said,
    panels.map((it) => it.slug),
  );
  throw new UsageError(`There is no panel "${said}"${near ? `; did you mean ${near}?` : '.'} ${NOTHING}`);
}

/** A panel's name, or its model alone, as a word of a file's name. */
function holdsName(name: string, slug: string): boolean {
  const words = basename(name).toLowerCase();
  const model = slug.split('-').slice(1).join('-');
  return [slug, model].some((it) => it !== '' && new RegExp(`(?:^|[^a-z0-9])${it}(?:[^a-z0-9]|$)`).test(words));
}

/** Sessions of a panel's file, as they stand in it. */
export function sessionsOf({ text, path }: Pick<PanelFile, 'text' | 'path'>): SessionAt[] {
  const data: unknown = parse(openContent(text, path).yaml, { logLevel: 'silent', schema: 'failsafe' });
  return fields(data, ['sessions', '*']).flatMap(({ value, path: at }) =>
    isBlock(value) ? [{ index: Number(at.at(-1)), date: String(value.date), data: value }] : [],
  );
}

/**
 * The session that a file is of: as said, or the only one; else asked, the newest one offered.
 *
 * @throws UsageError where there is none, or it can't be told
 */
export async function sessionFor(
  { name }: Understood,
  { session: said }: Said,
  panel: PanelFile,
  { ask }: Terminal,
): Promise<SessionAt> {
  const sessions = sessionsOf(panel).toSorted((a, b) => b.date.localeCompare(a.date));
  const [newest] = sessions;
  if (!newest) {
    throw new UsageError(
      `${panel.path} has no session yet: begin one with \`npm run ledger -- retest ${panel.slug}\`, or by hand. ${NOTHING}`,
    );
  }
  const days = sessions.map((it) => it.date);
  if (said === undefined && sessions.length === 1) return newest;
  if (said === undefined && !ask) {
    throw new UsageError(`Of which session is ${name}? Add --session with one of: ${days.join(', ')}. ${NOTHING}`);
  }
  const day =
    said ?? ((await ask?.(`Of which session of ${panel.name} (${days.join(', ')}) [${newest.date}]? `)) || newest.date);
  const found = sessions.find((it) => it.date === day);
  if (found) return found;
  throw new UsageError(`${panel.path} has no session of ${day}; there are: ${days.join(', ')}. ${NOTHING}`);
}

/** Words of files' names by which their place is told. */
const HINTS: ReadonlyArray<readonly [key: string, words: RegExp]> = [
  ['nearInfrared', /nir|near|infra|\bir\b|8[1-5]0|nearinfrared/],
  ['combined', /both|comb|all/],
  ['calibration', /cal|tone|94/],
  ['off', /off|room|back|dark/],
  ['red', /red|6[3-7]0/],
  ['on', /\bon\b|run/],
];

/**
 * Where in a session a file stands: as said, the only place of its kind, or that which its content or its name tells;
 * else asked.
 *
 * @throws UsageError where it can't be told, or another file stands there
 */
export async function placeFor(
  { reader, name, recognised }: Understood,
  { as: said }: Said,
  session: SessionAt,
  { ask, say }: Terminal,
): Promise<FilePlace> {
  const places = reader.places;
  const keyed = (key: unknown) => places.find((it) => keyOf(it) === key || it.path.at(-1) === key);
  const choose = (key: string): FilePlace => {
    const place = keyed(key.replace(/\[\]$/, ''));
    if (place) return place;
    throw new UsageError(
      `${reader.called} can’t stand under "${key}"; it can under: ${places.map(keyOf).join(', ')}. ${NOTHING}`,
    );
  };
  const free = (place: FilePlace): FilePlace => {
    const [taken] = place.path.includes('*') ? [] : fields(session.data, place.path);
    if (!taken) return place;
    const other = isBlock(taken.value) ? taken.value.file : taken.value;
    throw new UsageError(
      `${keyOf(place)} of ${session.date} names ${String(other)} already; take that out first, or say another place with --as. ${NOTHING}`,
    );
  };
  if (said !== undefined) return free(choose(said));
  const [only, ...others] = places;
  if (only && others.length === 0) return free(only);
  const told = keyed(recognised.entry?.mode) ?? hinted(name, places);
  if (!ask) {
    if (told) return free(told);
    throw new UsageError(
      `Where does ${name} belong? Add --as with one of: ${places.map(keyOf).join(', ')}. ${NOTHING}`,
    );
  }
  say(`\nPlaces for ${reader.called}:\n${places.map((it) => `  ${keyOf(it)}: ${it.words}`).join('\n')}`);
  const answer = await ask(`Where does ${name} belong${told ? ` [${keyOf(told)}]` : ''}? `);
  return free(answer === '' && told ? told : choose(answer));
}

/** As a tester writes it: `spectra.red`, `sweeps`. */
export function keyOf({ path }: FilePlace): string {
  return path.filter((it) => it !== '*').join('.');
}

function hinted(name: string, places: readonly FilePlace[]): FilePlace | undefined {
  const words = name.toLowerCase().replace(/[_.-]+/g, ' ');
  const found = HINTS.flatMap(([key, pattern]) => {
    const place = places.find((it) => it.path.at(-1) === key);
    return place && pattern.test(words) ? [place] : [];
  });
  return found.length === 1 ? found[0] : undefined;
}

const NOTHING = 'Nothing was written.';
