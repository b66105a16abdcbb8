import { type MethodPage, rows } from './rows.ts';

/* What the file of a spectrum tells besides the peak wavelengths, which are in the list of readings by hand too. */

/** Versions of these methods. */
export const SPECTRUM_VERSIONS = {
  centroid: 1,
  'spectrum-irradiance': 1,
  'band-shares': 1,
  'spectral-mismatch': 2,
  'infrared-sum': 1,
} as const;

const ABOVE_DARK = ['S(\\lambda)', 'spectral reading above its dark level'] as const;

/** The pages of these methods. */
export const SPECTRUM_METHODS = {
  centroid: {
    name: 'Centroid wavelength',
    unit: 'nm',
    formula:
      '\\lambda_c=\\frac{\\int\\lambda\\,S(\\lambda)\\,\\mathrm{d}\\lambda}{\\int S(\\lambda)\\,\\mathrm{d}\\lambda}',
    symbols: [['\\lambda_c', 'centroid wavelength of the highest peak, down to 1 % of its height, nm'], ABOVE_DARK],
    file: 'src/measure/spectrum/spectrum.ts',
  },
  'spectrum-irradiance': {
    name: 'Irradiance from the spectrum',
    unit: 'mW/cm²',
    formula: 'E=\\int S(\\lambda)\\,\\mathrm{d}\\lambda',
    symbols: [
      ['E', 'irradiance over all wavelengths that the instrument sees, mW/cm²'],
      ['S(\\lambda)', 'spectral irradiance above its dark level, mW/cm²/nm'],
    ],
    file: 'src/measure/spectrum/spectrum.ts',
  },
  'band-shares': {
    name: 'Shares of the bands',
    unit: '%',
    formula: 's_b=\\frac{\\int_{b}S(\\lambda)\\,\\mathrm{d}\\lambda}{\\int S(\\lambda)\\,\\mathrm{d}\\lambda}',
    symbols: [['s_b', 'share of the light that lies in a band, %'], ABOVE_DARK],
    file: 'src/measure/spectrum/bands.ts',
  },
  'spectral-mismatch': {
    name: 'Spectral mismatch of the meter',
    unit: '1',
    formula:
      'E=F\\,E_\\mathrm{read},\\qquad F=\\frac{s(\\lambda_\\mathrm{cal})\\int S(\\lambda)\\,\\mathrm{d}\\lambda}{\\int s(\\lambda)\\,S(\\lambda)\\,\\mathrm{d}\\lambda}',
    symbols: [
      ['F', 'spectral mismatch correction factor'],
      ['s(\\lambda)', 'relative spectral responsivity of the broadband meter'],
      ['\\lambda_\\mathrm{cal}', 'wavelength that the meter was calibrated at, nm'],
      ABOVE_DARK,
    ],
    file: 'src/measure/spectrum/mismatch-figure.ts',
  },
  'infrared-sum': {
    name: 'Infrared, 780–3000 nm',
    unit: 'mW/cm²',
    formula: 'E_\\mathrm{IR}=\\int_{780}^{3000}S(\\lambda)\\,\\mathrm{d}\\lambda',
    symbols: [
      ['E_\\mathrm{IR}', 'irradiance from 780 nm to 3000 nm, as far as the instrument sees, mW/cm²'],
      ['S(\\lambda)', 'spectral irradiance above its dark level, mW/cm²/nm'],
    ],
    file: 'src/measure/spectrum/infrared-sum.ts',
  },
} as const satisfies Record<keyof typeof SPECTRUM_VERSIONS, MethodPage>;

/** Rows of a metric that the spectrum of each mode gives. */
function eachMode<const Id extends string, const Method extends string, const U extends string>(
  id: Id,
  name: string,
  method: Method,
  unit: U,
) {
  return [
    { id: `${id}-combined`, name: `${name}, both channels`, method, unit, isOfFiles: true },
    { id: `${id}-red`, name: `${name}, red alone`, method, unit, isOfFiles: true },
    { id: `${id}-near-infrared`, name: `${name}, near-infrared alone`, method, unit, isOfFiles: true },
  ] as const;
}

/** These metrics, in the order of the calculation page. */
export const SPECTRUM_METRICS = /* @__PURE__ */ rows(() => [
  { id: 'centroid-red', name: 'Centroid wavelength, red', method: 'centroid', unit: 'nm', isOfFiles: true },
  {
    id: 'centroid-near-infrared',
    name: 'Centroid wavelength, near-infrared',
    method: 'centroid',
    unit: 'nm',
    isOfFiles: true,
  },
  ...eachMode('spectrum-irradiance', 'Irradiance from the spectrum', 'spectrum-irradiance', 'mW/cm²'),
  ...eachMode('red-share', 'Share of red light', 'band-shares', '%'),
  ...eachMode('near-infrared-share', 'Share of near-infrared light', 'band-shares', '%'),
  ...eachMode('rest-share', 'Share of all other light', 'band-shares', '%'),
  // Until version 2 of their method the corrected peaks stood there, which are the peaks themselves now.
  ...eachMode('mismatch-factor', 'Spectral mismatch factor', 'spectral-mismatch', '1').map((it) => ({
    ...it,
    formerly: it.id.replace('mismatch-factor', 'peak-corrected'),
  })),
  { id: 'infrared-sum', name: 'Infrared from 780 nm', method: 'infrared-sum', unit: 'mW/cm²', isOfFiles: true },
]);
