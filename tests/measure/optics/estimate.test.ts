import { describe, expect, test } from 'vitest';
import { type Estimate, estimatePanel, type OpticsEstimates } from '../../../src/measure/optics/estimate.ts';
import { opticsFigures } from '../../../src/measure/optics/figures.ts';
import { planeValues } from '../../../src/measure/optics/plane-values.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { powerSampler } from '../../../src/measure/ranking.ts';
import { figureOf, slanted } from '../make.ts';
import { type Bench, exactBench, lightSource, opticsInput, SENSOR, SESSION, SIX_INCHES, TAPE } from './make.ts';

const NOTHING = {
  ...SENSOR,
  calibrationRelative: 0,
  calibrationAbsolute: 0,
  resolution: 0,
  angularResponse: slanted(0),
  repeatability: 0,
};
const EXACT: Partial<Bench> = {
  sensor: NOTHING,
  tape: { ...TAPE, calibrationRelative: 0, resolution: 0 },
  edge: 0,
  distanceSetting: 0,
  edgeSetting: 0,
};

const work = (bench: Bench): OpticsEstimates => {
  const { estimates, choice } = estimatePanel(opticsInput(bench));
  if (!estimates) throw new Error('withheld' in choice ? choice.withheld : 'nothing came of it');
  return estimates;
};
const relative = (it: Estimate | undefined) => (it ? it.standardUncertainty / it.value : Number.NaN);
const lineOf = (it: Estimate | undefined, ending: string) => it?.budget.find((line) => line.key.endsWith(ending));

const bench = exactBench(lightSource({ halfAngle: 20 }), { grid: [3, 3] });

describe('values', () => {
  test('follow from the readings and the fitted beam', () => {
    const found = work(bench);
    const plane = planeValues(bench.emitter, bench.field, found.order.order, 60, SIX_INCHES, {
      columns: 3,
      rows: 3,
      inset: 2.54,
    });
    expect(found.capture.value).toBeCloseTo(plane.capture, 9);
    expect(found.samplingBias?.value).toBeCloseTo(plane.samplingBias ?? Number.NaN, 9);
    const grid = bench.grid as NonNullable<Bench['grid']>;
    const mean = grid.values.reduce((sum, it) => sum + it, 0) / 9;
    const common = (mean * bench.field.width * bench.field.height) / 1000;
    expect(found.emitted?.value).toBeCloseTo(common / (plane.samplingBias ?? 1) / plane.capture, 8);
    // At the reference distance the table says the mean without the grid's bias.
    expect(found.targets[0]?.mean.value).toBeCloseTo(mean / (plane.samplingBias ?? 1), 8);
    expect((found.targets[0]?.peak.value ?? 0) / ((plane.peak.value * (found.emitted?.value ?? 0)) / 60)).toBeCloseTo(
      1,
      3,
    );
  });

  test('the power follows from a sweep where there is no grid', () => {
    const found = work(exactBench(lightSource({ halfAngle: 20 }), { sweep: [10, 20, 40, 80] }));
    expect(found.order.source).toBe('sweep');
    expect(Math.abs((found.emitted?.value ?? 0) / 60 - 1)).toBeLessThan(2e-3);
    expect(found.samplingBias).toBeUndefined();
    expect(found.targets).toHaveLength(2);
  });

  test('a claim alone gives capture but no power', () => {
    const found = work({ ...exactBench(lightSource(), {}), beamAngle: 40 });
    expect(found.order).toMatchObject({ source: 'claim', halfAngle: 20 });
    expect(found.capture.value).toBeGreaterThan(0.5);
    expect(found.emitted).toBeUndefined();
    expect(found.targets).toEqual([]);
  });

  test('readings twice as high mean twice the power and the same beam', () => {
    const grid = bench.grid as NonNullable<Bench['grid']>;
    const still = { ...bench, sensor: { ...SENSOR, calibrationAbsolute: 0, resolution: 0 } };
    const [once, twice] = [1, 2].map((by) =>
      work({ ...still, grid: { ...grid, values: grid.values.map((it) => it * by) } }),
    );
    expect((twice?.emitted?.value ?? 0) / (once?.emitted?.value ?? 1)).toBeCloseTo(2, 10);
    expect(twice?.halfAngle.value).toBeCloseTo(once?.halfAngle.value ?? Number.NaN, 10);
  });

  test('points without a reading are left out on both sides', () => {
    const input = opticsInput(bench);
    const kept = [0, 1, 2, 4, 5, 6, 8];
    const pick = <T>(list: readonly T[] | undefined) => kept.map((i) => (list ?? [])[i] as T);
    const { estimates } = estimatePanel({
      ...input,
      layout: { ...input.layout, grid: { shape: { columns: 3, rows: 3, inset: 2.54 }, kept } },
      grid: input.grid && {
        ...input.grid,
        values: pick(input.grid.values),
        scatter: pick(input.grid.scatter),
        rounding: pick(input.grid.rounding),
      },
    });
    expect(Math.abs((estimates?.emitted?.value ?? 0) / 60 - 1)).toBeLessThan(5e-3);
  });

  test('layouts that cannot be are refused', () => {
    const input = opticsInput(bench);
    expect(() => estimatePanel({ ...input, layout: { ...input.layout, field: { width: 4, height: 60 } } })).toThrow(
      RangeError,
    );
    expect(() => estimatePanel({ ...input, layout: { ...input.layout, distance: 0 } })).toThrow(RangeError);
  });
});

describe('the simulation', () => {
  test('repeats digit for digit, and follows its seed', () => {
    const [a, b, c] = [5, 5, 6].map((seed) => work({ ...bench, seed }));
    expect(a).toEqual(b);
    expect(a?.emitted?.interval95).not.toEqual(c?.emitted?.interval95);
    expect(a?.emitted?.value).toBe(c?.emitted?.value);
  });

  test('a calibration alone moves the power one to one and the beam not at all', () => {
    const found = work({ ...bench, ...EXACT, sensor: { ...NOTHING, calibrationRelative: 0.04 }, draws: 4000 });
    const line = lineOf(found.emitted, '/calibration');
    expect(line?.contribution).toBeCloseTo(0.04 * (found.emitted?.value ?? 0), 9);
    expect(lineOf(found.capture, '/calibration')).toBeUndefined();
    expect(lineOf(found.halfAngle, '/calibration')).toBeUndefined();
    expect(lineOf(found.samplingBias, '/calibration')).toBeUndefined();
    expect(lineOf(found.targets[1]?.peak, '/calibration')?.contribution).toBeCloseTo(
      0.04 * (found.targets[1]?.peak.value ?? 0),
      9,
    );
  });

  test('a claimed beam alone: the interval is that of the half angles', () => {
    const claim = { ...exactBench(lightSource(), {}), ...EXACT, beamAngle: 60, draws: 20_000 };
    const { halfAngle, capture } = work(claim);
    expect(relative(halfAngle)).toBeCloseTo(0.1, 2);
    expect(halfAngle.interval95[0]).toBeCloseTo(30 - 1.96 * 3, 0);
    expect(halfAngle.interval95[1]).toBeCloseTo(30 + 1.96 * 3, 0);
    const at = (angle: number) => work({ ...claim, beamAngle: 2 * angle, draws: 40 }).capture.value;
    expect(capture.interval95[0]).toBeCloseTo(at(halfAngle.interval95[1]), 3);
    expect(capture.interval95[1]).toBeCloseTo(at(halfAngle.interval95[0]), 3);
  });

  test.each(['distance', 'edges', 'angular', 'repeatability', 'light-edge'])(
    'a straight line and the draws agree: %s',
    (only) => {
      const part: Partial<Bench> = {
        distance: { distanceSetting: 0.5 },
        edges: { edgeSetting: 0.5 },
        angular: { sensor: { ...NOTHING, angularResponse: slanted(0.02) } },
        repeatability: { sensor: { ...NOTHING, repeatability: 0.004 } },
        'light-edge': { edge: 0.3 },
      }[only] as Partial<Bench>;
      const found = work({ ...bench, ...EXACT, ...part, draws: 8000 });
      for (const it of [found.emitted, found.capture, found.samplingBias, found.halfAngle, found.targets[1]?.mean]) {
        const u = Math.hypot(...(it?.budget ?? []).map((line) => line.contribution));
        expect(Math.abs(u / (it?.standardUncertainty ?? 0) - 1)).toBeLessThan(0.08);
      }
      if (only !== 'repeatability') expect(found.emitted?.budget.some((line) => line.key.includes(only))).toBe(true);
    },
  );

  test('signs are those of the session’s other figures: a farther sensor reads low, a high meter high', () => {
    // Nine points leave the beam of so small a panel open.
    const small = lightSource({ halfAngle: 60, width: 10, height: 10, columns: 5, rows: 5 });
    const found = work({ ...exactBench(small, { grid: [3, 3] }), beamAngle: 120 });
    expect(found.order.source).toBe('claim');
    expect(lineOf(found.emitted, `${SESSION}/distance`)?.contribution).toBeLessThan(0);
    expect(lineOf(found.emitted, '@2026-01-10/calibration')?.contribution).toBeGreaterThan(0);
  });

  test.each([
    ['width', 0],
    ['height', 0],
    ['distance', 0.3],
  ] as const)('the %s acts as it would if it were stated otherwise', (what, distanceSetting) => {
    const stated = { ...bench, ...EXACT, distanceSetting, edgeSetting: what === 'distance' ? 0 : 0.2 };
    const key = what === 'distance' ? `${SESSION}/distance` : `lantern-40/field-${what}/edges`;
    const found = work(stated);
    const size = what === 'distance' ? 0.3 / Math.sqrt(3) : 0.2 * Math.sqrt(2 / 3);
    const restated = [-size, size].map((by) =>
      work({
        ...stated,
        ...(what === 'distance'
          ? { distance: SIX_INCHES + by }
          : { field: { ...bench.field, [what]: bench.field[what] + by } }),
      }),
    );
    for (const of of ['emitted', 'capture', 'halfAngle'] as const) {
      const change = ((restated[1]?.[of]?.value ?? 0) - (restated[0]?.[of]?.value ?? 0)) / 2;
      // A side that is stated too large errs like one that is restated so; a distance errs the other way about.
      const expected = what === 'distance' ? -change : change;
      const contribution = lineOf(found[of], key)?.contribution ?? 0;
      expect(Math.abs(contribution - expected)).toBeLessThan(
        0.05 * Math.abs(expected) + 2e-4 * (found[of]?.value ?? 0),
      );
    }
  });

  test('repeats that were few widen the interval: Student’s t', () => {
    const input = opticsInput({ ...bench, ...EXACT, sensor: { ...NOTHING, repeatability: 0.05 }, draws: 8000 });
    const pooled = (degreesOfFreedom: number) => {
      const line = input.grid?.scatterLine;
      const grid = input.grid && {
        ...input.grid,
        scatterLine: { ...input.grid.scatterLine, ...line, degreesOfFreedom },
      };
      const it = estimatePanel({ ...input, ...(grid && { grid }), beamAngle: 40 }).estimates?.emitted;
      return it ? (it.interval95[1] - it.interval95[0]) / it.value : Number.NaN;
    };
    expect(pooled(4)).toBeGreaterThan(1.15 * pooled(Number.POSITIVE_INFINITY));
  });

  test('coarse steps of the display count', () => {
    const fine = work({ ...bench, sensor: { ...SENSOR, resolution: 0.1 } });
    const coarse = work({ ...bench, sensor: { ...SENSOR, resolution: 3 } });
    expect(relative(coarse.halfAngle)).toBeGreaterThan(1.2 * relative(fine.halfAngle));
    expect(lineOf(coarse.emitted, '/grid/resolution')?.contribution).toBeGreaterThan(
      20 * (lineOf(fine.emitted, '/grid/resolution')?.contribution ?? 1),
    );
  });
});

test('two panels of one meter: its calibration cancels in their order', () => {
  const figures = [20, 30].map((halfAngle, i) => {
    const it = exactBench(lightSource({ halfAngle, power: { red: 30 + i, nearInfrared: 30 } }), { grid: [3, 3] });
    const sensor = { ...NOTHING, calibrationRelative: 0.05 };
    const result = estimatePanel(opticsInput({ ...it, ...EXACT, sensor }));
    const context = { session: `panel-${i}/2026-03-02`, meter: sensor, inputs: [], notes: [] };
    return figureOf(opticsFigures(result, context).emitted);
  });
  // Of what moves the two apart, only the calibration is left here: it moves both alike.
  const only = figures.map((it) => ({ ...it, budget: it.budget.filter((line) => line.key.endsWith('/calibration')) }));
  const draw = powerSampler(only, seededRandom(1));
  const ratios = Array.from({ length: 200 }, () => {
    const [a = 0, b = 1] = draw();
    return a / b;
  });
  expect(Math.max(...ratios) / Math.min(...ratios)).toBeCloseTo(1, 9);
});
