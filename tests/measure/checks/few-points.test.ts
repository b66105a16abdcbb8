import { expect, test } from 'vitest';
import { FEWEST_POINTS, fewPoints } from '../../../src/measure/checks/few-points.ts';
import { facts } from './facts.ts';

const found = (gridPoints: Array<number | null>) => fewPoints.run(facts({ gridPoints }));

test(`a grid of fewer than ${FEWEST_POINTS} points is in doubt, and with it what its mean is for`, () => {
  expect(found([50])).toEqual([
    {
      severity: 'doubt',
      finding: { code: 'grid-few-points', count: 1, fewest: 4 },
      concerns: ['mean-irradiance'],
      at: ['session', 'grid', 'rows'],
    },
  ]);
  expect(found([50, null, 50])).toMatchObject([{ finding: { count: 3 } }]);
});

test('one of as many is not, nor where there is no grid at all', () => {
  expect(found([50, 50, 50, 50])).toEqual([]);
  // Most of it is still to be read.
  expect(found([50, null, null, null, null, null, null, null, null])).toEqual([]);
  expect(found([])).toEqual([]);
  expect(found([null, null])).toEqual([]);
});
