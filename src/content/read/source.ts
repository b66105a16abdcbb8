/** A content file as it was read: its data, its body, and where in it each field stands. */
export interface Source {
  /** Path from the repository's top, with forward slashes. */
  file: string;
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
}
