import { existsSync, lstatSync, readdirSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { fieldPath, type Problem } from '../../schema/problem.ts';
import { nearest } from '../../schema/suggest.ts';
import { meant, problemAt } from '../fields.ts';
import type { Source } from '../source.ts';
import { fileHash } from './file-hash.ts';
import type { AnyReadFile, BenchFileData, BenchFileKind, FileFault, FileRead, FileReader } from './file-kind.ts';
import { readingKey, storedReading } from './file-store.ts';
import { type NamedFile, namedFiles } from './named-files.ts';
import { saysPlace } from './photo-place.ts';
import { FILE_READERS } from './readers.ts';

/** Files of the bench that lie beside a panel's index. */
export interface PanelBenchFiles {
  /** Those that its sessions name, in the order of the sessions in the file. */
  read: readonly AnyReadFile[];
  /** Names of those that nothing names, though they look like a meter's. */
  unnamed: readonly string[];
}

/** Largest file that is read, MB. Our own choice: an hour at ten thousand readings a second is less. */
export const MOST_MEGABYTES = 256;
const MEGA = 1024 * 1024;

/** Endings of files as meters write them; pictures beside a panel are the photos' business. */
const OF_METERS: ReadonlySet<string> = new Set(['.csv', '.tsv', '.txt', '.log', '.dat', '.wav', '.cgats', '.it8']);

/**
 * Reads every file that a panel's sessions name.
 *
 * @returns what was read, and every problem: of a file that can be read but for some lines, at that line of the file
 */
export function readBenchFiles(source: Source): { files: PanelBenchFiles; problems: Problem[] } {
  const folder = dirname(source.path);
  const problems: Problem[] = [];
  const read: AnyReadFile[] = [];
  const seen = new Map<string, NamedFile>();
  for (const named of namedFiles(source)) {
    const { file } = named.entry;
    const first = seen.get(file);
    seen.set(file, first ?? named);
    const problem = first
      ? problemAt(source, named.at, `another file: ${fieldPath(first.at.path)} names this one`, SECOND)
      : placeProblem(source, named, folder);
    if (problem) {
      problems.push(problem);
      continue;
    }
    const result = readNamed(named, join(folder, file));
    if ('fault' in result) problems.push(faultProblem(source, named, result.fault));
    else read.push(result);
  }
  return { files: { read, unnamed: unnamedIn(folder, seen) }, problems };
}

const SECOND = 'each run has a file of its own; what was not measured again is carried over (carried)';

/** A file as it is read, whichever its kind. */
function readNamed({ reader, date, field, entry }: NamedFile, path: string): AnyReadFile | { fault: FileFault } {
  const { kind } = reader;
  const file = { kind, name: entry.file, path, date, field, entry, bytes: statSync(path).size, sha256: fileHash(path) };
  const result = readingOf(file);
  if ('fault' in result) return result;
  const { notes } = result;
  const told = { ...file, notes } as Omit<AnyReadFile, 'data'>;
  return { ...told, data: () => readAgain(told) } as AnyReadFile;
}

/**
 * What a file was read to: from what is kept of it, or read once more.
 *
 * @throws where it has become another file meanwhile
 */
export function readAgain<Kind extends BenchFileKind>(file: Omit<AnyReadFile, 'data'>): BenchFileData[Kind] {
  const result = readingOf(file);
  if ('fault' in result) throw new Error(`${file.path}: ${result.fault.found}`);
  return result.data as BenchFileData[Kind];
}

function readingOf({
  kind,
  path,
  name,
  bytes,
  sha256,
  entry,
}: Pick<AnyReadFile, 'kind' | 'path' | 'name' | 'bytes' | 'sha256' | 'entry'>): FileRead<BenchFileData[BenchFileKind]> {
  return storedReading(readingKey(sha256, kind, entry), () => {
    if (fileHash(path) !== sha256) throw new Error(`${path} has become another file while it was worked on`);
    // Reader and entry are of one kind, since the reader's own places led to the entry.
    const read = FILE_READERS.find((it) => it.kind === kind)?.read as (
      ...args: Parameters<FileReader<BenchFileKind>['read']>
    ) => FileRead<BenchFileData[BenchFileKind]>;
    return read({ path, name, bytes }, entry as Parameters<typeof read>[1]);
  });
}

/** What is wrong with where a file lies, and what it is by its name and size. */
function placeProblem(source: Source, { at, entry, reader }: NamedFile, folder: string): Problem | undefined {
  const { file } = entry;
  const problem = (wanted: string, hint?: string) => problemAt(source, at, wanted, hint);
  if (/[/\\]/.test(file) || file === '.' || file === '..') {
    return problem('the name of a file beside this one, without a folder');
  }
  const path = join(folder, file);
  const names = readdirSync(folder);
  if (!names.includes(file) || !existsSync(path) || !statSync(path).isFile()) {
    return problem('a file that is there, beside this one', meant(nearest(file, names)));
  }
  if (leadsAway(path))
    return problem('a file that lies beside this one', 'this is a link to another place: copy the file here');
  if (!reader.endings.includes(extname(file).toLowerCase())) {
    return problem(`${reader.called}: a file that ends in ${reader.endings.join(', ')}`);
  }
  const megabytes = statSync(path).size / MEGA;
  if (megabytes <= MOST_MEGABYTES) {
    if (statSync(path).size < 4 || !saysPlace(path)) return undefined;
    return {
      ...problem(
        'a picture without its place: readers can download it as it is',
        'take the place out of its data, or export it anew without it',
      ),
      found: `"${file}", which says where it was taken`,
    };
  }
  return {
    ...problem(
      `a file of at most ${MOST_MEGABYTES} MB`,
      'cut it to the run itself, or log fewer readings a second: every reader can download it',
    ),
    found: `"${file}" of ${megabytes.toFixed(0)} MB`,
  };
}

/** True for a link to another folder's file; a copy of the content that is made of links has links to files of these names. */
function leadsAway(path: string): boolean {
  if (!lstatSync(path).isSymbolicLink()) return false;
  const real = realpathSync(path);
  return basename(real) !== basename(path) || basename(dirname(real)) !== basename(dirname(path));
}

/** A fault inside a file stands at the file's own line; one of the whole file where it is named. */
function faultProblem(source: Source, { at, entry }: NamedFile, { line, found, wanted, hint }: FileFault): Problem {
  const problem = problemAt(source, at, wanted, hint);
  if (line === undefined) return { ...problem, found: `"${entry.file}": ${found}` };
  return { ...problem, file: `${source.file.slice(0, source.file.lastIndexOf('/') + 1)}${entry.file}`, line, found };
}

function unnamedIn(folder: string, named: ReadonlyMap<string, unknown>): string[] {
  return readdirSync(folder)
    .filter((it) => OF_METERS.has(extname(it).toLowerCase()) && !it.startsWith('.') && !named.has(it))
    .toSorted();
}
