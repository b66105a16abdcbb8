/** The files of a content folder as text, by their paths in it; pictures and other raw files are none of them. */
export type ContentFiles = ReadonlyMap<string, string>;

/** One thing that a migration does to a file. */
export interface Change {
  path: string;
  /** Undefined for a file that goes. */
  after: string | undefined;
  /** What is changed and why, in a sentence of plain words. */
  why: string;
}

/**
 * Brings content of the format before up to a format. Whatever it does not speak of stays as it is, byte by byte, and
 * content that is in the format already comes out unchanged: a run that was cut short is simply done again.
 */
export interface Migration {
  /** The format that it leads to; its file's name starts with the number. */
  to: number;
  run(files: ContentFiles): Change[];
}
