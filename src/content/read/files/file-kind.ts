import type { Statement } from '../../../measure/statement.ts';
import type { FileEntry } from '../../schema/files/file-entry.ts';

/**
 * What a file of each kind is read to: plain data, no measures. Each kind adds its row beside its reader:
 *
 * ```ts
 * declare module './file-kind.ts' {
 *   interface BenchFileData {
 *     spectrum: Spectrum;
 *   }
 *   interface BenchFileEntry {
 *     spectrum: SpectrumEntry;
 *   }
 * }
 * ```
 */
// biome-ignore lint/suspicious/noEmptyInterface: kinds add their rows
export interface BenchFileData {}

/** What a session says of a file of each kind: its block in the front matter, as the schema reads it. */
// biome-ignore lint/suspicious/noEmptyInterface: kinds add their rows
export interface BenchFileEntry {}

export type BenchFileKind = keyof BenchFileData & keyof BenchFileEntry;

/** What is wrong with a file: as a problem says it, but for the place in the front matter that names the file. */
export interface FileFault {
  /** Line of the file itself, from 1. */
  line?: number | undefined;
  /** What stands there. */
  found: string;
  /** What should. */
  wanted: string;
  /** The likely slip, or the next step. */
  hint?: string | undefined;
}

/** A file to be read. */
export interface BenchFile {
  /** Where it lies on the disk. */
  path: string;
  name: string;
  bytes: number;
}

/** What reading comes to; notes tell readers of pages what was converted on the way. */
export type FileRead<Data> = { data: Data; notes: readonly Statement[] } | { fault: FileFault };

/** The start of a file, by which its kind is told. */
export interface FileHead {
  path: string;
  /** Its name, in small letters where it is an ending that counts. */
  name: string;
  /** First bytes, 64 KB at most. */
  bytes: Uint8Array;
  /** The whole file's. */
  size: number;
}

/** What a file is taken for. */
export interface Recognised {
  /** From 0 to 1: 1 where the content says it itself, 0.5 where it only could be. */
  confidence: number;
  /** What was understood, for the tester: "a spectrum, 380 to 1050 nm in 671 rows, in µW/cm²/nm". */
  understood: string;
  /** Field of the file's entry that the content tells of itself: `mode`, a unit. */
  entry?: Readonly<Record<string, unknown>>;
}

/** A place in a session where files of a kind are named. */
export interface FilePlace {
  /** Keys within a session; `*` stands for every item of a list. */
  path: readonly string[];
  /** Words for the tester who is asked where a file belongs: "red alone". */
  words: string;
}

/** How files of one kind are named, told from others, and read. */
export interface FileReader<Kind extends BenchFileKind> {
  kind: Kind;
  /** What a file of the kind is called in a sentence: "a spectrum". */
  called: string;
  places: readonly FilePlace[];
  /** Endings that it takes, small letters, with their point. */
  endings: readonly string[];
  read(file: BenchFile, entry: BenchFileEntry[Kind] & FileEntry): FileRead<BenchFileData[Kind]>;
  /** Undefined where it is none of its kind. */
  recognise(head: FileHead): Recognised | undefined;
}

/** A file as it was read. */
export interface ReadFile<Kind extends BenchFileKind = BenchFileKind> {
  kind: Kind;
  name: string;
  /** Where it lies on the disk. */
  path: string;
  /** Day of the session that names it. */
  date: string;
  /** Where the session names it: `['spectra', 'red']`, `['sweeps', 0]`. */
  field: readonly PropertyKey[];
  entry: BenchFileEntry[Kind] & FileEntry;
  bytes: number;
  /** Of its bytes, in hexadecimal digits. */
  sha256: string;
  /**
   * What it was read to: asked for when it is needed, since the recordings of a shelf of panels don't fit into memory.
   *
   * @throws where the file has become another one meanwhile
   */
  data(): BenchFileData[Kind];
  notes: readonly Statement[];
}

/** A read file of whichever kind. */
export type AnyReadFile = { [Kind in BenchFileKind]: ReadFile<Kind> }[BenchFileKind];

/** A reader of whichever kind. */
export type AnyFileReader = { [Kind in BenchFileKind]: FileReader<Kind> }[BenchFileKind];

/** The files of one kind among others. */
export function filesOf<Kind extends BenchFileKind>(files: readonly AnyReadFile[], kind: Kind): Array<ReadFile<Kind>> {
  return files.filter((it) => it.kind === kind) as unknown as Array<ReadFile<Kind>>;
}
