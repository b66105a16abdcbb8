import { describe, expect, test } from 'vitest';
import { exponentialFit } from '../../../src/measure/log/exponential-fit.ts';
import { type Model, nonlinearFit } from '../../../src/measure/log/nonlinear-fit.ts';

/** y = b1 (1 - exp(-b2 x)) */
const SATURATION: Model = {
  curve:
    ([b1 = 0, b2 = 0]) =>
    (x) =>
      b1 * (1 - Math.exp(-b2 * x)),
  derivatives:
    ([b1 = 0, b2 = 0]) =>
    (x) => [1 - Math.exp(-b2 * x), b1 * x * Math.exp(-b2 * x)],
};

/*
 * NIST Statistical Reference Datasets, nonlinear regression, Misra1a (D. Misra, monomolecular adsorption): data, starts and
 * certified values from memory. That they belong together shows here: values of eleven digits do not come out by chance.
 */
const MISRA1A = {
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
};

describe('a curve by least squares', () => {
  test.each([
    [500, 1e-4],
    [250, 5e-4],
  ])('has the certified values of Misra1a, from %f and %f', (b1, b2) => {
    const fit = nonlinearFit(MISRA1A.x, MISRA1A.y, SATURATION, [b1, b2]);
    expect(fit?.parameters[0]).toBeCloseTo(238.94212918, 7);
    expect(fit?.parameters[1]).toBeCloseTo(5.5015643181e-4, 13);
    expect(fit?.standardErrors[0]).toBeCloseTo(2.7070075241, 7);
    expect(fit?.standardErrors[1]).toBeCloseTo(7.2668688436e-6, 13);
    expect(fit?.residualDeviation).toBeCloseTo(0.1018787633, 9);
  });

  test('is not there where the points say nothing of a parameter', () => {
    expect(nonlinearFit([1, 2], [1, 2], SATURATION, [1, 1])).toBeUndefined();
    expect(nonlinearFit([0, 0, 0], [1, 2, 3], SATURATION, [1, 1])).toBeUndefined();
  });
});

test('an exponential has the parameters and errors that scipy 1.17 (curve_fit) finds', () => {
  const points = Array.from({ length: 30 }, (_, i) => ({
    time: 2 * i,
    mean: 80 + 5 * Math.exp((-2 * i) / 11) + 0.1 * Math.sin(7.3 * 2 * i),
    samples: 1,
  }));
  expect(exponentialFit(points)).toMatchObject({
    settled: expect.closeTo(80.00743647, 5),
    excess: expect.closeTo(5.01213918, 5),
    constant: expect.closeTo(10.91395242, 5),
    settledUncertainty: expect.closeTo(0.0241187, 5),
    constantUncertainty: expect.closeTo(0.256276, 5),
  });
});
