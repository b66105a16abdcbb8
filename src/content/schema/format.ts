import { z } from 'zod';

/**
 * The format of content files that this version reads and writes. It goes up when something that could be written before
 * is no longer read; a migration of that number (src/content/migrations/) brings older content up to it.
 */
export const FORMAT = 2;

/** In guide.yaml: the format of all files of the content folder. */
export const formatField = z
  .int()
  .positive()
  .default(1)
  .refine((it) => it <= FORMAT, {
    error: `a format up to ${FORMAT}`,
    params: {
      wanted: `a format up to ${FORMAT}, which is the newest that this version of the program reads`,
      hint: 'update the program: this content was written for a later one',
    },
  })
  .describe('Format of the content files, which the upgrade command raises; 1 where it is left out.');
