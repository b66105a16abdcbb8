import { type MethodPage, onAndOff, perMode, rows } from './rows.ts';

/* What the use of a panel brings with it: cost, exposure, colours, flicker, fields and sound. */

/** Versions of these methods. */
export const USE_VERSIONS = {
  'running-cost': 1,
  'radiant-exposure': 2,
  flicker: 1,
  'magnetic-field': 1,
  'electric-field': 1,
  'radio-field': 1,
  sound: 2,
} as const;

/** The pages of these methods. */
export const USE_METHODS = {
  'running-cost': {
    name: 'Cost of one hour',
    unit: 'currency/h',
    formula: 'c_h=\\frac{W}{1000}\\,T',
    symbols: [
      ['W', 'mains draw with both channels on, W'],
      ['T', 'tariff of the guide, base currency per kWh'],
    ],
    file: 'src/measure/money/running-cost.ts',
  },
  'radiant-exposure': {
    name: 'Radiant exposure and time',
    unit: 'J/cm²',
    formula: 'H=\\frac{E\\,t}{1000},\\qquad t=\\frac{1000\\,H}{E}',
    symbols: [
      ['H', 'radiant exposure at the surface, J/cm²'],
      ['E', 'irradiance at the surface, mW/cm²'],
      ['t', 'time, s'],
    ],
    file: 'src/measure/irradiance/radiant-exposure-figures.ts',
  },
  flicker: {
    name: 'Flicker',
    unit: '%',
    formula: 'M=100\\,\\frac{E_\\mathrm{max}-E_\\mathrm{min}}{E_\\mathrm{max}+E_\\mathrm{min}}',
    symbols: [
      ['M', 'modulation depth (percent flicker), %'],
      ['E_\\mathrm{max},E_\\mathrm{min}', 'highest and lowest value over a period'],
    ],
    file: 'src/ledger/reading-figures.ts',
  },
  'magnetic-field': { name: 'Magnetic field', unit: 'µT', file: 'src/ledger/reading-figures.ts' },
  'electric-field': { name: 'Electric field', unit: 'V/m', file: 'src/ledger/reading-figures.ts' },
  'radio-field': { name: 'Radio field', unit: 'mW/m²', file: 'src/ledger/reading-figures.ts' },
  sound: { name: 'Sound', unit: 'dB(A)', file: 'src/ledger/reading-figures.ts' },
} as const satisfies Record<keyof typeof USE_VERSIONS, MethodPage>;

/** These metrics, in the order of the calculation page. */
export const USE_METRICS = /* @__PURE__ */ rows(() => [
  {
    id: 'running-cost',
    name: 'Cost of one hour',
    method: 'running-cost',
    unit: 'currency/h',
    panelPage: { key: 70, times: 40 },
  },
  {
    id: 'radiant-exposure-minute',
    name: 'Radiant exposure each minute',
    method: 'radiant-exposure',
    unit: 'J/cm²',
    panelPage: { times: 10 },
  },
  {
    id: 'time-per-joule',
    name: 'Time for each 1 J/cm²',
    method: 'radiant-exposure',
    unit: 's',
    panelPage: { times: 20 },
  },
  { id: 'wavelength-red', name: 'Peak wavelength, red', method: 'wavelength', unit: 'nm', panelPage: { times: 50 } },
  {
    id: 'wavelength-near-infrared',
    name: 'Peak wavelength, near-infrared',
    method: 'wavelength',
    unit: 'nm',
    panelPage: { times: 70 },
  },
  { id: 'fwhm-red', name: 'Width at half maximum, red', method: 'wavelength', unit: 'nm', panelPage: { times: 60 } },
  {
    id: 'fwhm-near-infrared',
    name: 'Width at half maximum, near-infrared',
    method: 'wavelength',
    unit: 'nm',
    panelPage: { times: 80 },
  },
  ...perMode('flicker', 'Flicker', 'flicker', '%', '', {
    ranking: { key: 'flicker', label: 'Flicker', first: 'ascending', place: { optical: 100 } },
  }),
  ...perMode('flicker-frequency', 'Flicker frequency', 'flicker', 'Hz', ''),
  ...onAndOff('magnetic-field', 'Magnetic field', 'µT', {
    filter: { key: 'magnetic', label: 'Magnetic field, on', ends: 'upper', place: 40 },
  }),
  { id: 'magnetic-field-frequency', name: 'Magnetic field, frequency', method: 'magnetic-field', unit: 'Hz' },
  ...onAndOff('electric-field', 'Electric field', 'V/m'),
  { id: 'electric-field-frequency', name: 'Electric field, frequency', method: 'electric-field', unit: 'Hz' },
  ...onAndOff('radio-field', 'Radio field', 'mW/m²'),
  ...onAndOff('sound', 'Sound', 'dB(A)', {
    filter: { key: 'sound', label: 'Sound, on', ends: 'upper', place: 50 },
  }),
]);
