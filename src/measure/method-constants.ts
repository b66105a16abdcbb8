import { BEAM_CONSTANTS } from './beam/method-constants.ts';
import type { MethodConstants } from './catalogue/rows.ts';
import { NEAREST_BENCH } from './checks/bench-distance.ts';
import { LARGEST_PITCH, LONGEST_SIDE, SMALLEST_PITCH, SMALLEST_SHARE } from './checks/field-size.ts';
import { AROUND_FACTOR, FEWEST_ROOMS } from './checks/room-fields.ts';
import { MAGNETIC_OFF_ODD } from './checks/unit-slips.ts';
import { SHORTEST_WARM_UP } from './checks/warm-up-time.ts';
import { CONTROL_CONSTANTS } from './control/method-constants.ts';
import { EXPOSURE_CONSTANTS } from './exposure/method-constants.ts';
import { LOG_CONSTANTS } from './log/method-constants.ts';
import { RANK_TRIALS } from './money/ranking.ts';
import { SOUND_CONSTANTS } from './sound/method-constants.ts';
import { SPECTRUM_CONSTANTS } from './spectrum/method-constants.ts';
import {
  IMPOSSIBLE_EFFICIENCY,
  ODD_EFFICIENCY,
  OUTLIER_Z,
  SMALLEST_OUTLIER,
  STALE_PRICE_DAYS,
  WAVELENGTH_TOLERANCE_NM,
} from './thresholds.ts';
import { CM_PER_INCH } from './unit-factors.ts';
import { WALL_CONSTANTS } from './wall/method-constants.ts';

/**
 * Named constants that the methods' calculations use, each from where it is used. They stand apart from the catalogue's
 * rows, which every calculation rests on: a row that took its constants from a calculation would go in a circle.
 */
export const METHOD_CONSTANTS: MethodConstants = {
  'bench-procedure': [
    { name: 'reference distance', value: 6 * CM_PER_INCH, unit: 'cm', why: '6 in; common practice, no source' },
  ],
  uncertainty: [
    { name: 'coverage probability', value: 0.95, unit: '1', why: 'two-sided, as is usual for bench reports' },
  ],
  wavelength: [
    {
      name: 'tolerance against the claim',
      value: WAVELENGTH_TOLERANCE_NM,
      unit: 'nm',
      why: 'common practice, no source; the guide’s file may set another',
    },
  ],
  'real-price': [{ name: 'stale after', value: STALE_PRICE_DAYS, unit: 'days', why: 'our own choice' }],
  efficiency: [
    { name: 'odd above', value: ODD_EFFICIENCY, unit: '1', why: 'our own choice, above what panels reach' },
    {
      name: 'impossible above',
      value: IMPOSSIBLE_EFFICIENCY,
      unit: '1',
      why: 'near-limit of red LEDs, Kusuma et al. 2020',
    },
  ],
  rank: [{ name: 'draws', value: RANK_TRIALS, unit: '1', why: 'about 100 draws in each 2.5 % tail' }],
  plausibility: [
    { name: 'outlier beyond', value: OUTLIER_Z, unit: '1', why: 'Iglewicz and Hoaglin 1993' },
    {
      name: 'smallest distance called out',
      value: 100 * SMALLEST_OUTLIER,
      unit: '%',
      why: 'our own choice: the reader’s hand alone does not reach it',
    },
    { name: 'shortest warm-up', value: SHORTEST_WARM_UP, unit: 's', why: 'our own choice' },
    { name: 'nearest bench', value: NEAREST_BENCH, unit: 'cm', why: 'our own choice' },
    { name: 'LEDs closer than', value: SMALLEST_PITCH, unit: 'cm', why: 'our own choice' },
    { name: 'LEDs farther apart than', value: LARGEST_PITCH, unit: 'cm', why: 'our own choice' },
    { name: 'longest side of a field', value: LONGEST_SIDE, unit: 'cm', why: 'our own choice: higher than a door' },
    { name: 'smallest share of the housing', value: 100 * SMALLEST_SHARE, unit: '%', why: 'our own choice' },
    {
      name: 'magnetic field of a room above',
      value: MAGNETIC_OFF_ODD,
      unit: 'µT',
      why: 'one or two homes in a hundred average more, from memory',
    },
    {
      name: 'around the factor between two units',
      value: AROUND_FACTOR,
      unit: '1',
      why: 'our own choice: half to twice the factor',
    },
    { name: 'other sessions at least', value: FEWEST_ROOMS, unit: '1', why: 'our own choice' },
  ],
  ...BEAM_CONSTANTS,
  ...CONTROL_CONSTANTS,
  ...EXPOSURE_CONSTANTS,
  ...SOUND_CONSTANTS,
  ...WALL_CONSTANTS,
  ...SPECTRUM_CONSTANTS,
  ...LOG_CONSTANTS,
};
