import { expect, test } from 'vitest';
import type { Statement } from '../../../src/measure/statement.ts';
import { say } from '../../../src/words/say.ts';

const CASES: ReadonlyArray<readonly [Statement, string]> = [
  [
    { code: 'distance-as-set', halfWidth: 0.2, distance: 15.24, exponent: 0.5763 },
    '±0.2 cm at 15.24 cm, rectangular; irradiance falls as distance to the power 0.58 here',
  ],
  [{ code: 'edge-setting', side: 'width' }, 'Setting on the edges (width)'],
  [{ code: 'edges-as-set', halfWidth: 0.3 }, '±0.3 cm at each of two edges, rectangular'],
  [{ code: 'grid-all-rejected' }, 'every reading of the grid was struck out'],
  [{ code: 'grid-points-empty', empty: 1, of: 9 }, '1 of 9 grid points without a kept reading'],
  [
    { code: 'repeats-pooled', standardDeviation: 0.41234, degreesOfFreedom: 8 },
    's = 0.412 mW/cm² pooled over repeats at a point, 8 degrees of freedom',
  ],
  [
    { code: 'cell-mean-calculation', shares: [0.08544, 0.12137, 0.08544], mean: 92.4317 },
    'Ē = Σ (cell share × reading), shares 0.0854, 0.121 = 92.43 mW/cm²',
  ],
];

test.each(CASES.map(([it, words]) => [it.code, it, words] as const))('%s', (_, it, words) => {
  expect(say(it)).toBe(words);
});
