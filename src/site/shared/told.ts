/*
 * What the tester is told by a command and on the tester's own pages alike: sections of rows, which the terminal, Markdown
 * and a page each print in their own way.
 */

/** What stands under one heading. */
export interface Section {
  title: string;
  /** A sentence before the rows. */
  lead?: string;
  rows: readonly Row[];
}

/** A thing and what there is to say of it; a row without a name is a sentence of its own. */
export interface Row {
  name: string;
  text: string;
  /** What to do about it, on a line of its own. */
  todo?: string;
  /** Where it stands in the guide. */
  address?: string;
}
