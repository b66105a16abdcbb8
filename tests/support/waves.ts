import type { TimeSeries } from '../../src/measure/log/series.ts';
import { seededRandom } from '../../src/measure/random.ts';

/** A series of a function of time, evenly sampled, with noise. */
export function seriesOf(
  light: (seconds: number) => number,
  { rate, samples, noise = 0, seed = 1 }: { rate: number; samples: number; noise?: number; seed?: number },
): TimeSeries {
  const random = seededRandom(seed);
  const times = new Float64Array(samples).map((_, i) => i / rate);
  return { times, values: times.map((t) => light(t) + noise * random.normal()) };
}

const turn = (x: number) => x - Math.floor(x);

/** A wave: its light over one period, its modulation depth in % and its flicker index. */
export interface Wave {
  name: string;
  light: (turns: number) => number;
  depth: number;
  index: number;
}

/**
 * Values in closed form. Rectified sines: with mean m the wave is above it between a and b; the area there, less m (b - a), over
 * the whole. Recomputed by quadrature in the tests.
 */
export const WAVES: readonly Wave[] = [
  { name: '1 + sin', light: (x) => 1 + Math.sin(2 * Math.PI * x), depth: 100, index: 1 / Math.PI },
  { name: '1 + sin / 2', light: (x) => 1 + 0.5 * Math.sin(2 * Math.PI * x), depth: 50, index: 0.5 / Math.PI },
  { name: 'full-wave rectified sine', light: (x) => Math.abs(Math.sin(Math.PI * x)), depth: 100, index: 0.210514 },
  {
    name: 'half-wave rectified sine',
    light: (x) => Math.max(0, Math.sin(2 * Math.PI * x)),
    depth: 100,
    index: 0.551102,
  },
  { name: 'square', light: (x) => (turn(x) < 0.5 ? 1 : 0), depth: 100, index: 0.5 },
  { name: 'pulses of a quarter', light: (x) => (turn(x) < 0.25 ? 1 : 0), depth: 100, index: 0.75 },
  { name: 'triangle', light: (x) => 1 - Math.abs(2 * turn(x) - 1), depth: 100, index: 0.25 },
  { name: 'square between 1 and 0.6', light: (x) => (turn(x) < 0.5 ? 1 : 0.6), depth: 25, index: 0.125 },
];
