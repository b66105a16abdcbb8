import { z } from 'zod';
import { fileReference, refuse, text } from './fields.ts';

/** Endings of the pictures that can be listed as photos: what cameras and telephones write, and what they are saved as. */
export const PHOTOS = ['.avif', '.jpeg', '.jpg', '.png', '.webp'];

const WANTED = 'words that tell somebody who can’t see it what is on the picture';

/** Pictures of a panel or of a session; the files lie beside the panel's index. */
export const photoList = z.array(
  z.strictObject({
    file: fileReference('The picture’s file, beside index.md: JPEG, PNG, WebP or AVIF.'),
    shows: text(
      'What is to be seen, in a few words: stands under the picture, and for it where it is not seen.',
    ).superRefine((it, context) => {
      if (PHOTOS.some((ending) => it.trim().toLowerCase().endsWith(ending))) {
        refuse(context, { wanted: WANTED, hint: 'the file’s name belongs to `file`' });
      } else if (!/\p{L}\S*\s+\S*\p{L}/u.test(it)) {
        refuse(context, { wanted: WANTED, hint: 'two words at least: `Back with its fan`' });
      }
    }),
    by: text('Whose picture it is.').optional(),
  }),
);
