import type { MethodConstants } from '../catalogue/rows.ts';
import { BOUND_BELOW, LARGEST_CORRECTION, NO_CORRECTION_ABOVE } from './background-sound.ts';
import { RANGE_EDGES } from './building-biology.ts';
import { PULSE_TOLERANCE, ROW_EDGE, SLOW_DEPTH } from './flicker-lines.ts';
import { LONG_EXPOSURE, LONGEST_TIMED } from './infrared.ts';
import {
  electricReferenceLevel,
  LOWEST_ELECTRIC_LEVEL,
  LOWEST_MAGNETIC_LEVEL,
  LOWEST_RADIO_LEVEL,
  magneticReferenceLevel,
} from './reference-levels.ts';
import { SKIN_TIME } from './skin-limit.ts';

const IEC = 'IEC 62471:2006, 4.3.7, from secondary sources';
const ICNIRP_2010 = 'ICNIRP 2010, seen in a copy of the paper';
const ISO = 'ISO 3744:2010, from secondary sources';
const SBM = 'SBM-2008 as seen on a page; that SBM-2015 has the same is from memory';

/** Constants of the methods that hold figures against published limits. */
export const EXPOSURE_CONSTANTS: MethodConstants = {
  'infrared-eye': [
    { name: 'limit for long exposures', value: LONG_EXPOSURE, unit: 'W/m²', why: IEC },
    { name: 'longest time of the formula', value: LONGEST_TIMED, unit: 's', why: IEC },
  ],
  'skin-heating': [
    {
      name: 'exposures shorter than',
      value: SKIN_TIME,
      unit: 's',
      why: 'IEC 62471:2006, 4.3.8; the formula is from secondary sources',
    },
  ],
  'flicker-lines': [
    {
      name: 'upper row from',
      value: ROW_EDGE,
      unit: 'Hz',
      why: 'IEEE Std 1789-2015, 8.1.1, from secondary sources; 90 Hz itself is in it',
    },
    {
      name: 'slow modulation from',
      value: SLOW_DEPTH,
      unit: '%',
      why: 'IEEE Std 1789-2015, Practice 3, from memory',
    },
    { name: 'pulsing within', value: PULSE_TOLERANCE, unit: 'Hz of 10 Hz or 40 Hz', why: 'our own choice' },
  ],
  'field-levels': [
    { name: 'magnetic, above 3 kHz', value: LOWEST_MAGNETIC_LEVEL, unit: 'µT', why: ICNIRP_2010 },
    { name: 'magnetic, 50 Hz and 60 Hz', value: magneticReferenceLevel(50), unit: 'µT', why: ICNIRP_2010 },
    { name: 'electric, above 3 kHz', value: LOWEST_ELECTRIC_LEVEL, unit: 'V/m', why: ICNIRP_2010 },
    { name: 'electric, 50 Hz', value: electricReferenceLevel(50), unit: 'V/m', why: ICNIRP_2010 },
    {
      name: 'radio, whole body, above 30 MHz',
      value: LOWEST_RADIO_LEVEL,
      unit: 'W/m²',
      why: 'ICNIRP 2020, from a secondary source',
    },
  ],
  'building-biology': [
    { name: 'magnetic', value: RANGE_EDGES.magnetic[0], unit: 'µT', why: SBM },
    { name: 'electric, ground potential', value: RANGE_EDGES.electric[0], unit: 'V/m', why: SBM },
    { name: 'radio', value: RANGE_EDGES.radio[0], unit: 'mW/m²', why: SBM },
  ],
  'sound-of-panel': [
    { name: 'no correction above', value: NO_CORRECTION_ABOVE, unit: 'dB', why: ISO },
    { name: 'upper bound below', value: BOUND_BELOW, unit: 'dB', why: ISO },
    { name: 'largest correction', value: LARGEST_CORRECTION, unit: 'dB', why: ISO },
  ],
};
