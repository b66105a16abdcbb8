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
}
