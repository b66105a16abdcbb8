/** Every sketch by its name, and the methods whose page it opens. */
import type { MethodId } from '../../../measure/method-versions.ts';
import * as figures from './of-figures.ts';
import * as light from './of-light.ts';
import type { Sketch } from './sketch.ts';

/** All sketches. */
export const SKETCHES = {
  frame: light.frame,
  'all-light': light.allLight,
  'nine-points': light.ninePoints,
  beam: light.beam,
  'led-area': light.ledArea,
  peak: light.peak,
  distance: light.distance,
  interval: figures.intervalSketch,
  tie: figures.tie,
  frontier: figures.frontier,
  'step-up': figures.stepUp,
  dose: figures.dose,
  share: figures.share,
  flicker: figures.flicker,
  wavelengths: figures.wavelengths,
  'warm-up': figures.warmUp,
} as const satisfies Record<string, Sketch>;

export type SketchId = keyof typeof SKETCHES;

/** The sketch on a method's page; a method that no picture explains has none. */
export const SKETCH_OF: Readonly<Partial<Record<MethodId, SketchId>>> = {
  'optical-power': 'frame',
  'price-per-watt': 'frame',
  capture: 'frame',
  'emitted-power': 'all-light',
  'price-per-emitted-watt': 'all-light',
  'efficiency-emitted': 'all-light',
  'mean-irradiance': 'nine-points',
  'sampling-bias': 'nine-points',
  'bench-procedure': 'nine-points',
  'beam-half-angle': 'beam',
  'led-area': 'led-area',
  'size-class': 'led-area',
  'peak-irradiance': 'peak',
  'peak-to-mean': 'peak',
  uniformity: 'peak',
  'distance-table': 'distance',
  uncertainty: 'interval',
  rank: 'tie',
  frontier: 'frontier',
  'step-up': 'step-up',
  'radiant-exposure': 'dose',
  'infrared-eye': 'share',
  'skin-heating': 'share',
  'field-levels': 'share',
  'building-biology': 'share',
  flicker: 'flicker',
  'flicker-lines': 'flicker',
  wavelength: 'wavelengths',
  centroid: 'wavelengths',
  'band-shares': 'wavelengths',
  'infrared-sum': 'wavelengths',
  'warm-up': 'warm-up',
};
