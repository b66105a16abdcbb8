import type { MetricId } from '../measure/metrics.ts';
import { nameOf } from './names.ts';

/**
 * What a reader calls a metric, in small letters as within a sentence: on the guide, the panels' pages, the comparison and
 * the plan. The trade's term is the metric's name, which stands on its method page, its calculation and in the data files.
 */
const PLAIN_NAMES: Readonly<Partial<Record<MetricId, string>>> = {
  'price-per-watt': 'a watt of light',
  'price-per-emitted-watt': 'a watt that leaves the LEDs',
  'real-price': 'price',
  'optical-power': 'light',
  'emitted-power': 'light that leaves the LEDs',
  'mean-irradiance': 'mean',
  'peak-irradiance-combined': 'peak',
  'uniformity-lowest': 'evenness',
  'efficiency-combined': 'efficiency',
  'efficiency-emitted': 'efficiency of all the light',
  'mains-draw-combined': 'mains draw',
  'running-cost': 'electricity',
  'flicker-combined': 'flicker',
  'led-area': 'LED area',
  'beam-half-angle': 'half-angle of the beam',
  capture: 'share in the frame',
  'sound-on': 'sound',
  'magnetic-field-on': 'magnetic field',
  'electric-field-on': 'electric field',
  'radio-field-on': 'radio field',
};

/** The name of a metric in a reader's words; the metric's own where there is none plainer. */
export function plainName(metric: MetricId): string {
  return PLAIN_NAMES[metric] ?? nameOf(metric);
}
