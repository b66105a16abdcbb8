import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plateaus } from '../../../src/measure/log/plateaus.ts';
import { sweep, timePercentile } from '../../../src/measure/log/sweep.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { gridRun } from '../../support/grid-run.ts';
import { seriesOf } from '../../support/waves.ts';
import { RUNS } from '../make.ts';

const hill = (t: number) => 50 + 30 * Math.sin(t / 4);

describe('a sweep', () => {
  test('has its maximum, and nothing is a spike that is only a hill', () => {
    const it = sweep(seriesOf(hill, { rate: 5, samples: 300, noise: 0.2 }));
    expect(it.spikes).toEqual([]);
    expect(it.maximum).toBe(it.steadyMaximum.value);
    expect(it.maximum).toBeGreaterThan(79.5);
    expect(it.maximum).toBeLessThan(81);
    expect(it.scatter).toBeCloseTo(0.2, 1);
  });

  test('says a spike of one sample, and what the maximum is without it', () => {
    const series = seriesOf(hill, { rate: 5, samples: 300, noise: 0.2 });
    series.values[100] = 120;
    const it = sweep(series);
    expect(it.maximum).toBe(120);
    expect(it.spikes).toEqual([{ time: 20, value: 120, beside: expect.closeTo(21, -1) }]);
    expect(it.steadyMaximum.value).toBeLessThan(81);
  });

  test('two high samples are no spike', () => {
    const series = seriesOf(hill, { rate: 5, samples: 300, noise: 0.2 });
    series.values.set([120, 119], 100);
    expect(sweep(series)).toMatchObject({ spikes: [], steadyMaximum: { value: 120 } });
  });

  test('a narrow hot spot at few samples is no spike', () => {
    const it = sweep(
      seriesOf((t) => 40 + 40 * Math.exp(-(((t - 30) / 2.5) ** 2)), { rate: 1, samples: 60, noise: 0.1 }),
    );
    expect(it.spikes).toEqual([]);
  });

  test('has the value that 99 % of the time was under, with uneven steps too', () => {
    const even = {
      times: Float64Array.from({ length: 101 }, (_, i) => i),
      values: Float64Array.from({ length: 101 }, (_, i) => i),
    };
    expect(timePercentile(even, 0.99)).toBe(99);
    // One high sample stands for a tenth of the time.
    const uneven = {
      times: Float64Array.from([0, 1, 2, 3, 4, 5, 6, 7, 8, 10, 10.1]),
      values: Float64Array.from([1, 1, 1, 1, 1, 1, 1, 1, 1, 9, 1]),
    };
    expect(timePercentile(uneven, 0.99)).toBe(9);
  });

  test('finds where the sensor was held still', () => {
    const light = (t: number) => (t < 10 ? 20 + 3 * t : t < 20 ? 50 : 50 - 2 * (t - 20));
    const { hovers } = sweep(seriesOf(light, { rate: 5, samples: 150, noise: 0.1 }));
    expect(hovers).toHaveLength(1);
    expect(hovers[0]).toMatchObject({ mean: expect.closeTo(50, 0) });
    expect(hovers[0]?.from).toBeCloseTo(9.8, 0);
    expect(hovers[0]?.to).toBeCloseTo(20.3, 0);
  });

  test('whatever the samples, the steady maximum is one of them, and the highest is no lower', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 3, maxLength: 200 }),
        (values) => {
          const it = sweep({ times: Float64Array.from(values.keys()), values: Float64Array.from(values) });
          expect(values).toContain(it.steadyMaximum.value);
          expect(it.maximum).toBe(Math.max(...values));
          expect(it.percentile99).toBeLessThanOrEqual(it.maximum);
        },
      ),
      RUNS,
    );
  });
});

describe('a grid in one go', () => {
  const levels = [32, 46.4, 32, 50.1, 83.1, 51.6, 31.6, 45.5, 31.2];

  test('has its nine points, with a slow meter and a spike', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const run = gridRun(levels, { noise: 0.2, seed });
      run.values[Math.floor(run.values.length / 2)] = 130;
      const { points } = plateaus(run, 9);
      expect(points?.map((it) => it.mean)).toEqual(levels.map((it) => expect.closeTo(it, 0)));
      const off = levels.map((it, i) => Math.abs((points?.[i]?.mean ?? 0) / it - 1));
      expect(Math.max(...off)).toBeLessThan(0.01);
    }
  });

  test('is not proposed with a point too few or too many', () => {
    const run = gridRun(levels, { noise: 0.2 });
    expect(plateaus(run, 10)).toMatchObject({ points: undefined, found: { length: 9 } });
    expect(plateaus(run, 8)).toMatchObject({ points: undefined, found: { length: 9 } });
  });

  test('leaves out a short stop on the way, and the cover in between', () => {
    const held = gridRun([...levels.slice(0, 4), 44, ...levels.slice(4)], {
      noise: 0.2,
      hold: (i) => (i === 4 ? 4 : 9),
    });
    expect(plateaus(held, 9)).toMatchObject({ points: { length: 9 }, left: { length: 1 } });
    const covered = gridRun(
      levels.flatMap((it) => [it, 0.3]),
      { noise: 0.2 },
    );
    expect(plateaus(covered, 9).points).toHaveLength(9);
  });

  test('finds none in noise', () => {
    const random = seededRandom(4);
    const values = Float64Array.from({ length: 500 }, () => 50 * random.uniform());
    expect(plateaus({ times: Float64Array.from(values.keys()), values }, 9).points).toBeUndefined();
  });
});
