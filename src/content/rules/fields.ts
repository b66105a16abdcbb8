import type { Source } from '../read/source.ts';
import type { CollectionName } from '../schema/collections.ts';
import { fieldPath, type Problem, shown } from '../schema/problem.ts';

/**
 * Content as it was read, whether or not it fits its schema: a file with one fault still has its others looked
 * at, so rules read raw fields and pass over what is not of the kind they know. The schemas say that.
 */
export type RawCollections = Readonly<Record<CollectionName, ReadonlyMap<string, Source>>>;

/** What a rule is told besides the content. */
export interface Surroundings {
  today: string;
  shownAs: string;
  /** Files that could not be read at all; a reference to one of them is not a problem more. */
  unread: ReadonlySet<string>;
}

/** One rule: its problems, none where it is kept. */
export type Rule = (content: RawCollections, around: Surroundings) => Problem[];

/** A field of a file as it was read. */
export interface Field {
  path: PropertyKey[];
  value: unknown;
}

/** The fields at a path of keys in which `*` stands for every item of a list; missing ones are passed over. */
export function fields(data: unknown, keys: readonly string[], path: PropertyKey[] = []): Field[] {
  const [key, ...rest] = keys;
  if (key === undefined) return [{ path, value: data }];
  if (key === '*') {
    return Array.isArray(data) ? data.flatMap((item, i) => fields(item, rest, [...path, i])) : [];
  }
  if (typeof data !== 'object' || data === null || !Object.hasOwn(data, key)) return [];
  return fields((data as Record<string, unknown>)[key], rest, [...path, key]);
}

/** Those of them that hold a text. */
export function texts(source: Source, ...keys: string[]): Array<{ path: PropertyKey[]; value: string }> {
  return fields(source.data, keys).filter(
    (it): it is { path: PropertyKey[]; value: string } => typeof it.value === 'string',
  );
}

/** The problem of a field, at its place. */
export function problemAt(source: Source, { path, value }: Field, wanted: string, hint?: string): Problem {
  return {
    file: source.file,
    line: source.lineOf(path),
    field: fieldPath(path),
    found: shown(value),
    wanted,
    ...(hint && { hint }),
  };
}

/** The hint for a name that is near another. */
export const meant = (near: string | undefined) => near && `did you mean "${near}"?`;
