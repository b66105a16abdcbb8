import { z } from 'zod';
import { prose } from '../fields.ts';
import { fileName } from './file-entry.ts';

/** Endings of files that are kept and published as they are. Nothing that a browser would run. */
export const OTHER_FILE_ENDINGS = [
  '.csv',
  '.dat',
  '.jpeg',
  '.jpg',
  '.json',
  '.log',
  '.ods',
  '.pdf',
  '.png',
  '.tsv',
  '.txt',
  '.wav',
  '.xlsx',
  '.xml',
  '.zip',
];

/** Files of a session that are published beside it, and that nothing is worked out from. */
export const otherFiles = z
  .array(
    z.strictObject({
      file: fileName('The file, beside index.md.', 'bench-notes.pdf', OTHER_FILE_ENDINGS),
      shows: prose('What is in it, in a few words.', 'The bench notes as they were written'),
    }),
  )
  .min(1)
  .describe('Other files of the session, published as they are: nothing is worked out from them.');

export type OtherFileEntry = z.output<typeof otherFiles>[number];
