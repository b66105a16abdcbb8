import type { z } from 'zod';
import { isBlock, valueAt } from '../schema/block.ts';
import { isGap } from '../schema/gap.ts';
import { keysAt } from '../schema/inspect.ts';

type Path = readonly PropertyKey[];

/** Data without what is still to be filled in, and where that stood. */
export interface WithoutGaps {
  data: unknown;
  /** The same with all else left in place: what is wrong in it, and not around a gap, is wrong. */
  kept: unknown;
  /** Paths of the gaps in the file as it is written. */
  gaps: readonly Path[];
  /** The path in the file of something in the data: entries of lists may have gone. */
  asWritten(path: Path): PropertyKey[];
}

/**
 * Takes gaps out of a file as if nothing stood there, and with them what says nothing without them: an entry of prices
 * that has no price yet, a grid that lacks a point. Nothing moves into another's place: a list of readings goes as a
 * whole. What is left fits the schema as far as the rest of the file does, unless the file itself needs a gap's field.
 */
export function withoutGaps(written: unknown, schema: z.ZodType): WithoutGaps {
  const gaps: Path[] = [];
  const places = new WeakMap<object, readonly number[]>();
  // Nearly every file; what follows takes a copy of all of it.
  if (!holdsGap(written)) return { data: written, kept: written, gaps, asWritten: (path) => [...path] };
  let data = emptied(written, { path: [], gaps, places, schema, keep: false });
  if (gaps.length === 0) return { data: written, kept: written, gaps, asWritten: (path) => [...path] };
  if (data === CUT) data = {};
  const kept = emptied(written, { path: [], gaps: [], places: new WeakMap(), schema, keep: true });
  const asWritten = (path: Path) => placeInFile(data, path, places);

  for (;;) {
    const parsed = schema.safeParse(data);
    if (parsed.success) break;
    const cut = parsed.error.issues
      .filter((it) => it.code !== 'unrecognized_keys' && isAround(asWritten(it.path), gaps))
      // A field that is missing says nothing of itself: its block does.
      .map((it) => (valueAt(data, it.path) === undefined ? it.path.slice(0, -1) : it.path))
      .filter((it) => it.length > 0)
      .toSorted((a, b) => b.length - a.length)[0];
    if (!cut) break;
    remove(data, cut, places);
  }
  return { data, kept, gaps, asWritten };
}

/** True where the mark of a gap stands anywhere, be it in a field that there is not. */
function holdsGap(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return isGap(value);
  for (const it of Array.isArray(value) ? value : Object.values(value)) if (holdsGap(it)) return true;
  return false;
}

/** True where a gap stands at a path or below it; what is wrong there is that it is not filled in yet. */
export function isAround(path: Path, gaps: readonly Path[]): boolean {
  return gaps.some((gap) => path.every((part, i) => gap[i] === part));
}

const CUT = Symbol('cut');

interface Emptying {
  path: Path;
  gaps: Path[];
  /** Which entries of the written list those of a list are. */
  places: WeakMap<object, readonly number[]>;
  schema: z.ZodType;
  /** Leaves blocks of which nothing is left. */
  keep: boolean;
}

/** A copy without gaps; CUT where nothing is left of it. */
function emptied(value: unknown, { path, gaps, places, schema, keep }: Emptying): unknown {
  const inner = (it: unknown, key: PropertyKey) => emptied(it, { path: [...path, key], gaps, places, schema, keep });
  if (isGap(value) && isKnown(schema, path)) {
    gaps.push(path);
    return CUT;
  }
  if (Array.isArray(value)) {
    const items = value.map(inner);
    // Readings are told apart by their places.
    if (items.some((it, i) => it === CUT && !isBlock(value[i]))) return CUT;
    const kept = items.flatMap((it, i) => (it === CUT ? [] : [{ it, i }]));
    const list = kept.map(({ it }) => it);
    places.set(
      list,
      kept.map(({ i }) => i),
    );
    return list.length === 0 && value.length > 0 ? CUT : list;
  }
  if (!isBlock(value)) return value;
  const fields = Object.entries(value).map(([key, it]) => [key, inner(it, key)] as const);
  const left = fields.filter(([, it]) => it !== CUT);
  return left.length === 0 && fields.length > 0 && !keep ? CUT : Object.fromEntries(left);
}

/** A field that there is not has no gap: it is wrong whatever stands in it. */
function isKnown(schema: z.ZodType, path: Path): boolean {
  const [key, keys] = [path.at(-1), keysAt(schema, path.slice(0, -1))];
  return typeof key !== 'string' || keys.length === 0 || keys.includes(key);
}

function placeInFile(data: unknown, path: Path, places: Emptying['places']): PropertyKey[] {
  let here = data;
  return path.map((key) => {
    const place = Array.isArray(here) && typeof key === 'number' ? places.get(here)?.[key] : undefined;
    here = valueAt(here, [key]);
    return place ?? key;
  });
}

/** Takes a field or an entry out, and the block or list around it where nothing is left in that. */
function remove(data: unknown, path: Path, places: Emptying['places']): void {
  const [key, around] = [path.at(-1), path.slice(0, -1)];
  const holder = valueAt(data, around);
  if (Array.isArray(holder) && typeof key === 'number') {
    const kept = places.get(holder)?.filter((_, i) => i !== key);
    holder.splice(key, 1);
    if (kept) places.set(holder, kept);
    if (holder.length === 0 && around.length > 0) remove(data, around, places);
  } else if (isBlock(holder) && key !== undefined) {
    Reflect.deleteProperty(holder, key);
    if (Object.keys(holder).length === 0 && around.length > 0) remove(data, around, places);
  }
}
