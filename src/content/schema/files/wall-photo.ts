import { z } from 'zod';
import { TONES } from '../../../measure/wall/srgb.ts';
import { number, quantity } from '../fields.ts';
import { fileName } from './file-entry.ts';

/** Endings of pictures of the wall. */
export const WALL_PHOTO_ENDINGS = ['.jpeg', '.jpg', '.png'];

const pixel = (meaning: string) => number(meaning, { min: 0, max: 100_000 });
const corner = z.tuple([pixel('Pixels from the left edge.'), pixel('Pixels from the upper edge.')]);

/** The picture of the wall that the panel lights, and where on it a rectangle of known sides lies. */
export const wallPhoto = z
  .strictObject({
    file: fileName('The picture: JPEG or PNG, beside index.md.', 'wall.jpg', WALL_PHOTO_ENDINGS),
    corners: z
      .tuple([corner, corner, corner, corner], {
        error: () => 'four corners, each as [across, down] in pixels: upper left, upper right, lower right, lower left',
      })
      .describe(
        'Corners of a rectangle on the wall, best the LED field’s outline, in pixels of the picture as a viewer shows it, each [across, down] from its upper left: upper left, upper right, lower right, lower left.',
      )
      .meta({
        examples: [
          [
            [412, 300],
            [3380, 318],
            [3402, 2740],
            [390, 2702],
          ],
        ],
      }),
    width: quantity('length', 'Real width of that rectangle.', { positive: true, max: 1000 }, '60 cm'),
    height: quantity('length', 'Real height of that rectangle.', { positive: true, max: 1000 }, '50 cm'),
    tones: z
      .enum(TONES)
      .default('automatic')
      .describe(
        'How the picture’s numbers stand for light. automatic: as a telephone or camera writes it; srgb: developed from raw without a tone curve; linear: numbers proportional to light.',
      ),
    distance: quantity(
      'length',
      'Distance from the panel to the wall; the session’s distance where left out.',
      { positive: true, max: 1000 },
      '6 in',
    ).optional(),
  })
  .describe('Picture of the wall that the panel lights: how even the light looks to a camera, which is no meter.');

export type WallPhotoEntry = z.output<typeof wallPhoto>;
