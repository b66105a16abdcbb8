import { rounded } from '../rounded.ts';
import type { WordsOf } from '../speaker.ts';

/** What photos of the wall tell. */
export const PICTURE_WORDS: WordsOf<
  | 'wall-photo-turned'
  | 'wall-photo-grey'
  | 'wall-photo-clipped'
  | 'wall-photo-coarse'
  | 'leds-not-counted'
  | 'dots-not-resolved'
  | 'camera-no-meter'
  | 'wall-squares'
  | 'camera-tones'
  | 'camera-tones-within'
  | 'camera-vignette'
  | 'camera-vignette-within'
  | 'camera-noise'
  | 'camera-noise-from-pixels'
  | 'wall-itself'
  | 'wall-as-matte'
  | 'near-infrared-unseen'
  | 'camera-sees-red'
  | 'dots-below-noise'
  | 'wall-photo-overexposed'
  | 'expose-less'
> = {
  'wall-photo-turned': () => 'turned upright as the camera says; its corners are those of the picture as it is seen',
  'wall-photo-grey': () => 'a grey picture: all channels are the same',
  'wall-photo-clipped': ({ percent, most }) =>
    `${rounded(percent, 2)} % of the wall is brighter than the photo can hold; with more than ${rounded(most)} % nothing can be told of how even it is`,
  'wall-photo-coarse': ({ cell }) =>
    `the marked part is too small, too dark, or has too few pixels for squares of ${cell} cm`,
  'leds-not-counted': () =>
    'the pitch of the LEDs is not known: they are not counted, and the claimed number makes no grid',
  'dots-not-resolved': () => 'too few pixels or too few LEDs in the photo to tell their pitch',
  'camera-no-meter': () =>
    'by a camera, which is no meter: only how the visible light is shared out, not how much there is',
  'wall-squares': ({ columns, rows, across, down }) =>
    `${columns} × ${rows} squares of ${rounded(across, 2)} × ${rounded(down, 2)} cm within the marked part of the wall`,
  'camera-tones': () => 'Tone curve of the camera',
  'camera-tones-within': ({ percent }) =>
    `the power between light and number may be off by ${rounded(percent)} % once sRGB is taken off, rectangular; by the same calculation with both ends`,
  'camera-vignette': () => 'Fall of the light towards the picture’s corners',
  'camera-vignette-within': ({ percent }) =>
    `up to ${rounded(percent)} % at the corners not corrected by the camera, growing with the square of the distance from the middle, rectangular`,
  'camera-noise': () => 'Noise of the camera',
  'camera-noise-from-pixels': () => 'from the differences of neighbouring pixels',
  'wall-itself': () => 'The wall',
  'wall-as-matte': () => 'taken for matte and of one shade, in a dark room',
  'near-infrared-unseen': () => 'Near-infrared',
  'camera-sees-red': () => 'a camera hardly sees it; if it is shared out otherwise than red, that is missed',
  'dots-below-noise': () => 'no wave at the LEDs’ pitch stands out of what a photo has by itself',
  'wall-photo-overexposed': ({ percent, isWithheld }) =>
    `${rounded(percent, 2)} % of the marked wall is brighter than the photo can hold, so that the light looks more even than it is.${isWithheld ? ' Its figures are withheld.' : ''}`,
  'expose-less': () =>
    'take it again with a shorter exposure: no part of the wall may be at the end of any colour’s scale',
};
