import type { AnyFileReader } from './file-kind.ts';
import { otherFileReader } from './other-file.ts';

/** All kinds of files that a session may name, in the order in which a page shows them. */
export const FILE_READERS: readonly AnyFileReader[] = [otherFileReader];
