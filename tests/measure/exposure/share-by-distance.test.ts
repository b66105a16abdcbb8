import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ShareReading, shareThere } from '../../../src/measure/exposure/share-by-distance.ts';
import { RUNS } from '../make.ts';

const at = (distance: number, value: number, spread = 0.1): ShareReading => ({
  distance,
  value,
  low: value * (1 - spread),
  high: value * (1 + spread),
});

describe('the share at a distance', () => {
  const one = [at(15.24, 500)];

  test('at a reading is the reading, within a millimetre', () => {
    expect(shareThere(one, 15.24)).toEqual({ kind: 'read', reading: one[0] });
    expect(shareThere(one, 15.34)).toMatchObject({ kind: 'read' });
    expect(shareThere(one, 15.35)).toMatchObject({ kind: 'range' });
  });

  test('farther than the one reading reaches from that of a point, 1/d², to the reading’s own', () => {
    // 30.48 cm is twice as far: a quarter.
    expect(shareThere(one, 30.48)).toEqual({ kind: 'range', low: 450 / 4, high: 550, from: one[0] });
  });

  test('nearer than every reading is not known', () => {
    expect(shareThere(one, 15.13)).toEqual({ kind: 'nearer', than: 15.24 });
    expect(shareThere([at(15.24, 500), at(30, 300)], 10)).toEqual({ kind: 'nearer', than: 15.24 });
  });

  test('between two readings lies between them; beyond the last, the last one bounds it', () => {
    const two = [at(15, 500), at(30, 300)];
    expect(shareThere(two, 20)).toEqual({ kind: 'range', low: 270, high: 550, from: two[0] });
    expect(shareThere(two, 60)).toEqual({ kind: 'range', low: 270 / 4, high: 330, from: two[1] });
    // The lower end of a reading farther away can be under what the inverse square leaves of the nearer one.
    expect(shareThere(two, 16)).toMatchObject({ low: Math.max(270, (450 * 15 ** 2) / 16 ** 2) });
  });

  test('a reading that is higher than a nearer one does not raise the bound', () => {
    const two = [at(15, 500, 0), at(30, 520, 0)];
    expect(shareThere(two, 60)).toMatchObject({ high: 500, from: two[0] });
    // What is read nearer and farther than the place can disagree by their errors: the range is not turned round.
    expect(shareThere(two, 20)).toMatchObject({ low: 500, high: 500 });
  });

  test('holds the two known extremes: a point, and an endless field', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 50, noNaN: true }),
        fc.double({ min: 1.03, max: 20, noNaN: true }),
        (near, times) => {
          const far = near * times;
          const it = shareThere([at(near, 100, 0)], far);
          if (it.kind !== 'range') throw new Error(it.kind);
          // A point of light gives 1/d², an endless even field the same everywhere.
          expect(it.low).toBeCloseTo(100 / times ** 2, 6);
          expect(it.high).toBe(100);
          // A Lambertian disc on its axis, E = M R² / (R² + z²) (any radiometry handbook, from memory), lies between.
          const disc = (z: number) => 1 / (1 + (z / 12) ** 2);
          const share = (100 * disc(far)) / disc(near);
          expect(share).toBeGreaterThanOrEqual(it.low - 1e-9);
          expect(share).toBeLessThanOrEqual(it.high + 1e-9);
        },
      ),
      RUNS,
    );
  });
});
