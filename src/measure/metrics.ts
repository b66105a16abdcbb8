import { distanceMetric, TABLE_DISTANCES } from './beam/table-distances.ts';
import { EXPOSURE_METRICS } from './exposure/metrics.ts';

/** A figure that a panel can have, whoever the panel is. Its id is its anchor on the working page. */
export interface Metric {
  /** Never reused for something else. */
  id: string;
  name: string;
  /** Id of the method that explains it (methods.ts). */
  method: string;
  /** Canonical unit; `currency` stands for the guide's base currency. */
  unit: string;
}

const MODES = [
  ['combined', 'both channels'],
  ['red', 'red alone'],
  ['near-infrared', 'near-infrared alone'],
] as const;

const perMode = (id: string, name: string, method: string, unit: string, ending = ''): Metric[] =>
  MODES.map(([mode, words]) => ({ id: `${id}-${mode}${ending}`, name: `${name}, ${words}`, method, unit }));

const onAndOff = (id: string, name: string, unit: string): Metric[] => [
  { id: `${id}-on`, name: `${name}, panel on`, method: id, unit },
  { id: `${id}-off`, name: `${name}, panel off`, method: id, unit },
];

const atDistance = (distance: number): Metric[] => [
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
];

/** Every metric, in the order in which a panel's working shows them. */
export const METRICS: readonly Metric[] = [
  { id: 'optical-power', name: 'Optical power at the reference plane', method: 'optical-power', unit: 'W' },
  { id: 'real-price', name: 'Price really paid', method: 'real-price', unit: 'currency' },
  { id: 'price-per-watt', name: 'Price per optical watt', method: 'price-per-watt', unit: 'currency/W' },
  { id: 'mean-irradiance', name: 'Mean irradiance', method: 'mean-irradiance', unit: 'mW/cm²' },
  {
    id: 'mean-irradiance-by-cells',
    name: 'Mean irradiance, weighted by cells',
    method: 'mean-irradiance',
    unit: 'mW/cm²',
  },
  ...perMode('peak-irradiance', 'Peak irradiance', 'peak-irradiance', 'mW/cm²'),
  { id: 'peak-to-mean', name: 'Peak to mean', method: 'peak-to-mean', unit: '1' },
  { id: 'uniformity-lowest', name: 'Lowest point over mean', method: 'uniformity', unit: '%' },
  { id: 'uniformity-highest', name: 'Highest point over mean', method: 'uniformity', unit: '%' },
  { id: 'uniformity-variation', name: 'Variation over the points', method: 'uniformity', unit: '%' },
  { id: 'field-width', name: 'Width of the LED field', method: 'led-area', unit: 'cm' },
  { id: 'field-height', name: 'Height of the LED field', method: 'led-area', unit: 'cm' },
  { id: 'led-area', name: 'LED area', method: 'led-area', unit: 'cm²' },
  ...perMode('mains-draw', 'Mains draw', 'mains-draw', 'W'),
  { id: 'mains-draw-standby', name: 'Mains draw, standby', method: 'mains-draw', unit: 'W' },
  ...perMode('efficiency', 'Efficiency', 'efficiency', '%'),
  ...perMode('efficiency', 'Efficiency less standby', 'efficiency', '%', '-net'),
  { id: 'emitted-power', name: 'Emitted power', method: 'emitted-power', unit: 'W' },
  {
    id: 'price-per-emitted-watt',
    name: 'Price per emitted watt',
    method: 'price-per-emitted-watt',
    unit: 'currency/W',
  },
  { id: 'efficiency-emitted', name: 'Efficiency on the emitted power', method: 'efficiency-emitted', unit: '%' },
  { id: 'beam-half-angle', name: 'Beam half-angle', method: 'beam-half-angle', unit: '°' },
  { id: 'capture', name: 'Capture', method: 'capture', unit: '%' },
  { id: 'sampling-bias', name: 'Sampling bias of the grid', method: 'sampling-bias', unit: '%' },
  ...TABLE_DISTANCES.flatMap(atDistance),
  { id: 'running-cost', name: 'Cost of one hour', method: 'running-cost', unit: 'currency/h' },
  { id: 'radiant-exposure-minute', name: 'Radiant exposure each minute', method: 'radiant-exposure', unit: 'J/cm²' },
  { id: 'time-per-joule', name: 'Time for each 1 J/cm²', method: 'radiant-exposure', unit: 's' },
  { id: 'wavelength-red', name: 'Peak wavelength, red', method: 'wavelength', unit: 'nm' },
  { id: 'wavelength-near-infrared', name: 'Peak wavelength, near-infrared', method: 'wavelength', unit: 'nm' },
  { id: 'fwhm-red', name: 'Width at half maximum, red', method: 'wavelength', unit: 'nm' },
  { id: 'fwhm-near-infrared', name: 'Width at half maximum, near-infrared', method: 'wavelength', unit: 'nm' },
  ...perMode('flicker', 'Flicker', 'flicker', '%'),
  ...perMode('flicker-frequency', 'Flicker frequency', 'flicker', 'Hz'),
  ...onAndOff('magnetic-field', 'Magnetic field', 'µT'),
  { id: 'magnetic-field-frequency', name: 'Magnetic field, frequency', method: 'magnetic-field', unit: 'Hz' },
  ...onAndOff('electric-field', 'Electric field', 'V/m'),
  { id: 'electric-field-frequency', name: 'Electric field, frequency', method: 'electric-field', unit: 'Hz' },
  ...onAndOff('radio-field', 'Radio field', 'mW/m²'),
  ...onAndOff('sound', 'Sound', 'dB(A)'),
  ...EXPOSURE_METRICS,
];

const byId = new Map(METRICS.map((metric) => [metric.id, metric]));

/** The metric, or an error naming the id: an unknown metric is a fault of the program. */
export function metricById(id: string): Metric {
  const metric = byId.get(id);
  if (!metric) throw new Error(`no metric is registered as "${id}"`);
  return metric;
}
