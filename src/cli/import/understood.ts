import { existsSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { MOST_MEGABYTES } from '../../content/read/files/bench-files.ts';
import { fileHash } from '../../content/read/files/file-hash.ts';
import type { AnyFileReader, FileHead, Recognised } from '../../content/read/files/file-kind.ts';
import { FILE_READERS } from '../../content/read/files/readers.ts';
import { headOf } from '../../content/read/files/text-lines.ts';
import { UsageError } from '../../content/read/usage-error.ts';

/** A file that is to be imported, and what it was taken for. */
export interface Understood {
  path: string;
  name: string;
  bytes: number;
  sha256: string;
  reader: AnyFileReader;
  recognised: Recognised;
  /** What else it could be, surest first. */
  others: ReadonlyArray<{ kind: string; recognised: Recognised }>;
}

const MEGA = 1024 * 1024;

/** Two takings that differ by less than this are not told apart. */
const CLOSE = 0.1;

/**
 * Looks at the start of a file, and tells what it is.
 *
 * @param kind what the tester says it is; then nothing else is considered
 * @throws UsageError where it can't be read, is none that is known, or could be several
 */
export function understood(path: string, kind: string | undefined): Understood {
  if (!existsSync(path) || !statSync(path).isFile()) throw new UsageError(`There is no file ${path}.${NOTHING}`);
  const { size } = statSync(path);
  const name = basename(path);
  if (size > MOST_MEGABYTES * MEGA) {
    throw new UsageError(
      `${path} has ${Math.round(size / MEGA)} MB; at most ${MOST_MEGABYTES} MB are read. Cut it to the run itself.${NOTHING}`,
    );
  }
  const head: FileHead = { path, name, bytes: headOf(path), size };
  const found = FILE_READERS.flatMap((reader) => {
    const recognised = reader.recognise(head);
    return recognised ? [{ reader, recognised }] : [];
  }).toSorted((a, b) => b.recognised.confidence - a.recognised.confidence);
  const file = { path, name, bytes: size, sha256: fileHash(path) };
  const others = (but: AnyFileReader) =>
    found
      .filter((it) => it.reader !== but)
      .map((it) => ({ kind: it.reader.kind as string, recognised: it.recognised }));
  if (kind !== undefined) {
    const reader = FILE_READERS.find((it) => it.kind === kind);
    if (!reader) throw new UsageError(`--kind ${kind}: one of ${FILE_READERS.map((it) => it.kind).join(', ')}.`);
    const recognised = found.find((it) => it.reader === reader)?.recognised;
    return { ...file, reader, recognised: recognised ?? { confidence: 0, understood: reader.called }, others: [] };
  }
  const [best, next] = found;
  if (!best) throw new UsageError(`${path} is no file of a meter that is known: ${sizeWords(size)}.${KINDS}${NOTHING}`);
  if (next && best.recognised.confidence - next.recognised.confidence < CLOSE) {
    const both = [best, next].map((it) => `  --kind ${it.reader.kind}: ${it.recognised.understood}`);
    throw new UsageError(`${path} could be two things; say which:\n${both.join('\n')}\nNothing was written.`);
  }
  return { ...file, ...best, others: others(best.reader) };
}

const NOTHING = ' Nothing was written.';
const KINDS = ` --kind says what it is: ${FILE_READERS.map((it) => it.kind).join(', ')}.`;

const sizeWords = (size: number) => (size === 0 ? 'it is empty' : 'no kind takes what it begins with');
