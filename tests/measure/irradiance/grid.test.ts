import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Gap, isFigure } from '../../../src/measure/figure.ts';
import { obliqueError } from '../../../src/measure/instrument/angular-response.ts';
import { NO_INSTRUMENT } from '../../../src/measure/instrument/instrument.ts';
import { gridFigures, gridGaps } from '../../../src/measure/irradiance/grid.ts';
import { gridGeometry } from '../../../src/measure/irradiance/grid-geometry.ts';
import { pooledRepeats } from '../../../src/measure/irradiance/repeats.ts';
import { methodText } from '../../../src/measure/method-versions.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { CELL_MEANS, GRID_STATISTICS, HOT_MIDDLE } from '../../references/grid.ts';
import { CERTIFIED_SETS } from '../../references/statistics.ts';
import { componentOf, figureOf, gridOf, instrument, RUNS, slanted } from '../make.ts';

const NO_CELLS = verbatim('the LED field is not known');
const metrics = ['mean', 'cellMean', 'lowestToMean', 'highestToMean', 'variation'] as const;
const SENSOR = instrument({
  calibrationRelative: 0.025,
  resolution: 0.1,
  angularResponse: slanted(0.02),
  repeatability: 0.01,
});
const AT_FIFTEEN = { distance: 15, halfWidth: 0.2, area: 1800 };
const figureValue = (it: Parameters<typeof figureOf>[0]) => figureOf(it).value;
const uncertaintyOf = (it: Parameters<typeof figureOf>[0]) => figureOf(it).standardUncertainty ?? Number.NaN;

const irradiance = fc.double({ min: 1, max: 500, noNaN: true });
const nine = fc.array(irradiance, { minLength: 9, maxLength: 9 });
const rowsOf = (values: readonly number[]) => [values.slice(0, 3), values.slice(3, 6), values.slice(6, 9)];

describe('certified data sets', () => {
  test.each(CERTIFIED_SETS.map((set) => [set.mean.arguments, set] as const))('%s', (_, set) => {
    // As repeats of one point, whose scatter is the standard deviation ...
    expectToMeet(pooledRepeats([set.values])?.standardDeviation ?? Number.NaN, set.standardDeviation);
    const onePoint = gridFigures(gridOf([], { points: [[set.values]] }), NO_CELLS);
    expectToMeet(figureValue(onePoint.mean), set.mean);
    // ... and as single readings at as many points, whose spread is the coefficient of variation. Here the mean is
    // a plain sum of shares: each addition may be off by half the spacing of doubles of that size.
    const sum = set.values.length * set.mean.expected * Number.EPSILON;
    const manyPoints = gridFigures(gridOf([set.values]), NO_CELLS);
    expectToMeet(figureValue(manyPoints.mean), { ...set.mean, tolerance: set.mean.tolerance + sum });
    expectToMeet((figureValue(manyPoints.variation) * figureValue(manyPoints.mean)) / 100, {
      ...set.standardDeviation,
      tolerance: set.standardDeviation.tolerance + 1e-15,
    });
  });
});

describe('figures of a grid', () => {
  test.each(GRID_STATISTICS.map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(figureValue(gridFigures(gridOf(HOT_MIDDLE), NO_CELLS)[row.arguments]), row);
  });

  test.each(CELL_MEANS.map((row) => [row.label, row] as const))('%s', (_, row) => {
    const geometry = gridGeometry(3, 3, 24, 24, 24 * row.arguments.insetShare);
    expectToMeet(figureValue(gridFigures(gridOf(HOT_MIDDLE), geometry ?? NO_CELLS).cellMean), row);
  });

  test('say what they are and how they came about', () => {
    const geometry = gridGeometry(3, 3, 24, 24, 2.54) ?? NO_CELLS;
    const it = gridFigures(gridOf(HOT_MIDDLE), geometry);
    const summary = metrics.map((metric) => {
      const { id, unit, basis, method } = figureOf(it[metric]);
      return `${id} ${unit} ${basis} ${methodText(method)}`;
    });
    expect(summary).toEqual([
      'lantern-40/2026-03-02/mean-irradiance mW/cm² derived mean-irradiance@4',
      'lantern-40/2026-03-02/mean-irradiance-by-cells mW/cm² derived mean-irradiance@4',
      'lantern-40/2026-03-02/uniformity-lowest % derived uniformity@2',
      'lantern-40/2026-03-02/uniformity-highest % derived uniformity@2',
      'lantern-40/2026-03-02/uniformity-variation % derived uniformity@2',
    ]);
    expect(figureOf(it.mean).calculation).toBe(
      'Ē = (80 + 100 + 80 + 100 + 140 + 100 + 80 + 100 + 80) ÷ 9 = 95.56 mW/cm²',
    );
    expect(figureOf(it.lowestToMean).calculation).toBe('E_min ÷ Ē = 80 mW/cm² ÷ 95.56 mW/cm² = 83.72 %');
    expect(figureOf(it.variation).calculation).toContain('= 20.34 %');
  });

  test('of nothing but rejected readings are gaps with the reason', () => {
    const it = gridFigures(
      gridOf([], {
        points: [
          [[], []],
          [[], []],
        ],
      }),
      NO_CELLS,
    );
    for (const metric of metrics) {
      expect(isFigure(it[metric])).toBe(false);
      expect((it[metric] as Gap).reason).toEqual({ code: 'grid-all-rejected' });
    }
    expect(gridFigures(gridOf([]), NO_CELLS).mean).toMatchObject({ gap: true });
  });

  test('leave a rejected point out and tell so', () => {
    const points = [
      [[80], [100], [80]],
      [[100], [], [100]],
      [[80], [100], [80]],
    ];
    const it = gridFigures(gridOf([], { points }), NO_CELLS);
    expect(figureValue(it.mean)).toBeCloseTo(90, 12);
    for (const metric of ['mean', 'lowestToMean', 'highestToMean', 'variation'] as const) {
      expect(figureOf(it[metric]).notes).toEqual([{ code: 'grid-points-empty', empty: 1, of: 9 }]);
    }
  });

  test('share the field among the points that are left', () => {
    // Cells of a row at 2, 15 and 28 of 30 cm: 8.5, 13 and 8.5 cm wide. The first one is rejected.
    const points = [[[], [60], [90]]];
    const geometry = gridGeometry(3, 1, 30, 60, 2) ?? NO_CELLS;
    const it = figureOf(gridFigures(gridOf([], { points }), geometry).cellMean);
    expect(it.value).toBeCloseTo((13 * 60 + 8.5 * 90) / 21.5, 10);
    expect(it.notes).toEqual([{ code: 'grid-points-empty', empty: 1, of: 3 }]);
  });

  test('take the mean of a point before the mean of the grid', () => {
    const it = gridFigures(gridOf([], { points: [[[80, 82], [100]]] }), NO_CELLS);
    expect(figureValue(it.mean)).toBeCloseTo((81 + 100) / 2, 12);
    expect(figureValue(it.highestToMean)).toBeCloseTo(10000 / 90.5, 10);
  });

  test('of one point have a mean and no uniformity', () => {
    const it = gridFigures(gridOf([[80]]), NO_CELLS);
    expect(figureValue(it.mean)).toBe(80);
    for (const metric of ['lowestToMean', 'highestToMean', 'variation'] as const) {
      expect(it[metric]).toMatchObject({ gap: true, reason: { code: 'one-grid-point' } });
    }
  });

  test('have no mean by cells where the cells are not known, for the reason given', () => {
    expect(gridFigures(gridOf(HOT_MIDDLE), NO_CELLS).cellMean).toEqual({
      gap: true,
      metric: 'mean-irradiance-by-cells',
      reason: NO_CELLS,
    });
  });

  test('without a meter have values and no uncertainty', () => {
    const geometry = gridGeometry(3, 3, 24, 24, 2.54) ?? NO_CELLS;
    const it = gridFigures(gridOf(HOT_MIDDLE, { instrument: undefined }), geometry);
    for (const metric of metrics) {
      expect(figureOf(it[metric])).toMatchObject({ standardUncertainty: null, uncertaintyAbsent: NO_INSTRUMENT });
      expect(figureValue(it[metric])).toBeGreaterThan(0);
    }
  });

  test('a gap for the whole grid has the figures’ own metrics', () => {
    const gaps = gridGaps({ code: 'not-measured' });
    const figures = gridFigures(gridOf(HOT_MIDDLE), gridGeometry(3, 3, 24, 24, 2.54) ?? NO_CELLS);
    for (const metric of metrics) expect(gaps[metric].metric).toBe(figures[metric].metric);
  });
});

describe('uncertainty of the mean', () => {
  test('is made of calibration, distance, oblique light, resolution and repeatability', () => {
    const it = figureOf(gridFigures(gridOf(HOT_MIDDLE, { instrument: SENSOR, distance: AT_FIFTEEN }), NO_CELLS).mean);
    const mean = 860 / 9;
    const exponent = (2 * 15 ** 2) / (1800 / Math.PI + 15 ** 2);
    expect(it.budget).toHaveLength(5);
    expect(componentOf(it, '/calibration').contribution).toBeCloseTo(0.025 * mean, 10);
    expect(componentOf(it, '/distance').contribution).toBeCloseTo((-exponent * mean * 0.2) / Math.sqrt(3) / 15, 10);
    expect(componentOf(it, '/angular').contribution).toBeCloseTo(0.02 * mean, 10);
    expect(componentOf(it, '/resolution').contribution).toBeCloseTo(0.1 / Math.sqrt(12) / 3, 10);
    const squares = HOT_MIDDLE.flat().reduce((sum, value) => sum + value ** 2, 0);
    expect(componentOf(it, '/repeatability')).toMatchObject({
      source: { type: 'B', evaluation: { code: 'repeatability-as-stated', relative: 0.01 } },
      contribution: expect.closeTo((0.01 * Math.sqrt(squares)) / 9, 10),
    });
  });

  test('takes the scatter of repeats where there are any, as type A', () => {
    const points = [[[79, 81], [100], [80]]];
    const it = figureOf(gridFigures(gridOf([], { points, instrument: SENSOR }), NO_CELLS).mean);
    // s = √2 at a point; the means of the points scatter by s/√2, s and s.
    expect(componentOf(it, '/repeatability')).toMatchObject({
      source: {
        type: 'A',
        distribution: 't',
        degreesOfFreedom: 1,
        evaluation: { code: 'repeats-pooled', standardDeviation: expect.closeTo(Math.SQRT2, 12), degreesOfFreedom: 1 },
      },
      contribution: expect.closeTo((Math.SQRT2 * Math.sqrt(1 / 2 + 1 + 1)) / 3, 10),
    });
    expect(it.unassessed).toEqual([]);
  });

  test('tells so where neither repeats nor a repeatability are known', () => {
    const silent = instrument({ repeatability: undefined, spectralResponse: undefined, angularResponse: undefined });
    const it = figureOf(gridFigures(gridOf(HOT_MIDDLE, { instrument: silent }), NO_CELLS).mean);
    expect(it.unassessed.map((entry) => entry.what)).toEqual([
      { code: 'spectral-response' },
      { code: 'cosine-response' },
      { code: 'repeatability' },
    ]);
  });

  test('holds the sensor’s response to each band by its share of the light, once for all points', () => {
    const silicon = instrument({ spectralResponse: { red: 0.01, nearInfrared: 0.05 } });
    const bands = { red: 0.6, nearInfrared: 0.4 };
    const all = gridFigures(gridOf(HOT_MIDDLE, { instrument: silicon, bands }), NO_CELLS);
    const it = figureOf(all.mean);
    expect(componentOf(it, '/spectral-red').contribution).toBeCloseTo(0.006 * it.value, 12);
    expect(componentOf(it, '/spectral-near-infrared').contribution).toBeCloseTo(0.02 * it.value, 12);
    expect(uncertaintyOf(all.lowestToMean)).toBeLessThan(1e-9 * figureValue(all.lowestToMean));
  });

  test('takes oblique light at each point from where the field lies', () => {
    const sensor = instrument({ angularResponse: { kind: 'f2', f2: 0.025 } });
    const distance = { distance: 15, halfWidth: 0, area: 1800, field: { width: 30, height: 60 } };
    const of = (rows: number[][]) =>
      componentOf(
        figureOf(
          gridFigures(gridOf(rows, { instrument: sensor, distance }), gridGeometry(3, 3, 30, 60, 2.54) ?? NO_CELLS)
            .mean,
        ),
        '/angular',
      ).contribution;
    // A grid that is lit at one point alone has that point's error: of the middle, and of a corner.
    const field = { width: 30, height: 60, distance: 15 };
    const middle = obliqueError({ kind: 'f2', f2: 0.025 }, field, { x: 15, y: 30 });
    const corner = obliqueError({ kind: 'f2', f2: 0.025 }, field, { x: 2.54, y: 2.54 });
    const [dark, lit] = [1e-9, 90];
    expect(
      of([
        [dark, dark, dark],
        [dark, lit, dark],
        [dark, dark, dark],
      ]),
    ).toBeCloseTo(10 * middle, 6);
    expect(
      of([
        [lit, dark, dark],
        [dark, dark, dark],
        [dark, dark, dark],
      ]),
    ).toBeCloseTo(10 * corner, 6);
    expect(middle).not.toBeCloseTo(corner, 3);
  });

  test('is not known before the first calibration of the meter', () => {
    const later = { code: 'calibrated-later', first: '2026-04-01' } as const;
    const early = instrument({ calibrationAbsent: later });
    const all = gridFigures(gridOf(HOT_MIDDLE, { instrument: early }), NO_CELLS);
    for (const metric of ['mean', 'lowestToMean', 'highestToMean', 'variation'] as const) {
      expect(figureOf(all[metric]).standardUncertainty, metric).toBeNull();
      expect(figureOf(all[metric]).uncertaintyAbsent, metric).toBe(later);
    }
  });

  test('does not grow with the spread over the grid: without repeats', () => {
    const moves = fc.array(fc.double({ min: -40, max: 40, noNaN: true }), { minLength: 9, maxLength: 9 });
    const steady = instrument({
      calibrationRelative: 0.025,
      calibrationAbsolute: 0.1,
      resolution: 0.1,
      angularResponse: slanted(0.02),
    });
    const flat = figureOf(
      gridFigures(gridOf(rowsOf(Array(9).fill(100)), { instrument: steady, distance: AT_FIFTEEN }), NO_CELLS).mean,
    );
    fc.assert(
      fc.property(moves, (by) => {
        const middle = by.reduce((sum, move) => sum + move, 0) / 9;
        const spread = by.map((move) => 100 + move - middle);
        const grid = gridOf(rowsOf(spread), { instrument: steady, distance: AT_FIFTEEN });
        const it = figureOf(gridFigures(grid, NO_CELLS).mean);
        expect(it.value).toBeCloseTo(100, 9);
        expect(it.standardUncertainty).toBeCloseTo(flat.standardUncertainty ?? Number.NaN, 9);
        expect(it.budget.some((entry) => entry.source.key.endsWith('/repeatability'))).toBe(false);
      }),
      RUNS,
    );
  });

  test('does not grow with the spread over the grid: with repeats', () => {
    const moves = fc.array(fc.double({ min: -40, max: 40, noNaN: true }), { minLength: 9, maxLength: 9 });
    const repeats = fc.array(fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 2, maxLength: 3 }), {
      minLength: 9,
      maxLength: 9,
    });
    fc.assert(
      fc.property(moves, repeats, (by, scatter) => {
        const at = (spread: number) => {
          const points = scatter.map((errors, i) => errors.map((error) => 100 + error + spread * (by[i] as number)));
          return componentOf(
            figureOf(gridFigures(gridOf([], { points: [points], instrument: SENSOR }), NO_CELLS).mean),
            '/repeatability',
          );
        };
        expect(at(1).contribution).toBeCloseTo(at(0).contribution, 9);
        expect(at(1).source.degreesOfFreedom).toBe(at(0).source.degreesOfFreedom);
      }),
      RUNS,
    );
  });

  test('is not lost where the repeats of a point are equal', () => {
    // Rounding leaves such repeats a scatter of 1e-14, and a calibration of 2.5 % beside it.
    const points = [[[199.8, 199.8, 199.8]]];
    const it = figureOf(
      gridFigures(gridOf([], { points, instrument: instrument({ calibrationRelative: 0.025 }) }), NO_CELLS).mean,
    );
    expect(it.coverageFactor).toBeCloseTo(1.96, 3);
    expect(it.interval95).toEqual([expect.closeTo(199.8 - 9.79, 2), expect.closeTo(199.8 + 9.79, 2)]);
  });

  test('is the same for the single point of a grid and for that point', () => {
    const it = figureOf(gridFigures(gridOf([[80]], { instrument: SENSOR, distance: AT_FIFTEEN }), NO_CELLS).mean);
    expect(componentOf(it, '/resolution').contribution).toBeCloseTo(0.1 / Math.sqrt(12), 12);
    expect(componentOf(it, '/repeatability').contribution).toBeCloseTo(0.8, 12);
  });
});

describe('properties of the figures', () => {
  const geometry = gridGeometry(3, 3, 24, 48, 2.54) ?? NO_CELLS;
  const ideal = instrument({ calibrationRelative: 0.025, angularResponse: slanted(0.02), repeatability: 0.01 });

  test('scaling all readings scales the means with their uncertainties and leaves the ratios', () => {
    fc.assert(
      fc.property(nine, fc.double({ min: 0.05, max: 20, noNaN: true }), (values, factor) => {
        const of = (scale: number) =>
          gridFigures(
            gridOf(rowsOf(values.map((it) => it * scale)), { instrument: ideal, distance: AT_FIFTEEN }),
            geometry,
          );
        const before = of(1);
        const after = of(factor);
        for (const metric of ['mean', 'cellMean'] as const) {
          expect(figureValue(after[metric]) / figureValue(before[metric])).toBeCloseTo(factor, 8);
          expect(uncertaintyOf(after[metric]) / uncertaintyOf(before[metric])).toBeCloseTo(factor, 8);
        }
        for (const metric of ['lowestToMean', 'highestToMean', 'variation'] as const) {
          expect(figureValue(after[metric])).toBeCloseTo(figureValue(before[metric]), 8);
          expect(uncertaintyOf(after[metric])).toBeCloseTo(uncertaintyOf(before[metric]), 8);
        }
      }),
      RUNS,
    );
  });

  test('permuting the points leaves all that weighs them equally', () => {
    const shuffled = nine.chain((values) =>
      fc.tuple(fc.constant(values), fc.shuffledSubarray(values, { minLength: 9, maxLength: 9 })),
    );
    fc.assert(
      fc.property(shuffled, ([values, others]) => {
        const of = (it: readonly number[]) => gridFigures(gridOf(rowsOf(it), { instrument: SENSOR }), NO_CELLS);
        const before = of(values);
        const after = of(others);
        for (const metric of ['mean', 'lowestToMean', 'highestToMean', 'variation'] as const) {
          expect(figureValue(after[metric])).toBeCloseTo(figureValue(before[metric]), 9);
          expect(uncertaintyOf(after[metric])).toBeCloseTo(uncertaintyOf(before[metric]), 9);
        }
      }),
      RUNS,
    );
  });

  test('the means lie between the lowest and the highest point, and the ratios around 100 %', () => {
    fc.assert(
      fc.property(nine, (values) => {
        const it = gridFigures(gridOf(rowsOf(values)), geometry);
        for (const metric of ['mean', 'cellMean'] as const) {
          expect(figureValue(it[metric])).toBeGreaterThanOrEqual(Math.min(...values) * (1 - 1e-12));
          expect(figureValue(it[metric])).toBeLessThanOrEqual(Math.max(...values) * (1 + 1e-12));
        }
        expect(figureValue(it.lowestToMean)).toBeLessThanOrEqual(100 + 1e-9);
        expect(figureValue(it.highestToMean)).toBeGreaterThanOrEqual(100 - 1e-9);
      }),
      RUNS,
    );
  });

  test('a grid of equal readings is even, whatever the weights', () => {
    const it = gridFigures(gridOf(rowsOf(Array(9).fill(64))), geometry);
    expect(figureValue(it.mean)).toBeCloseTo(64, 10);
    expect(figureValue(it.cellMean)).toBeCloseTo(64, 10);
    expect(figureValue(it.variation)).toBe(0);
    expect(figureValue(it.lowestToMean)).toBeCloseTo(100, 10);
  });
});
