import { isBlock } from '../schema/block.ts';
import { fieldPath, type Problem, shown } from '../schema/problem.ts';
import type { Source } from './source.ts';

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
  return isBlock(data) && Object.hasOwn(data, key) ? fields(data[key], rest, [...path, key]) : [];
}

/** Those of them that hold a text. */
export function texts(source: Source, ...keys: string[]): Array<{ path: PropertyKey[]; value: string }> {
  return fields(source.data, keys).flatMap(({ path, value }) => (typeof value === 'string' ? [{ path, value }] : []));
}

/** The problem of a field, at its place. */
export function problemAt(source: Source, { path, value }: Field, wanted: string, hint?: string): Problem {
  return {
    file: source.file,
    line: source.lineOf(path),
    field: fieldPath(source.unfinished?.asWritten(path) ?? path),
    found: shown(value),
    wanted,
    ...(hint && { hint }),
  };
}

/** The hint for a name that is near another. */
export const meant = (near: string | undefined) => near && `did you mean "${near}"?`;
