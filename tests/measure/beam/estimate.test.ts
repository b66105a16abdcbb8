import { beforeAll, describe, expect, test } from 'vitest';
import { estimatePanel, FEWEST_READINGS, SMALLEST_PROBABILITY } from '../../../src/measure/beam/estimate.ts';
import { opticsFigures } from '../../../src/measure/beam/figures.ts';
import type { Estimate, OpticsEstimates } from '../../../src/measure/beam/optics-result.ts';
import { WIDEST_RANGE } from '../../../src/measure/beam/spread.ts';
import { powerSampler } from '../../../src/measure/money/ranking.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { figureOf } from '../make.ts';
import { type Bench, exactBench, lightOf, lightSource, opticsInput, SENSOR, SESSION, SIX_INCHES } from './make.ts';

const work = (bench: Bench): OpticsEstimates => {
  const { estimates, withheld } = estimatePanel(opticsInput(bench));
  if (!estimates) throw new Error(withheld.code);
  return estimates;
};
const relative = (it: Estimate | undefined) => (it ? it.standardUncertainty / it.value : Number.NaN);
const componentOf = (it: Estimate | undefined, ending: string) =>
  it?.budget.find((component) => component.source.key.endsWith(ending));

/** 60 W behind LEDs of 20 degrees, and behind LEDs of 40. */
const bench = exactBench(lightSource({ halfAngle: 20 }), { grid: [3, 3] });
const PAST = [8, 20, 40];
const SWEEP = [10, 20, 40, 60];

describe('values', () => {
  let byGrid: OpticsEstimates;
  let bySweep: OpticsEstimates;
  let byBeyond: OpticsEstimates;
  beforeAll(() => {
    const source = lightSource({ halfAngle: 40 });
    byGrid = work(exactBench(source, { grid: [3, 3] }));
    bySweep = work(exactBench(source, { grid: [3, 3], sweep: SWEEP }));
    byBeyond = work(exactBench(source, { grid: [3, 3], beyond: PAST }));
  }, 60_000);

  test('say what they rest on', () => {
    expect([byGrid, bySweep, byBeyond].map((it) => it.source)).toEqual(['grid', 'sweep', 'beyond']);
  });

  test('come near the truth, nearer with readings past the edges, and know it', () => {
    for (const it of [byGrid, bySweep, byBeyond]) {
      const [low, high] = it.emitted.interval95;
      expect(low).toBeLessThan(60);
      expect(high).toBeGreaterThan(60);
    }
    expect(Math.abs(byBeyond.emitted.value / 60 - 1)).toBeLessThan(0.04);
    const widths = [byGrid, bySweep, byBeyond].map(({ emitted: { interval95 } }) => interval95[1] - interval95[0]);
    expect(widths[1]).toBeLessThan(widths[0] as number);
    expect(widths[2]).toBeLessThan(0.6 * (widths[0] as number));
  });

  test('power, bias and capture make up the grid’s mean, less what is not the panel’s light', () => {
    const { emitted, samplingBias, capture, strayShare } = byBeyond;
    const light = lightOf(lightSource({ halfAngle: 40 }));
    const grid = [-1, 0, 1].flatMap((j) =>
      [-1, 0, 1].map((i) => light(i * (14 - 2.54), j * (30.5 - 2.54), SIX_INCHES)),
    );
    const common = ((grid.reduce((sum, it) => sum + it, 0) / 9) * 28 * 61) / 1000;
    const made = emitted.value * (samplingBias?.value ?? 0) * capture.value;
    expect(made / common / (1 - (strayShare ?? 0))).toBeCloseTo(1, 6);
    expect(Math.abs(strayShare ?? 1)).toBeLessThan(0.02);
  });

  test('the table holds what single LEDs give', () => {
    const light = lightOf(lightSource({ halfAngle: 40 }));
    const mean = (z: number) => {
      let sum = 0;
      for (let i = 0; i < 400; i++) {
        sum += light(28 * (((i % 20) + 0.5) / 20 - 0.5), 61 * ((Math.floor(i / 20) + 0.5) / 20 - 0.5), z) / 400;
      }
      return sum;
    };
    for (const { distance, mean: modelled } of byBeyond.targets) {
      const truth = mean(distance);
      expect(modelled.interval95[0]).toBeLessThan(truth);
      expect(modelled.interval95[1]).toBeGreaterThan(truth);
    }
  });

  test('readings twice as high mean about twice the power', () => {
    const grid = bench.grid as NonNullable<Bench['grid']>;
    const still = { ...bench, sensor: { ...SENSOR, calibrationAbsolute: 0, resolution: 0 } };
    const [once, twice] = [1, 2].map((by) =>
      work({ ...still, grid: { ...grid, values: grid.values.map((it) => it * by) } }),
    );
    expect((twice?.emitted.value ?? 0) / (once?.emitted.value ?? 1)).toBeCloseTo(2, 9);
  });

  test('points without a reading are left out on both sides', () => {
    const input = opticsInput(bench);
    const accepted = [0, 1, 2, 4, 5, 6, 8];
    const pick = <T>(list: readonly T[] | undefined) => accepted.map((i) => (list ?? [])[i] as T);
    const { estimates } = estimatePanel({
      ...input,
      layout: { ...input.layout, grid: { shape: { columns: 3, rows: 3, inset: 2.54 }, accepted } },
      ...(input.grid && {
        grid: {
          values: pick(input.grid.values),
          scatter: pick(input.grid.scatter),
          rounding: pick(input.grid.rounding),
        },
      }),
    });
    const [low = 0, high = 0] = estimates?.emitted.interval95 ?? [];
    expect(low).toBeLessThan(60);
    expect(high).toBeGreaterThan(60);
    expect(Math.abs((estimates?.emitted.value ?? 0) / 60 - 1)).toBeLessThan(0.2);
  });

  test('layouts that cannot be are refused', () => {
    const input = opticsInput(bench);
    expect(() => estimatePanel({ ...input, layout: { ...input.layout, field: { width: 4, height: 60 } } })).toThrow(
      RangeError,
    );
    expect(() => estimatePanel({ ...input, layout: { ...input.layout, distance: 0 } })).toThrow(RangeError);
  });
});

describe('what is withheld', () => {
  test(`fewer than ${FEWEST_READINGS} readings tell no beam; as many do`, () => {
    const some = (count: number) =>
      estimatePanel(opticsInput(exactBench(lightSource({ halfAngle: 20 }), { sweep: SWEEP.slice(0, count) })));
    const tooFew = { code: 'beam-too-few-readings', fewest: 4 };
    expect(some(FEWEST_READINGS - 1)).toEqual({ withheld: tooFew });
    expect(some(FEWEST_READINGS).withheld?.code).not.toBe(tooFew.code);
    // One distance read again and again is one place.
    expect(estimatePanel(opticsInput(exactBench(lightSource(), { sweep: [20, 20, 20, 20] }))).withheld).toEqual(tooFew);
  });

  test('readings that no beam explains: a corner twice as bright, in the grid, and a sweep that rises', () => {
    const grid = bench.grid as NonNullable<Bench['grid']>;
    const hot = { ...grid, values: grid.values.map((it, i) => (i === 0 ? 2 * it : it)) };
    const odd = estimatePanel(opticsInput({ ...bench, grid: hot }));
    expect(odd.withheld).toEqual({ code: 'beam-unexplained' });
    expect(odd.estimates).toBeUndefined();
    // A sweep that no beam explains withholds the figures though the grid alone would give them.
    const light = lightOf(lightSource({ halfAngle: 20 }));
    const sweep = SWEEP.map((z, i) => [z, light(0, 0, z) * ([1, 0.7, 1.3, 0.8][i % 4] as number)] as const);
    expect(estimatePanel(opticsInput({ ...bench, sweep })).withheld).toEqual(odd.withheld);
    expect(estimatePanel(opticsInput(bench)).withheld).toBeUndefined();
  });

  test('the line between explained and not is the stated probability', () => {
    const grid = bench.grid as NonNullable<Bench['grid']>;
    const found = [1.2, 1.5, 2, 2.8].map((by) =>
      estimatePanel(
        opticsInput({ ...bench, grid: { ...grid, values: grid.values.map((it, i) => (i === 4 ? by * it : it)) } }),
      ),
    );
    for (const { fit, withheld } of found) {
      expect(withheld === undefined).toBe((fit?.probability ?? 0) >= SMALLEST_PROBABILITY);
    }
    expect(new Set(found.map((it) => it.withheld === undefined)).size).toBe(2);
  });

  test('a power that the readings leave open: nine points of a very small panel, but not with readings past its edges', () => {
    const small = lightSource({
      halfAngle: 60,
      width: 6,
      height: 6,
      columns: 3,
      rows: 3,
      power: { red: 2, nearInfrared: 2 },
    });
    const open = estimatePanel(opticsInput(exactBench(small, { grid: [3, 3] })));
    const told = work(exactBench(small, { grid: [3, 3], beyond: PAST }));
    expect(open.withheld).toEqual({ code: 'beam-left-open' });
    expect(told.emitted.interval95[1] / told.emitted.interval95[0]).toBeLessThan(WIDEST_RANGE);
  });
});

describe('the claimed beam angle', () => {
  const source = exactBench(lightSource({ halfAngle: 20 }), { grid: [3, 3], sweep: SWEEP, beyond: PAST });
  test('moves nothing, and is named where the readings rule it out', () => {
    const [none, right, wrong] = [undefined, 40, 90].map((beamAngle) =>
      estimatePanel(opticsInput({ ...source, ...(beamAngle && { beamAngle }) })),
    );
    expect(right?.estimates).toEqual(none?.estimates);
    expect(wrong?.estimates).toEqual(none?.estimates);
    expect(right?.claimRuledOut).toBeUndefined();
    expect(wrong?.claimRuledOut).toBe(45);
  });

  test('just inside the interval it stands, just outside it is ruled out', () => {
    const [low, high] = work(source).halfAngle.interval95;
    const ruledOut = (half: number) => estimatePanel(opticsInput({ ...source, beamAngle: 2 * half })).claimRuledOut;
    expect([ruledOut(low + 0.01), ruledOut(high - 0.01)]).toEqual([undefined, undefined]);
    expect([ruledOut(low - 0.01), ruledOut(high + 0.01)]).toEqual([low - 0.01, high + 0.01]);
  });
});

describe('the simulation', () => {
  test('repeats digit for digit, and follows its seed', () => {
    const [a, b, c] = [5, 5, 6].map((seed) => work({ ...bench, seed }));
    expect(a).toEqual(b);
    expect(a?.emitted.interval95).not.toEqual(c?.emitted.interval95);
    // Another seed is another simulation of the same: the value moves by far less than the interval is wide.
    expect(Math.abs((a?.emitted.value ?? 0) - (c?.emitted.value ?? 0))).toBeLessThan(
      0.3 * (a?.emitted.standardUncertainty ?? 0),
    );
  });

  test('the squares of a budget’s components sum to the variance', () => {
    const found = work(bench);
    for (const it of [found.emitted, found.capture, found.halfAngle, found.samplingBias, found.targets[1]?.mean]) {
      const u = Math.hypot(...(it?.budget ?? []).map((component) => component.contribution));
      expect(Math.abs(u / (it?.standardUncertainty ?? 0) - 1)).toBeLessThan(0.02);
      expect(new Set(it?.budget.map((component) => component.source.key)).size).toBe(it?.budget.length);
    }
  });

  test('a calibration moves power and irradiance one to one, and ratios not at all', () => {
    const found = work({ ...bench, sensor: { ...SENSOR, calibrationRelative: 0.04 } });
    expect(componentOf(found.emitted, '/calibration')?.contribution).toBeCloseTo(0.04 * found.emitted.value, 9);
    expect(componentOf(found.targets[1]?.peak, '/calibration')?.contribution).toBeCloseTo(
      0.04 * (found.targets[1]?.peak?.value ?? 0),
      9,
    );
    for (const it of [found.capture, found.halfAngle, found.samplingBias]) {
      expect(componentOf(it, 'sensor@2026-01-10/calibration')).toBeUndefined();
    }
    const double = work({ ...bench, sensor: { ...SENSOR, calibrationRelative: 0.08 } });
    expect(double.emitted.standardUncertainty ** 2 - found.emitted.standardUncertainty ** 2).toBeCloseTo(
      (0.08 ** 2 - 0.04 ** 2) * found.emitted.value ** 2,
      -1,
    );
  });

  test('signs are those of the session’s other figures, and a wider setting of the distance counts', () => {
    const source = exactBench(lightSource({ halfAngle: 60, width: 12, height: 12, columns: 6, rows: 6 }), {
      grid: [3, 3],
      beyond: PAST,
    });
    const [narrow, wide] = [0.2, 1.5].map((distanceSetting) => work({ ...source, distanceSetting }));
    // If the sensor stood farther away than it was set, there is more light at 30 cm than is stated.
    expect(componentOf(wide?.targets[1]?.mean, `${SESSION}/distance`)?.contribution).toBeLessThan(0);
    expect(relative(wide?.targets[1]?.mean)).toBeGreaterThan(1.1 * relative(narrow?.targets[1]?.mean));
  });

  test('coarse resolution of the display count', () => {
    const past = exactBench(lightSource({ halfAngle: 40 }), { grid: [3, 3], beyond: PAST });
    const fine = work({ ...past, sensor: { ...SENSOR, resolution: 0.1 } });
    const coarse = work({ ...past, sensor: { ...SENSOR, resolution: 8 } });
    expect(relative(coarse.emitted)).toBeGreaterThan(relative(fine.emitted));
  });
});

test('two panels of one meter: its calibration cancels in their order', () => {
  const figures = [20, 30].map((halfAngle, i) => {
    const it = exactBench(lightSource({ halfAngle, power: { red: 30 + i, nearInfrared: 30 } }), { grid: [3, 3] });
    const result = estimatePanel(opticsInput(it));
    const context = { session: `panel-${i}/2026-03-02`, instrument: SENSOR, inputs: [], notes: [] };
    return figureOf(opticsFigures(result, context).emitted);
  });
  const only = figures.map((it) => ({
    ...it,
    budget: it.budget.filter((component) => component.source.key.endsWith('/calibration')),
  }));
  const draw = powerSampler(only, seededRandom(1));
  const ratios = Array.from({ length: 200 }, () => {
    const [a = 0, b = 1] = draw();
    return a / b;
  });
  expect(Math.max(...ratios) / Math.min(...ratios)).toBeCloseTo(1, 9);
});
