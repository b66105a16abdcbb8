import type { MethodConstants } from '../catalogue/rows.ts';
import { USUAL_HALF_GAP } from './assumed-emitter.ts';
import {
  LEAST_HALF_ANGLE,
  MOST_HALF_ANGLE,
  USUAL_DIFFERENCE,
  USUAL_DRIVE,
  USUAL_HALF_ANGLE,
  USUAL_SPILL,
} from './beam-prior.ts';
import { BODY_WIDTH, EVEN_FROM } from './body-map.ts';
import { FEWEST_READINGS, SMALLEST_PROBABILITY } from './estimate.ts';
import { FARTHEST_PLANE, NEAREST_PLANE } from './gaussian-sum.ts';
import { MOST_LOPSIDED } from './lopsided.ts';
import { BASIS } from './profile-basis.ts';
import { PAST_FLOOR, PAST_UNCERTAINTY, PLACE_UNCERTAINTY, STRAY, USUAL_STRAY } from './reading-model.ts';
import { OPTICS_TRIALS, OTHER_BEAMS, OTHER_DISTANCES, OTHER_MISSED } from './simulate.ts';
import { LARGEST_PITCH, SINGLE_BELOW } from './single-leds.ts';
import { WIDEST_RANGE } from './spread.ts';

const percent = (share: number) => Number((100 * share).toPrecision(4));

/** Constants of the methods of the optics model. */
export const BEAM_CONSTANTS: MethodConstants = {
  'beam-half-angle': [
    { name: 'parts of a beam', value: BASIS, unit: '1', why: 'our own choice: a finer set changes no figure' },
    {
      name: 'usual half-angle of the main lobe',
      value: USUAL_HALF_ANGLE,
      unit: '°',
      why: 'our own choice; lognormal',
    },
    { name: 'narrowest half-angle', value: LEAST_HALF_ANGLE, unit: '°', why: 'our own choice' },
    { name: 'widest half-angle', value: MOST_HALF_ANGLE, unit: '°', why: 'our own choice' },
    {
      name: 'usual light past the lens',
      value: percent(USUAL_SPILL),
      unit: '% of the power',
      why: 'our own choice; lognormal',
    },
    {
      name: 'usual difference from LED to LED',
      value: percent(USUAL_DIFFERENCE),
      unit: '%',
      why: 'our own choice; lognormal',
    },
    {
      name: 'usual unevenness of drive from middle to rim, down',
      value: percent(USUAL_DRIVE.down),
      unit: '%',
      why: `our own choice; lognormal. Across, and as a slope, ${percent(USUAL_DRIVE.across)} %`,
    },
    {
      name: 'place of the probe',
      value: percent(PLACE_UNCERTAINTY),
      unit: '% of each reading',
      why: 'our own choice: it stands some millimetres aside',
    },
    {
      name: 'a reading past an edge against the beams that are tried',
      value: percent(PAST_UNCERTAINTY),
      unit: '% of the reading',
      why: `our own choice, from simulated panels: lenses have rings and steps, and end in different ways; and ${percent(PAST_FLOOR)} % of the mean reading in the frame`,
    },
    {
      name: 'light that the room gives back',
      value: percent(USUAL_STRAY),
      unit: '% of the mean reading, on every reading alike',
      why: `our own choice, with a standard uncertainty of ${percent(STRAY)} %`,
    },
    {
      name: 'beams of other shapes',
      value: percent(OTHER_BEAMS),
      unit: '% of the share that passes the frame',
      why: 'our own choice, from simulated panels',
    },
    {
      name: 'the same of the light that misses the frame, from the grid alone',
      value: percent(OTHER_MISSED.grid),
      unit: '%',
      why: `our own choice, from simulated panels; with a sweep ${percent(OTHER_MISSED.sweep)} %, with readings past the edges ${percent(OTHER_MISSED.beyond)} %`,
    },
    {
      name: 'the same at other distances, from the grid alone',
      value: percent(OTHER_DISTANCES.grid),
      unit: '% for each factor of 2.72 between the distances',
      why: `our own choice, from simulated panels; with a sweep or readings past the edges ${percent(OTHER_DISTANCES.sweep)} %`,
    },
    {
      name: 'no beam explains a chi-square rarer than',
      value: percent(SMALLEST_PROBABILITY),
      unit: '%',
      why: 'our own choice',
    },
    { name: 'fewest readings', value: FEWEST_READINGS, unit: '1', why: 'our own choice' },
    {
      name: 'a point lies farther from its mirror images than',
      value: percent(MOST_LOPSIDED),
      unit: '% of the mean',
      why: 'our own choice, from simulated panels; beside a slope and three standard uncertainties of the point',
    },
  ],
  'emitted-power': [
    { name: 'draws of the simulation', value: OPTICS_TRIALS, unit: '1', why: 'about 30 draws in each 2.5 % tail' },
    {
      name: 'the power is left open by an interval wider than',
      value: WIDEST_RANGE,
      unit: 'of its upper over its lower end',
      why: 'our own choice',
    },
    {
      name: 'light reaches past the field’s edge',
      value: USUAL_HALF_GAP,
      unit: 'cm',
      why: 'our own choice: half of a usual gap between LEDs, give or take all of it, where they are not counted',
    },
  ],
  'distance-table': [
    {
      name: 'nearest plane',
      value: NEAREST_PLANE,
      unit: 'cm',
      why: 'our own choice; nearer than one pitch of the LEDs no figure of the model is to be trusted',
    },
    {
      name: 'LEDs show singly below',
      value: SINGLE_BELOW,
      unit: 'of z tan(half-angle) over the pitch',
      why: 'found on simulated panels; no peak and no evenness is given there unless the LEDs were counted',
    },
    {
      name: 'largest usual pitch',
      value: LARGEST_PITCH,
      unit: 'cm',
      why: 'our own choice, where LEDs are not counted',
    },
    { name: 'farthest plane', value: FARTHEST_PLANE, unit: 'cm', why: 'our own choice' },
    {
      name: 'width of the standing figure',
      value: BODY_WIDTH,
      unit: 'cm',
      why: 'our own choice: about shoulder width',
    },
    {
      name: 'counted as evenly lit from',
      value: percent(EVEN_FROM),
      unit: '% of the mean over the figure',
      why: 'our own choice',
    },
  ],
};
