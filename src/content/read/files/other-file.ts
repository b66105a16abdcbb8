import { OTHER_FILE_ENDINGS, type OtherFileEntry } from '../../schema/files/other-files.ts';
import type { FileReader } from './file-kind.ts';

declare module './file-kind.ts' {
  interface BenchFileData {
    /** Nothing is read from it. */
    other: null;
  }
  interface BenchFileEntry {
    other: OtherFileEntry;
  }
}

/** Files that are published as they are: nothing is read from them, so that none is refused for what is in it. */
export const otherFileReader: FileReader<'other'> = {
  kind: 'other',
  called: 'another file',
  places: [{ path: ['otherFiles', '*'], words: 'published as it is, and nothing worked out from it' }],
  endings: OTHER_FILE_ENDINGS,
  read: () => ({ data: null, notes: [] }),
  recognise: () => undefined,
};
