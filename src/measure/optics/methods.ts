import type { MethodEntry } from '../methods.ts';
import { USUAL_HALF_GAP } from './assumed-emitter.ts';
import { NARROWEST_HALF_ANGLE, WIDEST_HALF_ANGLE } from './beam.ts';
import { BODY_WIDTH, EVEN_FROM } from './body-map.ts';
import { FARTHEST_PLANE, NEAREST_PLANE } from './gaussian-sum.ts';
import { CLAIM_UNCERTAINTY, LARGEST_RESIDUAL, MODEL_UNCERTAINTY, RIVAL, SMALLEST_PROBABILITY } from './order-fit.ts';
import { OPTICS_DRAWS } from './simulate.ts';

const percent = (share: number) => Number((100 * share).toPrecision(4));

/** The methods of the optics model, for the registry. */
export const OPTICS_METHODS: readonly MethodEntry[] = [
  {
    id: 'beam-half-angle',
    name: 'Beam half-angle',
    unit: '°',
    formula:
      '\\hat m=\\arg\\min_m\\,\\mathbf r^{\\mathsf T}\\mathbf W\\,\\mathbf r,\\qquad r_j=\\ln E_j-\\ln g_j(m),\\qquad \\theta=\\arccos 2^{-1/\\hat m}',
    symbols: [
      ['\\theta', 'angle from an LED’s axis at which its intensity has fallen to a half, degrees'],
      ['m', 'order of the beam: intensity falls as the m-th power of the cosine'],
      ['E_j', 'reading j of the sweep or of the grid, mW/cm²'],
      ['g_j(m)', 'what the model gives there for 1 W, mW/cm²'],
      ['\\mathbf W', 'inverse covariance of the logarithms, with a common factor left free'],
    ],
    constants: [
      { name: 'narrowest half-angle', value: NARROWEST_HALF_ANGLE, unit: '°', why: 'our own choice' },
      { name: 'widest half-angle', value: WIDEST_HALF_ANGLE, unit: '°', why: 'our own choice' },
      {
        name: 'standard uncertainty of a claimed angle',
        value: percent(CLAIM_UNCERTAINTY),
        unit: '%',
        why: 'our own choice: data sheets print typical values only',
      },
      {
        name: 'model error at each reading',
        value: percent(MODEL_UNCERTAINTY),
        unit: '%',
        why: 'our own choice: LEDs differ, and a probe stands some millimetres aside',
      },
      {
        name: 'no beam explains more than',
        value: percent(LARGEST_RESIDUAL),
        unit: '% left over (root of the mean square)',
        why: 'our own choice',
      },
      {
        name: 'nor a chi-square rarer than',
        value: percent(SMALLEST_PROBABILITY),
        unit: '%',
        why: 'our own choice',
      },
      {
        name: 'a second beam is a rival within',
        value: RIVAL,
        unit: 'of chi-square',
        why: 'our own choice: three sigma',
      },
    ],
    file: 'src/measure/optics/order-fit.ts',
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
    file: 'src/measure/optics/plane-values.ts',
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
    file: 'src/measure/optics/plane-values.ts',
  },
  {
    id: 'emitted-power',
    name: 'Emitted power',
    unit: 'W',
    formula: '\\Phi=\\frac{P}{b\\,\\kappa}',
    symbols: [
      ['\\Phi', 'light that leaves all LEDs together, both channels on, W'],
      ['P', 'optical power at the reference plane, W'],
      ['b', 'sampling bias of the grid, as a factor'],
      ['\\kappa', 'capture, as a factor'],
    ],
    constants: [
      { name: 'draws of the simulation', value: OPTICS_DRAWS, unit: '1', why: 'about 40 draws in each 2.5 % tail' },
      {
        name: 'light reaches past the field’s edge',
        value: USUAL_HALF_GAP,
        unit: 'cm',
        why: 'our own choice: half of a usual gap between LEDs, give or take all of it, where they are not counted',
      },
    ],
    file: 'src/measure/optics/estimate.ts',
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
    file: 'src/measure/optics/figures.ts',
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
    file: 'src/measure/optics/figures.ts',
  },
  {
    id: 'distance-table',
    name: 'Irradiance by distance',
    unit: 'mW/cm²',
    formula: 'E(x,y,z)=1000\\,\\frac{m+1}{2\\pi}\\sum_i\\Phi_i\\,\\frac{z^{m+1}}{r_i^{\\,m+3}}',
    symbols: [
      ['E', 'irradiance on a plane parallel to the panel, mW/cm²'],
      ['z', 'distance from the LED plane, cm'],
      ['r_i', 'distance from LED i, cm'],
      ['\\Phi_i', 'power of LED i; all together the emitted power, W'],
      ['m', 'order of the beam'],
    ],
    constants: [
      {
        name: 'nearest plane',
        value: NEAREST_PLANE,
        unit: 'cm',
        why: 'our own choice; nearer than one pitch of the LEDs no figure of the model is to be trusted',
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
    file: 'src/measure/optics/plane-model.ts',
  },
];
