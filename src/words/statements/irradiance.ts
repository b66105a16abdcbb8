import { number } from '../../measure/numbers.ts';
import type { WordsOf } from '../speaker.ts';

/** What the figures of the grid, of the LED field and of the light's distance have to tell. */
export const IRRADIANCE_WORDS: WordsOf<
  | 'distance-setting'
  | 'distance-as-set'
  | 'edge-setting'
  | 'edges-as-set'
  | 'tape-calibration'
  | 'tape-not-named'
  | 'scaled-by-peaks'
  | 'grid-all-rejected'
  | 'grid-points-empty'
  | 'one-grid-point'
  | 'repeats-at-a-point'
  | 'repeats-pooled'
  | 'repeats-pooled-over-points'
  | 'repeatability-at-each-point'
  | 'cell-mean-calculation'
> = {
  'distance-setting': () => 'Setting of the distance',
  'distance-as-set': ({ halfWidth, distance, exponent }) =>
    `±${halfWidth} cm at ${distance} cm, rectangular; irradiance falls as distance to the power ${exponent.toFixed(2)} here`,
  'edge-setting': ({ side }) => `Setting on the edges (${side})`,
  'edges-as-set': ({ halfWidth }) => `±${halfWidth} cm at each of two edges, rectangular`,
  'tape-calibration': () => 'Calibration of the tape',
  'tape-not-named': () => 'the session does not name it',
  'scaled-by-peaks': () => 'scaled from both channels by the peaks',
  'grid-all-rejected': () => 'every reading of the grid was struck out',
  'grid-points-empty': ({ empty, of }) => `${empty} of ${of} grid points without a kept reading`,
  'one-grid-point': () => 'one grid point only',
  'repeats-at-a-point': () => 'Repeats at a point',
  'repeats-pooled': ({ standardDeviation, degreesOfFreedom }) =>
    `s = ${number(standardDeviation, 3)} mW/cm² pooled over repeats at a point, ${degreesOfFreedom} degrees of freedom`,
  'repeats-pooled-over-points': () => 'pooled over the points with repeats',
  'repeatability-at-each-point': () =>
    'from the instrument file, at each point’s own reading: no repeats in the session',
  'cell-mean-calculation': ({ shares, mean }) =>
    `Ē = Σ (cell share × reading), shares ${[...new Set(shares.map((it) => number(it, 3)))].join(', ')} = ${number(mean)} mW/cm²`,
};
