import { describe, expect, test } from 'vitest';
import { axisFromNought, keepApart } from '../../../../src/site/shared/browser/plot.ts';

describe('an axis from nought', () => {
  test('ends at the tick above the highest value, and places values to a tenth of a pixel', () => {
    const axis = axisFromNought(87, [300, 0], 5);
    expect(axis.ticks.map((it) => it.text)).toEqual(['0', '20', '40', '60', '80', '100']);
    expect(axis.ticks.map((it) => it.at)).toEqual([300, 240, 180, 120, 60, 0]);
    expect(axis.place(33.33)).toBe(200);
  });

  test.each([
    [0.9, ['0.0', '0.2', '0.4', '0.6', '0.8', '1.0']],
    [0.031, ['0.000', '0.005', '0.010', '0.015', '0.020', '0.025', '0.030', '0.035']],
    [60, ['0', '10', '20', '30', '40', '50', '60']],
  ])('up to %d has ticks with the decimals of their step', (highest, texts) => {
    expect(axisFromNought(highest, [0, 100], 6).ticks.map((it) => it.text)).toEqual(texts);
  });
});

test('labels that would cross go up, the lowest stays on the axis, the others where they are', () => {
  const labels = [{ y: 95 }, { y: 20 }, { y: 104 }, { y: 98.04 }];
  keepApart(labels, 100, 14);
  expect(labels.map((it) => it.y)).toEqual([72, 20, 100, 86]);
});
