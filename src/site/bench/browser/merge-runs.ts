/** Two testers' runs of one session put together, and where they say different things. */
import { entryValue, lengthOf } from './entry-values.ts';
import { keysOf } from './places.ts';
import type { Entry, Run } from './run.ts';

export type Side = 'mine' | 'theirs';

/** One place of which the two say different things. */
export interface Conflict {
  /** Of the entries, or `date`, `instruments.mains`, `distance`, `notes`, … */
  path: string;
  /** In the words of each: readings divided by commas, struck ones with their reason. */
  mine: string;
  theirs: string;
  /** Which side went into the merged run. */
  taken: Side;
  /** The tester has said so; else it is mine until somebody does. */
  isDecided: boolean;
}

/** Which side to take where they differ: place by place, or else everywhere. */
export interface Take {
  readonly all?: Side | undefined;
  readonly places?: Readonly<Record<string, Side>>;
}

export interface MergedRuns {
  run: Run;
  conflicts: readonly Conflict[];
}

const KEYED = ['instruments', 'settings', 'carried', 'texts'] as const;

/**
 * Puts two runs together: what only one of them has is taken, and so is the longer list where one has all readings of the
 * other and more. Any other difference is a conflict. The name and panel are mine.
 */
export function mergeRuns(mine: Run, other: Run, take: Take = {}): MergedRuns {
  const theirs = aligned(other, mine);
  const conflicts: Conflict[] = [];
  const choose = <T>(path: string, own: T, other: T, words: (it: T) => string): T => {
    if (words(own) === words(other)) return own;
    const said = take.places?.[path] ?? take.all;
    const taken = said ?? 'mine';
    conflicts.push({ path, mine: words(own), theirs: words(other), taken, isDecided: said !== undefined });
    return taken === 'mine' ? own : other;
  };
  const run: Run = {
    ...mine,
    date: choose('date', mine.date, theirs.date, String),
    methodVersion: choose('methodVersion', mine.methodVersion, theirs.methodVersion, String),
    grid:
      hasGrid(mine) && hasGrid(theirs)
        ? choose('grid', mine.grid, theirs.grid, gridWords)
        : (hasGrid(theirs) ? theirs : mine).grid,
    ...Object.fromEntries(
      KEYED.map((field) => [
        field,
        merged(mine[field], theirs[field], (key, own, other) =>
          choose(
            field === 'instruments' || field === 'carried' ? `${field}.${key}` : key,
            own,
            other,
            field === 'settings' ? settingWords : (it) => it.trim(),
          ),
        ),
      ]),
    ),
    entries: numbered(mergedEntries(mine.entries, theirs.entries, choose)),
    photos: [...mergedPhotos(mine, theirs, choose)],
    // Whoever is not done yet has something left to read.
    isFinished: mine.isFinished && theirs.isFinished,
  };
  return { run, conflicts };
}

const LISTS = ['beyond', 'distances'] as const;
type List = (typeof LISTS)[number];

/** A run whose places past the edges and along the axis have the numbers that another one gives them. */
function aligned(run: Run, to: Run): Run {
  const places = new Map<string, string>();
  for (const list of LISTS) {
    const own = placesOf(to, list);
    let next = 1 + Math.max(-1, ...own.values());
    for (const [key, index] of placesOf(run, list)) {
      places.set(`${list}[${index}]`, `${list}[${own.get(key) ?? next++}]`);
    }
  }
  const moved = (path: string) => path.replace(/^\w+\[\d+\]/, (it) => places.get(it) ?? it);
  return {
    ...run,
    settings: Object.fromEntries(Object.entries(run.settings).map(([path, it]) => [moved(path), it])),
    entries: run.entries.map((it) => ({ ...it, path: moved(it.path) })),
  };
}

/** Places of a list by where they lie, whatever their units: `right 8`, `30`. */
function placesOf({ settings, entries }: Run, list: List): Map<string, number> {
  const indexes = [...Object.keys(settings), ...entries.map((it) => it.path)]
    .map(keysOf)
    .flatMap(([name, index]) => (name === list && typeof index === 'number' ? [index] : []));
  const keyOf = (index: number) => {
    const at = (field: string) => settings[`${list}[${index}].${field}`];
    const length = at(list === 'beyond' ? 'past' : 'distance');
    const cm = length === undefined ? undefined : lengthOf(length);
    return cm === undefined ? `no place ${index}` : `${list === 'beyond' ? `${at('edge')} ` : ''}${cm.toFixed(3)}`;
  };
  return new Map([...new Set(indexes)].toSorted((a, b) => a - b).map((it) => [keyOf(it), it]));
}

type Choose = <T>(path: string, own: T, other: T, words: (it: T) => string) => T;

const hasGrid = ({ entries }: Run) => entries.some((it) => it.path.startsWith('grid.'));
/** The same in other words: `8 cm` and `3.1496 in` are one place. */
const settingWords = (it: string) => {
  const cm = lengthOf(it);
  return cm === undefined ? it.trim() : `${Number(cm.toFixed(3))} cm`;
};
const gridWords = ({ rows, columns, inset }: Run['grid']) => `${columns} × ${rows} points, ${inset} inside the edges`;

function merged(
  mine: Readonly<Record<string, string>>,
  theirs: Readonly<Record<string, string>>,
  choose: (key: string, own: string, other: string) => string,
): Record<string, string> {
  const both = Object.entries(mine).map(([key, own]) => [
    key,
    key in theirs ? choose(key, own, theirs[key] ?? own) : own,
  ]);
  return { ...theirs, ...Object.fromEntries(both) };
}

function mergedEntries(mine: readonly Entry[], theirs: readonly Entry[], choose: Choose): Entry[] {
  const [own, other] = [mine, theirs].map((it) => Map.groupBy(it, ({ path }) => path)) as [
    Map<string, Entry[]>,
    Map<string, Entry[]>,
  ];
  return [...new Set([...own.keys(), ...other.keys()])].flatMap((path) => {
    const [a, b] = [own.get(path) ?? [], other.get(path) ?? []];
    if (holds(a, b)) return a;
    return holds(b, a) ? b : choose(path, a, b, entriesWords);
  });
}

/** True where a list has every entry of another, in its order, as they are there. */
function holds(longer: readonly Entry[], shorter: readonly Entry[]): boolean {
  let at = 0;
  for (const it of longer) if (shorter[at] && keyOf(it) === keyOf(shorter[at] as Entry)) at++;
  return at === shorter.length;
}

/** The same for readings that are one value, in whatever unit or with whatever decimal sign. */
function keyOf(entry: Entry): string {
  const value = entryValue(entry);
  const bound = /^\s*[<>]/.exec(entry.written)?.[0].trim() ?? '';
  return JSON.stringify([value ? `${bound}${value.value}` : entry.written.trim(), entry.struck]);
}

const wordsOf = ({ written, struck }: Entry) =>
  struck === undefined ? written.trim() : `${written.trim()} (struck: ${struck})`;
const entriesWords = (entries: readonly Entry[]) => entries.map(wordsOf).join(', ');

/** In the order in which they were entered, where that is known; numbered anew. */
function numbered(entries: readonly Entry[]): Entry[] {
  return entries
    .toSorted((a, b) => (a.at && b.at ? a.at.localeCompare(b.at) : 0))
    .map((it, i) => ({ ...it, id: i + 1 }));
}

function* mergedPhotos(mine: Run, theirs: Run, choose: Choose) {
  const other = new Map(theirs.photos.map((it) => [it.file, it]));
  for (const own of mine.photos) {
    yield choose(`photos.${own.file}`, own, other.get(own.file) ?? own, (it) => it.shows.trim());
    other.delete(own.file);
  }
  yield* other.values();
}
