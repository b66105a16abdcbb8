import { expect, test } from 'vitest';
import { lambertianExponent } from '../../../src/measure/beam/beam.ts';
import { distanceCurve } from '../../../src/measure/beam/distance-curve.ts';
import { PATTERNS } from '../../../src/measure/beam/drive.ts';
import type { PanelModel } from '../../../src/measure/beam/panel-model.ts';
import { anyLight, cosineBeam, twoLobes } from '../../support/any-beam.ts';
import { cosineWeights } from '../../support/cosine-weights.ts';

const field = { width: 18, height: 28 };
const emitter = { kind: 'leds', columns: 6, rows: 8, ledSize: 1.2 } as const;
const none = PATTERNS.map(() => 0);
const source = { ...field, columns: 6, rows: 8, ledSize: 1.2, power: 28, spread: 0, seed: 1 };
const model = (part: Partial<PanelModel> = {}): PanelModel => ({
  emitter,
  field,
  weights: [...cosineWeights(lambertianExponent(16))],
  drive: none,
  power: 28,
  ...part,
});

test('the curve has what single LEDs give', () => {
  const light = anyLight({ ...source, intensity: cosineBeam(16) });
  for (const point of distanceCurve(model(), [10, 15.24, 60])) {
    expect(Math.abs(point.mean / light.mean(point.distance) - 1)).toBeLessThan(4e-3);
    expect(Math.abs((point.peak ?? 0) / light.peak(point.distance) - 1)).toBeLessThan(0.02);
    expect(Math.abs(point.centre / light.at(0, 0, point.distance) - 1)).toBeLessThan(4e-3);
    expect(point.lowest).toBeLessThan(point.mean);
  }
});

test('a beam of two lobes is the sum of both, and drive counts', () => {
  const narrow = cosineWeights(lambertianExponent(12));
  const weights = [...cosineWeights(lambertianExponent(55))].map((it, k) => 0.4 * it + 0.6 * (narrow[k] as number));
  const drive = none.map((_, p) => (p === 0 ? -0.2 : 0));
  const light = anyLight({
    ...source,
    intensity: twoLobes(12, 55, 0.4),
    drive: (_, y) => 1 - 0.2 * ((3 * ((2 * y) / 28) ** 2 - 1) / 2),
  });
  const [point] = distanceCurve(model({ weights, drive }), [20]);
  expect(Math.abs((point?.centre ?? 0) / light.at(0, 0, 20) - 1)).toBeLessThan(0.01);
  expect(Math.abs((point?.mean ?? 0) / light.mean(20) - 1)).toBeLessThan(0.01);
});

test('far away the middle falls with the square of the distance', () => {
  const [near, far] = distanceCurve(model(), [1000, 2000]);
  expect((near?.centre ?? 0) / (far?.centre ?? 1)).toBeCloseTo(4, 2);
});

test('where LEDs may show singly there is no peak, and from there on there is', () => {
  const [near, far] = distanceCurve(model({ peakFrom: 9.5 }), [9.4, 9.5]);
  expect([near?.peak, near?.lowest]).toEqual([undefined, undefined]);
  expect(near?.mean).toBeGreaterThan(0);
  expect(far?.peak).toBeGreaterThan(far?.mean ?? 0);
});
