import { z } from 'zod';
import { fileReference, prose, refuse } from './fields.ts';

/** Endings of the pictures that can be listed as photos: what cameras and telephones write, and what they are saved as. */
export const PHOTOS = ['.avif', '.jpeg', '.jpg', '.png', '.webp'];

const ENDINGS = PHOTOS.map((it) => it.replace('.', '\\.').replace(/[a-z]/g, (a) => `[${a}${a.toUpperCase()}]`)).join(
  '|',
);

/** A name without a folder; capitals of an ending do not count. */
const FILE_PATTERN = `^[^/\\\\]*(?:${ENDINGS})$`;

/** Two words at least, and no file's name. */
const TWO_WORDS = String.raw`\p{L}\S*\s+\S*\p{L}`;
const SHOWS_PATTERN = `^(?![\\s\\S]*(?:${ENDINGS})\\s*$)[\\s\\S]*${TWO_WORDS}`;

const WANTED = 'words that tell somebody who can’t see it what is on the picture';

/** Pictures of a panel or of a session; the files lie beside the panel's index. */
export const photoList = (example: { file: string; shows: string }) =>
  z.array(
    z.strictObject({
      file: fileReference('The picture’s file, beside index.md: JPEG, PNG, WebP or AVIF.', example.file).meta({
        pattern: FILE_PATTERN,
      }),
      shows: prose(
        'What is to be seen, in a few words: stands under the picture, and for it where it is not seen.',
        example.shows,
      )
        .superRefine((it, context) => {
          if (PHOTOS.some((ending) => it.trim().toLowerCase().endsWith(ending))) {
            refuse(context, { wanted: WANTED, hint: 'the file’s name belongs to `file`' });
          } else if (!new RegExp(TWO_WORDS, 'u').test(it)) {
            refuse(context, { wanted: WANTED, hint: 'two words at least: `Back with its fan`' });
          }
        })
        .meta({ pattern: SHOWS_PATTERN }),
      by: prose('Whose picture it is.', 'A member').optional(),
    }),
  );
