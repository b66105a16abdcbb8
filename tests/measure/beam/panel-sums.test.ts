import { describe, expect, test } from 'vitest';
import { lambertianExponent } from '../../../src/measure/beam/beam.ts';
import { PATTERNS } from '../../../src/measure/beam/drive.ts';
import { widened } from '../../../src/measure/beam/emitter.ts';
import { GEOMETRY, type Layout, panelSums } from '../../../src/measure/beam/panel-sums.ts';
import { BASIS } from '../../../src/measure/beam/profile-basis.ts';
import { anyLight, cosineBeam } from '../../support/any-beam.ts';
import { cosineWeights } from '../../support/cosine-weights.ts';
import { SIX_INCHES } from './make.ts';

const field = { width: 20, height: 34 };
const layout: Layout = {
  field,
  emitter: { kind: 'leds', columns: 8, rows: 13, ledSize: 0.6 },
  distance: SIX_INCHES,
  grid: { shape: { columns: 3, rows: 3, inset: 2.54 }, accepted: [0, 4, 8] },
  beyond: [
    { edge: 'left', past: 8 },
    { edge: 'right', past: 20 },
    { edge: 'top', past: 8 },
    { edge: 'bottom', past: 40 },
  ],
  sweep: [10, 40],
  targets: [12, 60],
};
const HALF_ANGLE = 35;
const weights = cosineWeights(lambertianExponent(HALF_ANGLE));
const sum = (rows: Float64Array, row: number) =>
  weights.reduce((total, it, k) => total + it * (rows[row * BASIS + k] as number), 0);
const source = {
  ...field,
  columns: 8,
  rows: 13,
  ledSize: 0.6,
  intensity: cosineBeam(HALF_ANGLE),
  power: 1,
  spread: 0,
  seed: 1,
};
const PLACES = [
  [-(10 - 2.54), 17 - 2.54, SIX_INCHES],
  [0, 0, SIX_INCHES],
  [10 - 2.54, -(17 - 2.54), SIX_INCHES],
  [-18, 0, SIX_INCHES],
  [30, 0, SIX_INCHES],
  [0, 25, SIX_INCHES],
  [0, -57, SIX_INCHES],
  [0, 0, 10],
  [0, 0, 40],
] as const;

describe('readings and targets as sums over the parts of a beam', () => {
  const sums = panelSums(layout);

  test('readings in the frame, past its edges and on the axis are those of single LEDs', () => {
    const light = anyLight(source);
    expect(sums.readings).toMatchObject({ count: 9, grid: 3, beyond: 4, sweep: 2 });
    PLACES.forEach(([x, y, z], row) => {
      expect(Math.abs(sum(sums.readings.base, row) / light.at(x, y, z) - 1)).toBeLessThan(3e-3);
    });
  });

  test('means and extremes of the targets are those of single LEDs', () => {
    const light = anyLight(source);
    expect(Math.abs(sum(sums.targets.base, 0) / light.mean(SIX_INCHES) - 1)).toBeLessThan(3e-3);
    layout.targets.forEach((distance, t) => {
      const first = 1 + t * sums.targetRows;
      expect(Math.abs(sum(sums.targets.base, first) / light.mean(distance) - 1)).toBeLessThan(3e-3);
      const peaks = Array.from({ length: sums.targets.peaks }, (_, j) => sum(sums.targets.base, first + 1 + j));
      expect(Math.abs(Math.max(...peaks) / light.peak(distance) - 1)).toBeLessThan(5e-3);
    });
  });

  test('patterns of drive do what LEDs driven so do, and take no power', () => {
    const share = 0.2;
    PATTERNS.forEach(({ axis, degree }, p) => {
      const legendre = (t: number) =>
        degree === 1 ? t : degree === 2 ? (3 * t * t - 1) / 2 : (35 * t ** 4 - 30 * t * t + 3) / 8;
      const at = (x: number, y: number) =>
        legendre((2 * (axis === 'x' ? x : y)) / (axis === 'x' ? field.width : field.height));
      const even = anyLight(source);
      const driven = anyLight({ ...source, drive: (x, y) => 1 + share * at(x, y) });
      PLACES.forEach(([x, y, z], row) => {
        const wanted = (driven.at(x, y, z) - even.at(x, y, z)) / share;
        const found = sum(sums.readings.patterns[p] as Float64Array, row);
        // A pattern of degree 2 or 4 has a mean over so few LEDs, which the driven panel spreads over all of them.
        expect(Math.abs(found - wanted)).toBeLessThan(0.02 * even.at(x, y, z));
      });
    });
  });

  test('their sensitivity coefficients to the geometry are what they come to when it is laid out otherwise', () => {
    const by = 0.05;
    const moved: Record<(typeof GEOMETRY)[number], (step: number) => Layout> = {
      distance: (step) => ({ ...layout, distance: SIX_INCHES + step, sweep: [10 + step, 40 + step] }),
      width: (step) => ({ ...layout, field: { ...field, width: 20 + step } }),
      height: (step) => ({ ...layout, field: { ...field, height: 34 + step } }),
      edge: (step) => ({ ...layout, emitter: widened(layout.emitter, step) }),
    };
    for (const side of GEOMETRY) {
      const [up, down] = [by, -by].map((step) => panelSums(moved[side](step)));
      for (let row = 0; row < sums.readings.count; row++) {
        const slope =
          (sum(up?.readings.base as Float64Array, row) - sum(down?.readings.base as Float64Array, row)) / (2 * by);
        const found = sum(sums.readings.geometry[side], row);
        expect(Math.abs(found - slope)).toBeLessThan(0.02 * Math.abs(slope) + 1e-3 * sum(sums.readings.base, row));
      }
    }
  });

  test('a grid point that there is not is refused', () => {
    const grid = { shape: { columns: 3, rows: 3, inset: 2.54 }, accepted: [9] };
    expect(() => panelSums({ ...layout, grid })).toThrow(RangeError);
  });
});
