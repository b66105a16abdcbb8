import type { Source } from '../read/source.ts';
import type { CollectionName } from '../schema/collections.ts';
import type { Problem } from '../schema/problem.ts';

/**
 * Content as it was read, whether or not it fits its schema: a file with one fault still has its others looked
 * at, so rules read raw fields and pass over what is not of the kind they know. The schemas say that.
 */
export type RawCollections = Readonly<Record<CollectionName, ReadonlyMap<string, Source>>>;

/** What a rule is told besides the content. */
export interface Surroundings {
  /** `YYYY-MM-DD`; no day may lie after it. */
  today: string;
  /** The content folder, and how messages name it. */
  folder: string;
  shownAs: string;
  /** Files that could not be read at all; a reference to one of them is not a problem more. */
  unread: ReadonlySet<string>;
  /** Drafts have pages. */
  drafts: boolean;
}

/** Something that one file says of another, of itself in two places, or of what is around it. */
export interface Rule {
  /** Its file has its name. */
  id: string;
  /** What is wrong; nothing where the rule is kept. */
  run(content: RawCollections, around: Surroundings): Problem[];
}
