import { expect, test } from 'vitest';
import { distanceCurve } from '../../../src/measure/optics/distance-curve.ts';
import { planeValues } from '../../../src/measure/optics/plane-values.ts';

const field = { width: 18, height: 28 };
const emitter = { kind: 'leds', columns: 6, rows: 8, ledSize: 1.2 } as const;

test('the curve has the values of its planes', () => {
  for (const point of distanceCurve({ emitter, field, order: 18, power: 28 }, [5, 15.24, 60])) {
    const plane = planeValues(emitter, field, 18, 28, point.distance);
    expect(point.mean).toBeCloseTo(plane.mean, 8);
    expect(point.peak / plane.peak.value).toBeCloseTo(1, 3);
    expect(point.centre).toBeLessThanOrEqual(point.peak);
  }
});

test('far away the middle falls with the square of the distance', () => {
  const [near, far] = distanceCurve({ emitter, field, order: 4, power: 28 }, [1000, 2000]);
  expect((near?.centre ?? 0) / (far?.centre ?? 1)).toBeCloseTo(4, 2);
});
