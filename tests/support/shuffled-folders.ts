/**
 * Loaded before a program (`node --import`), has every folder read in another order than the disk's: by a generator that
 * begins alike each time. What a program makes should not hang on the order of files.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

const random = xoroshiro128plus(20261126);

/** In another order, wherever there are two. */
function shuffled<T>(list: T): T {
  if (!Array.isArray(list)) return list;
  for (let i = list.length - 1; i > 0; i--) {
    const j = (random.next() >>> 0) % (i + 1);
    [list[i], list[j]] = [list[j], list[i]];
  }
  return list;
}

const { readdirSync, readdir } = fs;
const { readdir: promised } = fs.promises;
// biome-ignore lint/suspicious/noExplicitAny: each has a dozen forms, and all of them end in a list
type Any = any;
fs.readdirSync = ((...line: Any[]) => shuffled((readdirSync as Any)(...line))) as Any;
fs.promises.readdir = (async (...line: Any[]) => shuffled(await (promised as Any)(...line))) as Any;
fs.readdir = ((...line: Any[]) => {
  const done = line.pop();
  (readdir as Any)(...line, (error: Any, list: Any) => done(error, shuffled(list)));
}) as Any;
syncBuiltinESMExports();
