import type { MethodConstants } from '../catalogue/rows.ts';
import { SMALLEST_TONE_SHARE } from './calibration-tone.ts';
import { SHORTEST_CLIP } from './clip-reading.ts';
import { TONES_FROM, TONES_TO } from './critical-band.ts';

const ECMA = 'ECMA-418-1, from secondary sources';
const OURS = 'our own choice';

/** Constants of what sound clips tell. */
export const SOUND_CONSTANTS: MethodConstants = {
  'sound-clip': [
    { name: 'shortest clip', value: SHORTEST_CLIP, unit: 's', why: OURS },
    { name: 'calibrator’s tone holds at least', value: 100 * SMALLEST_TONE_SHARE, unit: '% of its clip', why: OURS },
  ],
  tones: [
    { name: 'looked for from', value: TONES_FROM, unit: 'Hz', why: ECMA },
    { name: 'up to', value: TONES_TO, unit: 'Hz', why: `${ECMA}; less where the clip has fewer samples a second` },
    { name: 'prominent from 1 kHz on at', value: 8, unit: 'dB', why: ECMA },
  ],
};
