import { parse } from 'yaml';
import { UsageError } from '../../content/read/usage-error.ts';
import { isBlock } from '../../content/schema/block.ts';

/** Collects the values of a flag that may stand several times. */
export const several = (value: string, before: readonly string[] = []) => [...before, value];

/** Values by path: `claims.power`, `prices.0.list`. */
export type Settings = Record<string, unknown>;

/**
 * `--set claims.power=110 W` as a path and a value, read as the file would be.
 *
 * @throws UsageError where it is none
 */
export function setting(text: string): [path: string, value: unknown] {
  const [, path, value] = /^([a-zA-Z][\w.]*)=(.*)$/s.exec(text) ?? [];
  if (path === undefined || value === undefined || value.trim() === '') {
    throw new UsageError(`--set "${text}"; wanted a field and its value, such as --set "claims.power=110 W"`);
  }
  return [path, written(value)];
}

/** A value as YAML would read it where it stands alone. */
export function written(text: string): unknown {
  try {
    const value: unknown = parse(text);
    return value === null || value === undefined ? text : value;
  } catch {
    return text;
  }
}

/**
 * Puts values at their places; a number in a path, or a list that is there already, is an entry of a list.
 *
 * @param lists fields that are lists of blocks: `prices.list` means the first of them
 */
export function placed(settings: Settings, lists: readonly string[] = []): Record<string, unknown> {
  const top: Record<string, unknown> = {};
  for (const [path, value] of Object.entries(settings)) {
    if (value === undefined) continue;
    const keys = path.split('.').flatMap((key, i, all) => {
      const isList = lists.includes(
        all
          .slice(0, i + 1)
          .filter((it) => !/^\d+$/.test(it))
          .join('.'),
      );
      return isList && !/^\d+$/.test(key) && i + 1 < all.length && !/^\d+$/.test(all[i + 1] ?? '') ? [key, '0'] : [key];
    });
    place(top, keys, value);
  }
  return top;
}

function place(holder: Record<string, unknown> | unknown[], keys: readonly string[], value: unknown): void {
  const [key = '', ...rest] = keys;
  const at = holder as Record<string, unknown>;
  if (rest.length === 0) {
    at[key] = value;
    return;
  }
  const isList = /^\d+$/.test(rest[0] ?? '');
  const inner = at[key];
  if (!(isList ? Array.isArray(inner) : isBlock(inner))) at[key] = isList ? [] : {};
  place(at[key] as Record<string, unknown>, rest, value);
}
