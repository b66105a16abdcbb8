import fc from 'fast-check';
import { sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { gridFigures } from '../../../src/measure/irradiance/grid.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { HOT_MIDDLE } from '../../references/grid.ts';
import { componentOf, figureOf, gridOf, instrument, RUNS, slanted } from '../make.ts';

const NO_CELLS = verbatim('the LED field is not known');
const AT_FIFTEEN = { distance: 15, halfWidth: 0.2, area: 1800 };
const figureValue = (it: Parameters<typeof figureOf>[0]) => figureOf(it).value;
const uncertaintyOf = (it: Parameters<typeof figureOf>[0]) => figureOf(it).standardUncertainty ?? Number.NaN;
const nine = fc.array(fc.double({ min: 1, max: 500, noNaN: true }), { minLength: 9, maxLength: 9 });
const rowsOf = (values: readonly number[]) => [values.slice(0, 3), values.slice(3, 6), values.slice(6, 9)];

describe('uncertainty of the uniformity', () => {
  const grid = (part: Parameters<typeof instrument>[0]) =>
    gridOf(HOT_MIDDLE, { instrument: instrument(part), distance: AT_FIFTEEN });

  test('holds no calibration, distance or oblique light: they move all points alike', () => {
    const share = fc.double({ min: 0, max: 0.3, noNaN: true });
    fc.assert(
      fc.property(nine, share, share, (values, calibrationRelative, angularResponse) => {
        const sensor = instrument({ calibrationRelative, angularResponse: slanted(angularResponse) });
        const it = gridFigures(gridOf(rowsOf(values), { instrument: sensor, distance: AT_FIFTEEN }), NO_CELLS);
        for (const metric of ['lowestToMean', 'highestToMean', 'variation'] as const) {
          expect(uncertaintyOf(it[metric])).toBeLessThan(1e-9 * figureValue(it.highestToMean));
        }
      }),
      RUNS,
    );
  });

  test('of a ratio keeps what an offset of the meter does to it', () => {
    const it = gridFigures(grid({ calibrationAbsolute: 2 }), NO_CELLS).highestToMean;
    const mean = 860 / 9;
    // d(E/Ē) = dE (1/Ē − E/Ē²), with one dE for both.
    expect(componentOf(figureOf(it), '/offset').contribution).toBeCloseTo(100 * 2 * (1 / mean - 140 / mean ** 2), 9);
  });

  test('of the variation keeps what an offset of the meter does to it', () => {
    const it = gridFigures(grid({ calibrationAbsolute: 2 }), NO_CELLS).variation;
    const mean = 860 / 9;
    const variation = figureValue(it) / 100;
    // An offset leaves s as it is and moves the mean: d(s/Ē) = −s/Ē² dE.
    expect(uncertaintyOf(it)).toBeCloseTo((100 * 2 * variation) / mean, 9);
  });

  test('says whether the scatter is that of repeats', () => {
    const stated = gridFigures(grid({ repeatability: 0.01 }), NO_CELLS);
    const repeated = gridFigures(
      gridOf([], { points: [HOT_MIDDLE.flat().map((value, i) => (i === 0 ? [79, 81] : [value]))] }),
      NO_CELLS,
    );
    for (const metric of ['lowestToMean', 'highestToMean', 'variation'] as const) {
      expect(componentOf(figureOf(stated[metric]), '/repeatability').source.type).toBe('B');
      expect(componentOf(figureOf(repeated[metric]), '/repeatability').source).toMatchObject({
        type: 'A',
        degreesOfFreedom: 1,
      });
    }
  });

  test('of the variation falls with the root of the number of repeats a point', () => {
    // Four repeats each with s = 2: the mean of a point scatters by 1.
    const repeats = [-1, 1, -1, 1].map((sign) => sign * Math.sqrt(3));
    const points = HOT_MIDDLE.map((row) => row.map((value) => repeats.map((error) => value + error)));
    for (const metric of ['lowestToMean', 'highestToMean', 'variation'] as const) {
      const of = (times: number) => {
        const grid = points.map((row) => row.map((point) => Array.from({ length: times }, () => point).flat()));
        const line = componentOf(
          figureOf(gridFigures(gridOf([], { points: grid }), NO_CELLS)[metric]),
          '/repeatability',
        );
        // The pooled scatter itself falls a little, by its degrees of freedom: s^2 = 36 per 9 (4 t - 1).
        return line.contribution / Math.sqrt((12 * times * 9) / (9 * (4 * times - 1)));
      };
      expect(of(4)).toBeCloseTo(of(1) / 2, 8);
    }
  });
});

/** Grids that a bench reads: a hot middle, a large panel's steep fall, a dead corner, five rows, one row. */
const GRIDS: ReadonlyArray<[string, readonly (readonly number[])[]]> = [
  ['hot middle', HOT_MIDDLE],
  [
    'steep fall to the corners',
    [
      [30, 52, 31],
      [48, 88, 49],
      [29, 51, 30],
    ],
  ],
  [
    'one dim corner',
    [
      [61, 63, 60],
      [62, 64, 62],
      [60, 63, 24],
    ],
  ],
  [
    'five rows',
    [
      [40, 52, 41],
      [55, 71, 54],
      [60, 76, 59],
      [54, 70, 55],
      [39, 51, 40],
    ],
  ],
  ['one row', [[40, 66, 42, 39]]],
];

describe('a direct simulation of the readings', () => {
  // The second road: each reading is moved by its own scatter and rounding, the three figures are calculated afresh
  // as anybody would by hand, and their spread over the trials is the standard uncertainty.
  const TRIALS = 40_000;

  const simulated = (rows: readonly (readonly number[])[], scatterOf: (value: number) => number, step: number) => {
    const random = seededRandom(20261125);
    const values = rows.flat();
    const [lowest, highest] = [values.indexOf(Math.min(...values)), values.indexOf(Math.max(...values))];
    const trials = Array.from({ length: TRIALS }, () => {
      const read = values.map((value) => value + scatterOf(value) * random.normal() + step * (random.uniform() - 0.5));
      const mean = read.reduce((sum, it) => sum + it, 0) / read.length;
      return [
        (100 * (read[lowest] ?? 0)) / mean,
        (100 * (read[highest] ?? 0)) / mean,
        (100 * sampleStandardDeviation(read)) / mean,
      ];
    });
    const spread = (at: number) => sampleStandardDeviation(trials.map((it) => it[at] ?? Number.NaN));
    return { lowestToMean: spread(0), highestToMean: spread(1), variation: spread(2) };
  };

  test.each(GRIDS)('%s: the budgets agree with it to 2 %', (_, rows) => {
    const sensor = instrument({
      calibrationRelative: 0.025,
      angularResponse: slanted(0.02),
      repeatability: 0.008,
      resolution: 0.1,
    });
    const it = gridFigures(gridOf(rows, { instrument: sensor, distance: AT_FIFTEEN }), NO_CELLS);
    const direct = simulated(rows, (value) => 0.008 * value, 0.1);
    for (const metric of ['lowestToMean', 'highestToMean', 'variation'] as const) {
      expect(Math.abs(uncertaintyOf(it[metric]) / direct[metric] - 1)).toBeLessThan(0.02);
    }
  });

  test('agrees too where points were read a different number of times', () => {
    const counts = [1, 3, 1, 2, 4, 2, 1, 3, 1];
    const values = HOT_MIDDLE.flat();
    // Equal repeats but for the corner pair, so that the pooled scatter is known: s = 1.
    const pooled = Math.sqrt(counts.reduce((sum, count) => sum + count - 1, 0));
    const points = values.map((value, i) => {
      const count = counts[i] ?? 1;
      const readings = Array.from({ length: count }, () => value);
      return i === 3 ? [value - pooled / Math.SQRT2, value + pooled / Math.SQRT2] : readings;
    });
    const grid = gridOf([], {
      points: [points.slice(0, 3), points.slice(3, 6), points.slice(6, 9)],
      instrument: instrument({}),
    });
    const it = gridFigures(grid, NO_CELLS);
    const own = new Map(counts.map((count, i) => [i, 1 / Math.sqrt(count)]));
    let at = 0;
    const direct = simulated(HOT_MIDDLE, () => own.get(at++ % 9) ?? Number.NaN, 0);
    for (const metric of ['lowestToMean', 'highestToMean', 'variation'] as const) {
      expect(
        Math.abs(componentOf(figureOf(it[metric]), '/repeatability').contribution / direct[metric] - 1),
      ).toBeLessThan(0.02);
    }
  });

  test('of a point as independent of its mean would be up to a quarter too wide, and is not what is published', () => {
    const sensor = instrument({ repeatability: 0.01 });
    const it = gridFigures(gridOf(HOT_MIDDLE, { instrument: sensor, distance: AT_FIFTEEN }), NO_CELLS).highestToMean;
    const squares = HOT_MIDDLE.flat().reduce((sum, value) => sum + value ** 2, 0);
    const asIndependent = figureValue(it) * Math.hypot(0.01, (0.01 * Math.sqrt(squares)) / 860);
    expect(uncertaintyOf(it) / asIndependent).toBeLessThan(0.9);
  });

  test('two points: the mean holds half of each, so that a factor of a half is left', () => {
    // r = 2a / (a + b): dr/da = 2b / (a + b)^2, by hand.
    const sensor = instrument({ repeatability: 0.01 });
    const it = gridFigures(gridOf([[60, 40]], { instrument: sensor, distance: AT_FIFTEEN }), NO_CELLS).highestToMean;
    expect(uncertaintyOf(it)).toBeCloseTo(100 * Math.hypot((2 * 40 * 0.6) / 100 ** 2, (2 * 60 * 0.4) / 100 ** 2), 10);
  });
});
