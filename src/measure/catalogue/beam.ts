import { distanceMetric, TABLE_DISTANCES } from '../beam/table-distances.ts';
import { type MethodPage, rows } from './rows.ts';

/* The modelled light: what leaves the LEDs, how it spreads, and what it is like at other distances. */

/** Versions of these methods. */
export const BEAM_VERSIONS = {
  'beam-half-angle': 3,
  'sampling-bias': 2,
  capture: 2,
  'emitted-power': 2,
  'efficiency-emitted': 2,
  'price-per-emitted-watt': 2,
  'distance-table': 2,
} as const;

/** The pages of these methods. */
export const BEAM_METHODS = {
  'beam-half-angle': {
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
    file: 'src/measure/beam/beam-prior.ts',
  },
  'sampling-bias': {
    name: 'Sampling bias of the grid',
    unit: '%',
    formula: 'b-1=\\frac{\\bar E_\\mathrm{grid}}{\\bar E}-1',
    symbols: [
      ['b', 'what the grid’s points say, over the true mean'],
      ['\\bar E_\\mathrm{grid}', 'modelled mean of the grid’s points, mW/cm²'],
      ['\\bar E', 'modelled mean over the whole LED-area rectangle at that distance, mW/cm²'],
    ],
    file: 'src/measure/beam/results.ts',
  },
  capture: {
    name: 'Capture',
    unit: '%',
    formula: '\\kappa=\\frac{\\bar E\\,A}{1000\\,\\Phi}',
    symbols: [
      [
        '\\kappa',
        'captured fraction: share of the emitted light that passes through the LED-area rectangle at the measuring distance',
      ],
      ['\\bar E', 'modelled mean irradiance over that rectangle, mW/cm²'],
      ['A', 'LED area, cm²'],
      ['\\Phi', 'emitted power, W'],
    ],
    file: 'src/measure/beam/results.ts',
  },
  'emitted-power': {
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
      ['\\kappa', 'captured fraction: the capture as a factor'],
    ],
    file: 'src/measure/beam/estimate.ts',
  },
  'efficiency-emitted': {
    name: 'Efficiency on the emitted power',
    unit: '%',
    formula: '\\eta_\\Phi=\\frac{\\Phi}{W}',
    symbols: [
      ['\\Phi', 'emitted power, both channels on, W'],
      ['W', 'input power: the mains draw with both channels on, W'],
    ],
    file: 'src/measure/beam/figures.ts',
  },
  'price-per-emitted-watt': {
    name: 'Price per emitted watt',
    unit: 'currency/W',
    formula: 'c_\\Phi=\\frac{C}{\\Phi}',
    symbols: [
      ['C', 'price really paid, base currency'],
      ['\\Phi', 'emitted power, W'],
    ],
    file: 'src/measure/beam/figures.ts',
  },
  'distance-table': {
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
    file: 'src/measure/beam/plane-model.ts',
  },
} as const satisfies Record<keyof typeof BEAM_VERSIONS, MethodPage>;

const atDistance = (distance: number) =>
  [
    {
      id: distanceMetric('mean-irradiance', distance),
      name: `Mean irradiance at ${distance} cm`,
      method: 'distance-table',
      unit: 'mW/cm²',
    },
    {
      id: distanceMetric('peak-irradiance', distance),
      name: `Peak irradiance at ${distance} cm`,
      method: 'distance-table',
      unit: 'mW/cm²',
    },
    {
      id: distanceMetric('uniformity-lowest', distance),
      name: `Lowest place over mean at ${distance} cm`,
      method: 'distance-table',
      unit: '%',
    },
  ] as const;

/** These metrics, in the order of the calculation page. */
export const BEAM_METRICS = /* @__PURE__ */ rows(() => [
  {
    id: 'emitted-power',
    name: 'Emitted power',
    method: 'emitted-power',
    unit: 'W',
    ranking: { key: 'emitted-power', label: 'All light', first: 'descending', place: { emitted: 40 } },
  },
  {
    id: 'price-per-emitted-watt',
    name: 'Price per emitted watt',
    method: 'price-per-emitted-watt',
    unit: 'currency/W',
    ranking: {
      key: 'price-per-emitted-watt',
      label: 'currency a watt',
      unitWords: '',
      first: 'ascending',
      place: { emitted: 20 },
    },
  },
  {
    id: 'efficiency-emitted',
    name: 'Efficiency on the emitted power',
    method: 'efficiency-emitted',
    unit: '%',
    ranking: { key: 'efficiency-emitted', label: 'Efficiency', first: 'descending', place: { emitted: 60 } },
  },
  {
    id: 'beam-half-angle',
    name: 'Beam half-angle',
    method: 'beam-half-angle',
    unit: '°',
    ranking: { key: 'half-angle', label: 'Half-angle', first: 'ascending', place: { emitted: 70 } },
  },
  {
    id: 'capture',
    name: 'Capture',
    method: 'capture',
    unit: '%',
    ranking: { key: 'capture', label: 'In frame', first: 'descending', place: { emitted: 80 } },
  },
  { id: 'sampling-bias', name: 'Sampling bias of the grid', method: 'sampling-bias', unit: '%' },
  ...TABLE_DISTANCES.flatMap(atDistance),
]);
