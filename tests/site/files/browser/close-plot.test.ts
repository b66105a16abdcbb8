import { describe, expect, test } from 'vitest';
import { type ClosePlot, nearestIndex, readOut } from '../../../../src/site/files/browser/close-plot.ts';
import { axisTicks, tickText } from '../../../../src/site/files/browser/close-ticks.ts';

const plot: ClosePlot = {
  format: 1,
  title: 'The sound clips',
  x: { name: 'frequency', unit: 'Hz', decimals: 0 },
  y: { name: 'level', unit: 'dB', digits: 3 },
  curves: [
    { name: 'on', x: [100, 200, 400], y: [30, 45.4, 20], high: [30, 47.1, 20] },
    { name: 'off', x: [90, 210], y: [-12.04, -13.7] },
  ],
};

test('a place is read out with its unit, stretches from end to end, and other curves where they are nearest', () => {
  expect(readOut(plot, 1)).toBe('200 Hz: on 45.4 to 47.1 dB, off −13.7 dB');
  expect(readOut(plot, 0)).toBe('100 Hz: on 30 dB, off −12 dB');
});

test('the nearest place is found at both ends and between', () => {
  expect([-5, 100, 149, 151, 399, 1e9].map((it) => nearestIndex([100, 200, 400], it))).toEqual([0, 0, 0, 1, 2, 2]);
  expect(nearestIndex([7], 3)).toBe(0);
});

describe('ticks', () => {
  const texts = (from: number, to: number, isLogarithmic = false) => {
    const all = axisTicks(from, to, isLogarithmic, 5).map((value) => ({ value }));
    return all.map((_, i) => tickText(i, all));
  };

  test('stand at round numbers, with the decimals of their step', () => {
    expect(texts(655.6, 690.8)).toEqual(['660', '665', '670', '675', '680', '685', '690']);
    expect(texts(0.011, 0.024)).toEqual(['0.012', '0.014', '0.016', '0.018', '0.020', '0.022', '0.024']);
  });

  test('of logarithms at 1, 2 and 5, and evenly where a short part is in view', () => {
    expect(texts(51, 1100, true)).toEqual(['100', '200', '500', '1,000']);
    expect(texts(8000, 8400, true)).toEqual(['8,000', '8,100', '8,200', '8,300', '8,400']);
  });
});
