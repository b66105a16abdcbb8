import type { MethodConstants } from '../catalogue/rows.ts';
import { FEWEST_A_PITCH, SEARCHED, SMALLEST_WAVE, STANDS_OUT } from './dot-pattern.ts';
import { CELL, HAND } from './evenness.ts';
import { CLIPPED_MOST } from './wall-figures.ts';
import { AUTOMATIC_EXPONENT, KNOWN_EXPONENT, VIGNETTE } from './wall-results.ts';

const OURS = 'our own choice';

/** Constants of what a photo of the wall tells. */
export const WALL_CONSTANTS: MethodConstants = {
  'wall-photo': [
    { name: 'side of a square, about', value: CELL, unit: 'cm', why: `${OURS}: a sensor’s diffuser` },
    { name: 'a hand’s width', value: HAND, unit: 'cm', why: OURS },
    {
      name: 'a camera’s own tone curve bends by up to',
      value: 100 * AUTOMATIC_EXPONENT,
      unit: '% of the exponent',
      why: `${OURS}, tried on simulated cameras`,
    },
    { name: 'sRGB alone, or linear, by up to', value: 100 * KNOWN_EXPONENT, unit: '% of the exponent', why: OURS },
    { name: 'fall towards the picture’s corners left by', value: 100 * VIGNETTE, unit: '%', why: OURS },
    { name: 'withheld where clipped by more than', value: 100 * CLIPPED_MOST, unit: '% of the wall', why: OURS },
  ],
  'dot-pattern': [
    { name: 'looked for about the pitch within', value: 100 * SEARCHED, unit: '%', why: OURS },
    {
      name: 'stands out from',
      value: STANDS_OUT,
      unit: 'medians of what is around it',
      why: 'noise reaches it once in 65,000',
    },
    {
      name: 'smallest wave told',
      value: 100 * SMALLEST_WAVE,
      unit: '%',
      why: `${OURS}: packing a photo makes waves of its own`,
    },
    { name: 'pixels of a pitch at least', value: FEWEST_A_PITCH, unit: '1', why: OURS },
  ],
};
