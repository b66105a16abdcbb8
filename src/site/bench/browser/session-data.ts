/** A run as the fields of a session in the shape of the content file. */
import { GAP, isGap } from '../../../content/schema/gap.ts';
import { fieldPath } from '../../../content/schema/problem.ts';
import { asTyped } from '../../../content/templates/yaml-text.ts';
import { type KeptReading, notesWith } from './kept-notes.ts';
import { fieldOrder, isOfPanel, isPlace, isSetting, keysOf, takesRepeats } from './places.ts';
import type { Entry, Run } from './run.ts';

type Block = Record<string, unknown>;

export interface SessionData {
  /** Without date, version and instruments. */
  fields: Block;
  /** Measures of the panel itself: `field`, `housing`, `weight`. */
  panel: Block;
  /** For each entry of a list in the file, its place in the run: of `beyond` and `distances` only what was read stands there once a run is finished. */
  places: Readonly<Record<'beyond' | 'distances', readonly number[]>>;
}

/** Fields without which a block says nothing, as far as they are read. */
const NEEDED: ReadonlyArray<readonly [block: RegExp, key: string]> = [
  [/^wavelengths\.\w+$/, 'peak'],
  [/^flicker\.\w+$/, 'percent'],
  [/^(field|housing)$/, 'width'],
  [/^(field|housing)$/, 'height'],
  [/^beyond\[\d+\]$/, 'edge'],
  [/^beyond\[\d+\]$/, 'past'],
  [/^beyond\[\d+\]$/, 'on'],
  [/^distances\[\d+\]$/, 'distance'],
];

/** How decimals are typed where a comma divides them; three digits after it may be thousands, and stay as they are. */
const COMMA = /^([<>]?\s*[+-]?\d+),(\d{1,2}|\d{4,})(?=\s|[^\d.,]|$)/;

/** What was typed, its decimals after a point. */
export const withPoint = (written: string) => written.trim().replace(COMMA, '$1.$2');

/** What was typed, as the file has it. */
export const fileValue = (written: string) => asTyped(withPoint(written));

/**
 * What a run has read, in the shape of a session, fields in the schema's order. What is planned and not read is a gap;
 * of a run that is finished only the grid has some.
 *
 * @param known measures that the panel's file has already, with what it says; they stay as they are
 */
export function sessionData(run: Run, known: Readonly<Record<string, string>> = {}): SessionData {
  const kept: KeptReading[] = [];
  const tree: Block = {};
  const panel: Block = {};
  const places = { beyond: planned(run, 'beyond'), distances: planned(run, 'distances') };
  const keep = (entry: Entry, kind: KeptReading['kind']) => kept.push(keptAs(entry, kind, places));
  for (const [path, written] of Object.entries(run.settings))
    if (hasRoom(run, path, places)) put(tree, path, asTyped(written), places);
  // What the file would take for a gap is no reading.
  const isReading = ({ written }: Entry) => written.trim() !== '' && !isGap(written);
  for (const it of run.entries) if (!isReading(it)) keep(it, it.struck === undefined ? 'no field' : 'struck');
  for (const [path, entries] of Map.groupBy(run.entries.filter(isReading), (it) => it.path)) {
    if (!isPlace(path) || known[path] !== undefined || !isInGrid(run, path)) {
      // What says the same as the file is there already.
      const others = entries.filter(
        (it) => it.struck !== undefined || it.accepted !== undefined || !isSame(it.written, known[path]),
      );
      for (const it of others) keep(it, it.struck === undefined ? 'no field' : 'struck');
    } else if (takesRepeats(path)) {
      put(tree, path, pointValue(entries), places);
      for (const it of entries) if (it.accepted !== undefined) keep(it, 'accepted');
    } else {
      const last = entries.findLast((it) => it.struck === undefined);
      if (last) put(isOfPanel(path) ? panel : tree, path, fileValue(last.written), places);
      for (const it of entries) if (it !== last) keep(it, it.struck === undefined ? 'earlier' : 'struck');
      if (last?.accepted !== undefined) keep(last, 'accepted');
    }
  }
  if (hasLight(run)) tree.grid = gridOf(run, tree.grid);
  if (run.texts.hotSpots) tree.hotSpots = run.texts.hotSpots.trim();
  if (run.photos.length > 0)
    tree.photos = run.photos.map(({ file, shows, by }) => ({ file, shows, ...(by && { by }) }));
  const notes = notesWith(run.texts.notes, kept);
  if (notes !== undefined) tree.notes = notes;
  return { fields: inOrder(withGaps(tree, []), []) as Block, panel: inOrder(withGaps(panel, []), []) as Block, places };
}

/** The same text, or the same number: `7.0 in` and `7 in`. */
const isSame = (written: string, known: string | undefined) =>
  known !== undefined &&
  [written, known]
    .map((it) =>
      withPoint(it)
        .replace(/(\.\d*?)0+(?=\D|$)/, '$1')
        .replace(/\.(?=\D|$)/, ''),
    )
    .every((it, _, [first]) => it === first);

/** Under its path in the file, and as the file has its value, by which it is found again. */
const keptAs = (
  { path, written, struck, accepted }: Entry,
  kind: KeptReading['kind'],
  places: SessionData['places'],
): KeptReading => ({
  path: fieldPath(inFile(keysOf(path), places)),
  written: withPoint(written),
  kind,
  reason: struck ?? accepted ?? '',
});

const hasLight = ({ entries }: Run) => entries.some((it) => it.path.startsWith('grid.'));

/** A point that the grid has; after the grid was made smaller some have gone. */
function isInGrid({ grid }: Run, path: string): boolean {
  const [block, , row, column] = keysOf(path);
  return block !== 'grid' || path === 'grid.inset' || (Number(row) < grid.rows && Number(column) < grid.columns);
}

/** Places of a list that go into the file: all that are planned, and of a finished run those that were read. */
function planned(run: Run, list: 'beyond' | 'distances'): number[] {
  const read = run.entries.map((it) => it.path).filter((it) => it.startsWith(`${list}[`));
  if (read.length === 0) return [];
  const all = [...read, ...(run.isFinished ? [] : Object.keys(run.settings))].map(keysOf);
  const indexes = all.flatMap(([name, index]) => (name === list && typeof index === 'number' ? [index] : []));
  return [...new Set(indexes)].toSorted((a, b) => a - b);
}

/** Settings stand where something is read with them; that of the bench stands alone. */
function hasRoom(run: Run, path: string, places: SessionData['places']): boolean {
  if (!isSetting(path)) return false;
  const [block, index] = keysOf(path);
  if (block === 'beyond' || block === 'distances') return typeof index === 'number' && places[block].includes(index);
  return path === 'distance' || run.entries.some((it) => it.path.startsWith(`${String(block)}.`));
}

function pointValue(entries: readonly Entry[]): unknown {
  const readings = entries.map(({ written, struck }) =>
    struck === undefined
      ? fileValue(written)
      : { value: fileValue(written), struck: isGap(struck) ? `${struck}.` : struck },
  );
  return readings.length === 1 ? readings[0] : readings;
}

function gridOf({ grid }: Run, read: unknown): Block {
  const rows = (read as { rows?: unknown[][] } | undefined)?.rows ?? [];
  return {
    inset: asTyped(grid.inset),
    rows: Array.from({ length: grid.rows }, (_, r) =>
      Array.from({ length: grid.columns }, (_, c) => rows[r]?.[c] ?? GAP),
    ),
  };
}

/** Keys in the run as they are in the file, which may have fewer places of a list. */
function inFile(keys: ReadonlyArray<string | number>, places: SessionData['places']): Array<string | number> {
  const [list, index, ...rest] = keys;
  if ((list !== 'beyond' && list !== 'distances') || typeof index !== 'number') return [...keys];
  const place = places[list].indexOf(index);
  return [list, place < 0 ? index : place, ...rest];
}

function put(tree: Block, path: string, value: unknown, places: SessionData['places']): void {
  const keys = inFile(keysOf(path), places);
  let here = tree as Record<string | number, unknown>;
  keys.forEach((key, i) => {
    if (i === keys.length - 1) here[key] = value;
    else {
      here[key] ??= typeof keys[i + 1] === 'number' ? [] : {};
      here = here[key] as Record<string | number, unknown>;
    }
  });
}

/** Gaps where a block needs a field that is not read yet. */
function withGaps(value: unknown, path: readonly PropertyKey[]): unknown {
  if (Array.isArray(value)) return Array.from(value, (it, i) => withGaps(it ?? {}, [...path, i]));
  if (!isPlain(value)) return value;
  const name = fieldPath(path);
  const inner = Object.entries(value).map(([key, it]) => [key, withGaps(it, [...path, key])] as const);
  const missing = NEEDED.filter(([block, key]) => block.test(name) && value[key] === undefined);
  const block = Object.fromEntries([...inner, ...missing.map(([, key]) => [key, GAP] as const)]);
  const isSweep = /^distances\[\d+\]$/.test(name) && Object.keys(block).every((it) => it === 'distance');
  return isSweep ? { ...block, centre: GAP } : block;
}

function inOrder(value: unknown, path: readonly PropertyKey[]): unknown {
  if (Array.isArray(value)) return value.map((it, i) => inOrder(it, [...path, i]));
  if (!isPlain(value)) return value;
  const order = fieldOrder(path);
  const rank = (key: string) => (order.includes(key) ? order.indexOf(key) : order.length);
  const entries = Object.entries(value).toSorted(([a], [b]) => rank(a) - rank(b));
  return Object.fromEntries(entries.map(([key, it]) => [key, inOrder(it, [...path, key])]));
}

/** A block of fields; numbers as they were typed are objects of another kind. */
const isPlain = (value: unknown): value is Block =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
