import type { MethodEntry } from '../methods.ts';
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
import { BASIS } from './profile-basis.ts';
import { PAST_FLOOR, PAST_UNCERTAINTY, PLACE_UNCERTAINTY, STRAY, USUAL_STRAY } from './reading-model.ts';
import { OPTICS_TRIALS, OTHER_BEAMS, OTHER_DISTANCES, OTHER_MISSED } from './simulate.ts';
import { LARGEST_PITCH, SINGLE_BELOW } from './single-leds.ts';
import { WIDEST_RANGE } from './spread.ts';

const percent = (share: number) => Number((100 * share).toPrecision(4));

/** The methods of the optics model, for the registry. */
export const OPTICS_METHODS: readonly MethodEntry[] = [
  {
    id: 'beam-half-angle',
    name: 'Beam half-angle',
    unit: '°',
    formula:
      'I(\\theta)=\\sum_k w_k\\,\\frac{m_k+1}{2\\pi}\\cos^{m_k}\\theta,\\qquad p(\\mathbf w\\mid\\mathbf E)\\propto p(\\mathbf w)\\;p(\\mathbf E\\mid\\mathbf w),\\qquad I(\\theta_{1/2})=\\tfrac12\\max I',
    symbols: [
      ['\\theta_{1/2}', 'widest angle from an LED’s axis at which its intensity is half of its highest value, degrees'],
      ['I', 'intensity of an LED that gives off 1 W, W/sr'],
      ['w_k', 'power in part k of the beam; a part may be negative where the whole is not'],
      ['m_k', 'order of part k, a power of the cosine; fixed, from half-angles of 84° to 4°'],
      ['\\mathbf E', 'all readings: grid, past the edges, distance sweep, mW/cm²'],
      ['p(\\mathbf w)', 'beams thought possible before anything is read'],
      [
        'p(\\mathbf E\\mid\\mathbf w)',
        'probability of the readings for a beam, with their errors and with uneven drive',
      ],
    ],
    constants: [
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
    ],
    file: 'src/measure/beam/beam-prior.ts',
  },
  {
    id: 'sampling-bias',
    name: 'Sampling bias of the grid',
    unit: '%',
    formula: 'b-1=\\frac{\\bar E_\\mathrm{grid}}{\\bar E}-1',
    symbols: [
      ['b', 'what the grid’s points say, over the true mean'],
      ['\\bar E_\\mathrm{grid}', 'modelled mean of the grid’s points, mW/cm²'],
      ['\\bar E', 'modelled mean over the whole LED-area rectangle at that distance, mW/cm²'],
    ],
    constants: [],
    file: 'src/measure/beam/results.ts',
  },
  {
    id: 'capture',
    name: 'Capture',
    unit: '%',
    formula: '\\kappa=\\frac{\\bar E\\,A}{1000\\,\\Phi}',
    symbols: [
      ['\\kappa', 'share of the emitted light that passes through the LED-area rectangle at the measuring distance'],
      ['\\bar E', 'modelled mean irradiance over that rectangle, mW/cm²'],
      ['A', 'LED area, cm²'],
      ['\\Phi', 'emitted power, W'],
    ],
    constants: [],
    file: 'src/measure/beam/results.ts',
  },
  {
    id: 'emitted-power',
    name: 'Emitted power',
    unit: 'W',
    formula: '\\Phi=\\frac{P\\,(1-s)}{b\\,\\kappa}',
    symbols: [
      ['\\Phi', 'light that leaves all LEDs together, both channels on, W'],
      ['P', 'optical power at the reference plane, W'],
      [
        's',
        'share of the grid’s mean that is not light straight from the panel: what the room gives back, and what readings are off by',
      ],
      ['b', 'sampling bias of the grid, as a factor'],
      ['\\kappa', 'capture, as a factor'],
    ],
    constants: [
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
    file: 'src/measure/beam/estimate.ts',
  },
  {
    id: 'efficiency-emitted',
    name: 'Efficiency on the emitted power',
    unit: '%',
    formula: '\\eta_\\Phi=\\frac{\\Phi}{W}',
    symbols: [
      ['\\Phi', 'emitted power, both channels on, W'],
      ['W', 'mains draw, both channels on, W'],
    ],
    constants: [],
    file: 'src/measure/beam/figures.ts',
  },
  {
    id: 'price-per-emitted-watt',
    name: 'Price per emitted watt',
    unit: 'currency/W',
    formula: 'c_\\Phi=\\frac{C}{\\Phi}',
    symbols: [
      ['C', 'price really paid, base currency'],
      ['\\Phi', 'emitted power, W'],
    ],
    constants: [],
    file: 'src/measure/beam/figures.ts',
  },
  {
    id: 'distance-table',
    name: 'Irradiance by distance',
    unit: 'mW/cm²',
    formula: 'E(x,y,z)=1000\\sum_k w_k\\,\\frac{m_k+1}{2\\pi}\\sum_i\\Phi_i\\,\\frac{z^{m_k+1}}{r_i^{\\,m_k+3}}',
    symbols: [
      ['E', 'irradiance on a plane parallel to the panel, mW/cm²'],
      ['z', 'distance from the LED plane, cm'],
      ['r_i', 'distance from LED i, cm'],
      ['\\Phi_i', 'power of LED i; all together the emitted power, W'],
      ['w_k, m_k', 'power and order of part k of the beam, for each W'],
    ],
    constants: [
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
    file: 'src/measure/beam/plane-model.ts',
  },
];
