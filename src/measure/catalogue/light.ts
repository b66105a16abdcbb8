import { type MethodPage, perMode, rows } from './rows.ts';

/* The light at the reference plane, what it is drawn from, and what it costs. */

/** Versions of these methods. */
export const LIGHT_VERSIONS = {
  wavelength: 1,
  'peak-irradiance': 3,
  'mean-irradiance': 4,
  uniformity: 2,
  'peak-to-mean': 1,
  'led-area': 1,
  'optical-power': 1,
  'real-price': 1,
  'price-per-watt': 2,
  'mains-draw': 1,
  efficiency: 2,
} as const;

/** The pages of these methods. */
export const LIGHT_METHODS = {
  wavelength: {
    name: 'Peak wavelength',
    unit: 'nm',
    formula: '\\lambda_p=\\arg\\max_\\lambda S(\\lambda)',
    symbols: [
      ['\\lambda_p', 'peak wavelength of one mode, nm'],
      ['S(\\lambda)', 'spectral reading after the dark reading is subtracted'],
    ],
    file: 'src/ledger/reading-figures.ts',
  },
  'peak-irradiance': {
    name: 'Peak irradiance',
    unit: 'mW/cm²',
    formula: 'E_\\mathrm{peak}=F\\,\\max_{(x,y)}E(x,y)\\;\\text{at}\\;d',
    symbols: [
      ['E_\\mathrm{peak}', 'from the highest steady reading of a sweep over the panel, mW/cm²'],
      ['F', 'spectral mismatch factor of the meter; 1 where no spectrum tells it'],
      ['d', 'distance from the LED plane to the sensor, cm'],
    ],
    file: 'src/ledger/reading-figures.ts',
  },
  'mean-irradiance': {
    name: 'Mean irradiance',
    unit: 'mW/cm²',
    formula: '\\bar E=\\frac{F}{n}\\sum_{j=1}^{n}E_j',
    symbols: [
      ['\\bar E', 'mean irradiance of the grid at the measuring distance, mW/cm²'],
      ['E_j', 'mean of the readings kept at grid point j, mW/cm²'],
      ['F', 'spectral mismatch factor of the meter; 1 where no spectrum tells it'],
      ['n', 'number of grid points with a kept reading'],
    ],
    file: 'src/measure/irradiance/grid.ts',
  },
  uniformity: {
    name: 'Uniformity',
    unit: '%',
    formula:
      'U_0=\\frac{E_\\mathrm{min}}{\\bar E},\\qquad \\frac{E_\\mathrm{max}}{\\bar E},\\qquad \\mathrm{CV}=\\frac{s}{\\bar E}',
    symbols: [
      ['U_0', 'lowest grid point over the mean of the grid'],
      ['E_\\mathrm{min},E_\\mathrm{max}', 'lowest and highest grid point, mW/cm²'],
      ['s', 'sample standard deviation over the grid points (n − 1), mW/cm²'],
      ['\\bar E', 'mean irradiance of the grid, mW/cm²'],
    ],
    file: 'src/measure/irradiance/uniformity.ts',
  },
  'peak-to-mean': {
    name: 'Peak to mean',
    unit: '1',
    formula: 'R=\\frac{E_\\mathrm{peak}}{\\bar E}',
    symbols: [
      ['E_\\mathrm{peak}', 'peak irradiance with both channels on, mW/cm²'],
      ['\\bar E', 'mean irradiance of the grid, mW/cm²'],
    ],
    file: 'src/measure/irradiance/optical-power.ts',
  },
  'led-area': {
    name: 'LED area',
    unit: 'cm²',
    formula: 'A=w\\,h',
    symbols: [
      ['w', 'width from the outer edge of the first LED to the outer edge of the last, cm'],
      ['h', 'height, likewise, cm'],
    ],
    file: 'src/measure/irradiance/optical-power.ts',
  },
  'optical-power': {
    name: 'Optical power at the reference plane',
    unit: 'W',
    formula: 'P=\\frac{\\bar E\\,A}{1000}',
    symbols: [
      ['P', 'optical power through the LED-area rectangle at the measuring distance, W'],
      ['\\bar E', 'mean irradiance of the grid, mW/cm²'],
      ['A', 'LED area, cm²'],
    ],
    file: 'src/measure/irradiance/optical-power.ts',
  },
  'real-price': {
    name: 'Price really paid',
    unit: 'currency',
    formula: 'C=C_\\mathrm{paid}\\,r',
    symbols: [
      [
        'C_\\mathrm{paid}',
        'newest dated price that any buyer can pay, in the currency it was asked in; the list price where none is recorded',
      ],
      ['r', 'dated rate of the guide to its base currency; 1 where they are the same'],
    ],
    file: 'src/measure/money/price.ts',
  },
  'price-per-watt': {
    name: 'Price per optical watt',
    unit: 'currency/W',
    formula: 'c=\\frac{C}{P}',
    symbols: [
      ['C', 'price really paid, base currency'],
      ['P', 'optical power at the reference plane, W'],
    ],
    file: 'src/measure/money/price.ts',
  },
  'mains-draw': { name: 'Mains draw', unit: 'W', file: 'src/ledger/reading-figures.ts' },
  efficiency: {
    name: 'Efficiency',
    unit: '%',
    formula:
      '\\eta=\\frac{P_\\mathrm{mode}}{W_\\mathrm{mode}},\\qquad \\eta_\\mathrm{net}=\\frac{P_\\mathrm{mode}}{W_\\mathrm{mode}-W_\\mathrm{standby}},\\qquad P_\\mathrm{mode}=P\\,\\frac{E_\\mathrm{peak,mode}}{E_\\mathrm{peak,combined}}',
    symbols: [
      ['P', 'optical power at the reference plane, both channels on, W'],
      ['P_\\mathrm{mode}', 'the same for one mode, scaled by the peaks, W'],
      ['W_\\mathrm{mode}', 'input power: the mains draw in that mode, W'],
      ['W_\\mathrm{standby}', 'mains draw in standby, W'],
    ],
    file: 'src/measure/irradiance/efficiency.ts',
  },
} as const satisfies Record<keyof typeof LIGHT_VERSIONS, MethodPage>;

/** These metrics, in the order of the calculation page. */
export const LIGHT_METRICS = /* @__PURE__ */ rows(() => [
  {
    id: 'optical-power',
    name: 'Optical power at the reference plane',
    method: 'optical-power',
    unit: 'W',
    ranking: { key: 'optical-power', label: 'Light', first: 'descending', place: { optical: 40 } },
    panelPage: { key: 20 },
    filter: { key: 'power', label: 'Optical power', ends: 'both', place: 20 },
  },
  {
    id: 'real-price',
    name: 'Price really paid',
    method: 'real-price',
    unit: 'currency',
    ranking: {
      key: 'price',
      label: 'Price',
      unitWords: '',
      first: 'ascending',
      place: { optical: 30, emitted: 30 },
    },
    panelPage: { key: 30 },
    filter: { key: 'price', label: 'Price', ends: 'both', place: 10 },
  },
  {
    id: 'price-per-watt',
    name: 'Price per optical watt',
    method: 'price-per-watt',
    unit: 'currency/W',
    ranking: {
      key: 'price-per-watt',
      label: 'currency a watt',
      unitWords: '',
      first: 'ascending',
      place: { optical: 20 },
    },
    panelPage: { key: 10 },
  },
  {
    id: 'mean-irradiance',
    name: 'Mean irradiance',
    method: 'mean-irradiance',
    unit: 'mW/cm²',
    ranking: { key: 'mean', label: 'Mean', first: 'descending', place: { optical: 70 } },
    panelPage: { key: 40, spread: 10 },
    filter: { key: 'mean', label: 'Mean irradiance', ends: 'both', place: 30 },
  },
  {
    id: 'mean-irradiance-by-cells',
    name: 'Mean irradiance, weighted by cells',
    method: 'mean-irradiance',
    unit: 'mW/cm²',
    panelPage: { spread: 20 },
  },
  ...perMode('peak-irradiance', 'Peak irradiance', 'peak-irradiance', 'mW/cm²', '', {
    ranking: { key: 'peak', label: 'Peak', first: 'descending', place: { optical: 80 } },
    panelPage: { key: 50 },
  }),
  { id: 'peak-to-mean', name: 'Peak to mean', method: 'peak-to-mean', unit: '1', panelPage: { spread: 60 } },
  {
    id: 'uniformity-lowest',
    name: 'Lowest point over mean',
    method: 'uniformity',
    unit: '%',
    ranking: {
      key: 'uniformity',
      label: 'Evenness',
      first: 'descending',
      place: { optical: 90 },
    },
    panelPage: { spread: 30 },
  },
  {
    id: 'uniformity-highest',
    name: 'Highest point over mean',
    method: 'uniformity',
    unit: '%',
    panelPage: { spread: 40 },
  },
  {
    id: 'uniformity-variation',
    name: 'Variation over the points',
    method: 'uniformity',
    unit: '%',
    panelPage: { spread: 50 },
  },
  { id: 'field-width', name: 'Width of the LED field', method: 'led-area', unit: 'cm' },
  { id: 'field-height', name: 'Height of the LED field', method: 'led-area', unit: 'cm' },
  { id: 'led-area', name: 'LED area', method: 'led-area', unit: 'cm²', panelPage: { key: 80 } },
  ...perMode('mains-draw', 'Mains draw', 'mains-draw', 'W', ''),
  {
    id: 'mains-draw-standby',
    name: 'Mains draw, standby',
    method: 'mains-draw',
    unit: 'W',
    panelPage: { times: 30 },
  },
  ...perMode('efficiency', 'Efficiency', 'efficiency', '%', '', {
    ranking: { key: 'efficiency', label: 'Efficiency', first: 'descending', place: { optical: 60 } },
    panelPage: { key: 60 },
  }),
  ...perMode('efficiency', 'Efficiency less standby', 'efficiency', '%', '-net'),
]);

/** Figures that others are made of or compared by; they stand in no list of a panel's figures. */
export const INNER_METRICS = ['net-draw', 'optical-power-change', 'step-up', 'step-up-power', 'power'] as const;
