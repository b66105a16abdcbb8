import { codeHash } from '../../content/read/code-hash.ts';
import { keyOf, resultStore } from '../result-store.ts';
import type { FindIn } from './file-maker.ts';

/** All that reads a file and finds something in it; and the libraries, by their versions. */
const CALCULATION = ['src/content/read', 'src/content/schema', 'src/measure', 'src/ledger/files', 'package.json'];

/** In an object, since what is found may be nothing. */
const store = resultStore<{ found: unknown }>('found-in-files', () => codeHash(CALCULATION));

/**
 * What earlier commands have found in files: a photo of a wall takes a tenth of a second each time, a log nearly half as
 * much, and they stay as they are while prices and notes change.
 */
export const keptFound: FindIn = <T>(files: Parameters<FindIn>[0], what: Parameters<FindIn>[1], find: () => T): T => {
  const key = keyOf([what, files.map(({ sha256, kind, entry, field }) => ({ sha256, kind, entry, field }))]);
  const known = store.get(key);
  if (known) return known.found as T;
  const found = find();
  store.set(key, { found });
  return found;
};
