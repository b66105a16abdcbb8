import type { MethodId } from '../../measure/method-versions.ts';
import { metricById } from '../../measure/metrics.ts';

/** Headings over the figures of the calculation page, in their order. */
export const GROUPS = [
  'Light',
  'Power and price',
  'What leaves the LEDs, by the model of the beam',
  'Exposure, eyes and skin',
  'Flicker',
  'Fields and sound',
] as const;

/** Under which of them a method's figures stand. */
type GroupIndex = 0 | 1 | 2 | 3 | 4 | 5;
const GROUP_OF: Readonly<Partial<Record<MethodId, GroupIndex>>> = {
  'optical-power': 0,
  'mean-irradiance': 0,
  'peak-irradiance': 0,
  'peak-to-mean': 0,
  uniformity: 0,
  'led-area': 0,
  wavelength: 0,
  sweep: 0,
  settling: 0,
  centroid: 0,
  'spectrum-irradiance': 0,
  'band-shares': 0,
  'spectral-mismatch': 0,
  'real-price': 1,
  'price-per-watt': 1,
  'mains-draw': 1,
  efficiency: 1,
  'running-cost': 1,
  'emitted-power': 2,
  'price-per-emitted-watt': 2,
  'efficiency-emitted': 2,
  'beam-half-angle': 2,
  capture: 2,
  'sampling-bias': 2,
  'distance-table': 2,
  'radiant-exposure': 3,
  'infrared-sum': 3,
  'infrared-eye': 3,
  'skin-heating': 3,
  'retinal-hazard': 3,
  flicker: 4,
  'flicker-waveform': 4,
  'flicker-lines': 4,
  'magnetic-field': 5,
  'electric-field': 5,
  'radio-field': 5,
  'field-levels': 5,
  'building-biology': 5,
  sound: 5,
  'sound-of-panel': 5,
  'wall-photo': 0,
  'dot-pattern': 0,
  'sound-clip': 5,
  tones: 5,
};

/** The group of a metric. */
export function groupOf(metric: string): (typeof GROUPS)[number] {
  const { method } = metricById(metric);
  const group = GROUP_OF[method];
  if (group === undefined) throw new Error(`the calculation page has no group for the method "${method}"`);
  return GROUPS[group];
}
