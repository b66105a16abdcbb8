/** A place in a file that is still to be filled in. */
export interface Gap {
  /** As the file has it. */
  path: readonly PropertyKey[];
  /** Counted from 1. */
  line: number;
}

/** A file of which something is still to be filled in. */
export interface Unfinished {
  gaps: readonly Gap[];
  /** The data with nothing but its gaps taken out: paths in it are those of the file. */
  kept: unknown;
  /** Line of a field by its path in the file. */
  lineOf(path: readonly PropertyKey[]): number;
  /** The path in the file of something in the source's data, which lacks what says nothing without its gaps. */
  asWritten(path: readonly PropertyKey[]): PropertyKey[];
}

/** A content file as it was read: its data, its body, and where in it each field stands. */
export interface Source {
  /** As messages name it: from where the tester works, with forward slashes. */
  file: string;
  /** Where it lies on the disk. */
  path: string;
  /** A text that comes with the product; what is left out is the tester's own. */
  isProducts?: boolean;
  data: unknown;
  /** The YAML as it was typed, for what reading it takes away: 4.790 becomes 4.79. */
  yaml: string;
  /** Line, from 1, on which the YAML starts. */
  yamlLine: number;
  /** What follows the front matter; empty for YAML files. */
  body: string;
  /** Line, from 1, on which the body starts. */
  bodyLine: number;
  /** Line of a field, or of the nearest block around it. */
  lineOf(path: readonly PropertyKey[]): number;
  /** What is still to be filled in, which `data` is without; left out where nothing is. */
  unfinished?: Unfinished;
}
