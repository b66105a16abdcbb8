import { describe, expect, test } from 'vitest';
import { USUAL_HALF_GAP } from '../../../src/measure/beam/assumed-emitter.ts';
import { lambertianExponent } from '../../../src/measure/beam/beam.ts';
import type { Field } from '../../../src/measure/beam/emitter.ts';
import { expectedBias, halvingBias, TYPICAL_HALF_ANGLES, worstOf } from '../../../src/measure/beam/expected-bias.ts';
import { gridSpots } from '../../../src/measure/beam/plane-spots.ts';

const INCH = 2.54;
const DISTANCE = 15.24;
const NINE = { columns: 3, rows: 3, inset: INCH };

/** The same by brute force: single sources, a few mm apart, and cells over the field. */
function bruteBias(field: Field, halfAngle: number): number {
  const exponent = lambertianExponent(halfAngle);
  const sources = 60;
  const reach = { width: field.width + 2 * USUAL_HALF_GAP, height: field.height + 2 * USUAL_HALF_GAP };
  const placesOf = (side: number, count: number) =>
    Array.from({ length: count }, (_, i) => side * ((i + 0.5) / count - 0.5));
  const [us, vs] = [placesOf(reach.width, sources), placesOf(reach.height, sources)];
  const irradiance = (x: number, y: number) => {
    let sum = 0;
    for (const u of us) {
      for (const v of vs) sum += ((x - u) ** 2 + (y - v) ** 2 + DISTANCE ** 2) ** (-(exponent + 3) / 2);
    }
    return sum;
  };
  const average = (places: Array<{ x: number; y: number }>) =>
    places.reduce((sum, { x, y }) => sum + irradiance(x, y), 0) / places.length;
  const cells = placesOf(field.height, 24).flatMap((y) => placesOf(field.width, 24).map((x) => ({ x, y })));
  return average(gridSpots(NINE, field) ?? []) / average(cells) - 1;
}

describe('what a grid misses', () => {
  test.each([
    [10, 10],
    [20, 40],
    [60, 30],
  ])('in %i × %i cm is what single sources add up to', (width, height) => {
    const field = { width, height };
    const biases = TYPICAL_HALF_ANGLES.map((it) => bruteBias(field, it));
    const { from, to } = expectedBias(field, NINE, DISTANCE) ?? { from: Number.NaN, to: Number.NaN };
    expect(from).toBeCloseTo(Math.min(...biases), 2.5);
    expect(to).toBeCloseTo(Math.max(...biases), 2.5);
  });

  test('the table of the method’s page has the same, within what two of its beams span', () => {
    // 30° and 60° are among the beams of both.
    const large = expectedBias({ width: 40, height: 150 }, NINE, DISTANCE);
    expect(large?.from).toBeLessThanOrEqual(-0.263 + 0.0005);
    expect(large?.to).toBeGreaterThanOrEqual(-0.252 - 0.0005);
    const small = expectedBias({ width: 10, height: 10 }, NINE, DISTANCE);
    expect(small?.to).toBeGreaterThanOrEqual(0.084 - 0.0005);
    expect(small?.from).toBeCloseTo(0.05, 3);
  });

  test('is nothing that can be told where the points would cross', () => {
    expect(expectedBias({ width: 5, height: 5 }, NINE, DISTANCE)).toBeUndefined();
    expect(halvingBias({ width: 5, height: 5 }, NINE, DISTANCE)).toEqual({});
  });
});

describe('what halves it', () => {
  test.each([
    [20, 60],
    [40, 150],
    [60, 200],
    [10, 10],
  ])('in %i × %i cm does so, with the points it costs', (width, height) => {
    const field = { width, height };
    const now = expectedBias(field, NINE, DISTANCE);
    const found = Object.values(halvingBias(field, NINE, DISTANCE));
    expect(found.length).toBeGreaterThan(0);
    for (const { grid, bias, extra } of found) {
      expect(bias).toEqual(expectedBias(field, grid, DISTANCE));
      expect(worstOf(bias)).toBeLessThanOrEqual(worstOf(now ?? bias) / 2);
      expect(extra).toBe(grid.columns * grid.rows - 9);
    }
  });

  test('another inset takes no reading more, and more points keep the inset', () => {
    const { inset, points } = halvingBias({ width: 40, height: 150 }, NINE, DISTANCE);
    expect(inset?.extra).toBe(0);
    if (points) expect(points.grid.inset).toBe(INCH);
  });

  test('no grid with fewer points does it at that inset', () => {
    const field = { width: 20, height: 60 };
    const { points } = halvingBias(field, NINE, DISTANCE);
    const wanted = worstOf(expectedBias(field, NINE, DISTANCE) ?? { from: 0, to: 0 }) / 2;
    const count = (points?.grid.columns ?? 0) * (points?.grid.rows ?? 0);
    for (let columns = 3; columns <= 8; columns++) {
      for (let rows = 3; columns * rows < count; rows++) {
        const bias = expectedBias(field, { columns, rows, inset: INCH }, DISTANCE);
        expect(worstOf(bias ?? { from: 0, to: 0 })).toBeGreaterThan(wanted);
      }
    }
  });
});
