import type { MethodConstants } from '../catalogue/rows.ts';
import { HOTTEST } from './beyond-reach.ts';
import { CLEAR_OFFSET, SHORTEST_DARK } from './dark.ts';
import { CUT_SHARE } from './faults.ts';
import { INFRARED_BAND } from './infrared-sum.ts';
import { FOOT, PROMINENCE_OVER_NOISE, SMALLEST_PROMINENCE } from './peaks.ts';

const OWN = 'our own choice';

/** Constants of what is made of spectra. */
export const SPECTRUM_CONSTANTS: MethodConstants = {
  centroid: [
    { name: 'a peak stands out by', value: 100 * SMALLEST_PROMINENCE, unit: '% of the highest value', why: OWN },
    { name: 'and by', value: PROMINENCE_OVER_NOISE, unit: 'times the noise', why: OWN },
    { name: 'its light reaches down to', value: 100 * FOOT, unit: '% of its height', why: OWN },
  ],
  'spectrum-irradiance': [
    { name: 'shortest dark part', value: SHORTEST_DARK, unit: 'nm', why: OWN },
    { name: 'dark level subtracted beyond', value: CLEAR_OFFSET, unit: 'standard errors', why: OWN },
    { name: 'cut off where an end has', value: 100 * CUT_SHARE, unit: '% of the highest value', why: OWN },
  ],
  'infrared-sum': [
    {
      name: 'band from',
      value: INFRARED_BAND.from,
      unit: 'nm',
      why: 'IEC 62471:2006, 4.3.7, from secondary sources',
    },
    { name: 'band to', value: INFRARED_BAND.to, unit: 'nm', why: 'IEC 62471:2006, 4.3.7, from secondary sources' },
    { name: 'hottest part in view', value: HOTTEST, unit: 'K', why: `${OWN}: 100 °C, the cautious end` },
  ],
};
