import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type FlickerWaveform,
  flickerWaveform,
  type NoWaveform,
} from '../../../src/measure/waveform/flicker-waveform.ts';
import { modulationOf } from '../../../src/measure/waveform/modulation.ts';
import { seriesOf, WAVES } from '../../support/waves.ts';
import { RUNS } from '../make.ts';

const told = (it: FlickerWaveform | NoWaveform): FlickerWaveform => {
  if (typeof it === 'string') throw new Error(it);
  return it;
};

const at = (frequency: number, light: (turns: number) => number) => (t: number) => light(t * frequency);

describe.each(WAVES)('$name', ({ light, depth, index }) => {
  test('has the depth and index of its definition, by quadrature', () => {
    const period = Float64Array.from({ length: 100_000 }, (_, i) => light((i + 0.5) / 100_000));
    expect(modulationOf(period).depth).toBeCloseTo(depth, 2);
    expect(modulationOf(period).index).toBeCloseTo(index, 5);
  });

  test.each([0, 0.02])('is read off a record with noise of %f', (noise) => {
    const it = told(flickerWaveform(seriesOf(at(100.37, light), { rate: 10_000, samples: 2500, noise })));
    expect(it.kind).toBe('periodic');
    expect(it.bound).toBeUndefined();
    expect(Math.abs(it.depth - depth)).toBeLessThan(3 * it.depthUncertainty + 0.02);
    expect(it.depthUncertainty).toBeLessThan(3);
    expect(Math.abs(it.index - index)).toBeLessThan(3 * it.indexUncertainty + 0.0001);
    expect(it.frequency?.value).toBeCloseTo(100.37, 1);
  });
});

describe('noise', () => {
  test('is not taken for flicker: a steady light has a bound, and no frequency', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const it = told(flickerWaveform(seriesOf(() => 1, { rate: 10_000, samples: 2000, noise: 0.01, seed })));
      expect(it).toMatchObject({ kind: 'steady', bound: 'below' });
      expect(it.frequency).toBeUndefined();
      expect(it.depth).toBeLessThan(1);
    }
  });

  test('makes a shallow wave no deeper: the interval holds the depth in nine of ten, and more', () => {
    let held = 0;
    for (let seed = 1; seed <= 50; seed++) {
      const light = (t: number) => 1 + 0.03 * Math.sin(2 * Math.PI * 213.7 * t);
      const it = told(flickerWaveform(seriesOf(light, { rate: 10_000, samples: 2000, noise: 0.01, seed })));
      if (Math.abs(it.depth - 3) < 1.96 * it.depthUncertainty) held++;
    }
    expect(held).toBeGreaterThanOrEqual(45);
  });

  test('leaves zero a reading', () => {
    const it = told(flickerWaveform(seriesOf(() => 3, { rate: 10_000, samples: 500 })));
    expect(it).toMatchObject({ kind: 'constant', depth: 0, index: 0 });
    expect(it.bound).toBeUndefined();
  });
});

describe('what the samples can not tell', () => {
  test('a frequency is doubted where the sensor lets through more than half the rate', () => {
    const fast = seriesOf((t) => 1 + 0.5 * Math.sin(2 * Math.PI * 19_000 * t), {
      rate: 20_000,
      samples: 4000,
      noise: 0.01,
    });
    expect(told(flickerWaveform(fast, { bandwidth: 150_000 }))).toMatchObject({ mayBeAlias: true });
    expect(told(flickerWaveform(fast, { bandwidth: 8000 }))).toMatchObject({ mayBeAlias: false });
  });

  test('a depth is a bound where samples hit the same few places of each period', () => {
    const light = (t: number) => 1 + 0.5 * Math.sin(2 * Math.PI * 5000 * t + 0.4);
    const it = told(flickerWaveform(seriesOf(light, { rate: 20_000, samples: 4000 })));
    expect(it.bound).toBe('above');
    expect(it.depth).toBeLessThanOrEqual(50);
  });

  test('a record of two periods and a half is too short', () => {
    const light = at(100, WAVES[1]?.light as (x: number) => number);
    expect(flickerWaveform(seriesOf(light, { rate: 20_000, samples: 500, noise: 0.01 }))).toBe('too-short');
  });

  test.each([
    ['no steady part', (t: number) => Math.sin(2 * Math.PI * 100 * t), 'below-darkness'],
    ['half of the steady part gone', (t: number) => 0.5 + Math.sin(2 * Math.PI * 100 * t), 'below-darkness'],
    ['darkness', () => 0, 'no-light'],
  ] as const)('%s is refused', (_, light, why) => {
    expect(flickerWaveform(seriesOf(light, { rate: 10_000, samples: 2000, noise: 0.001 }))).toBe(why);
  });

  test('uneven steps and too few samples are refused', () => {
    const series = seriesOf(() => 1, { rate: 1000, samples: 200, noise: 0.01 });
    const uneven = { ...series, times: series.times.map((t, i) => t + (i % 3 === 0 ? 0.0004 : 0)) };
    expect(flickerWaveform(uneven)).toBe('uneven-steps');
    expect(flickerWaveform(seriesOf(() => 1, { rate: 1000, samples: 20 }))).toBe('too-few');
  });
});

describe('waves that have no period', () => {
  test.each([
    ['two frequencies', (t: number) => 1 + 0.3 * Math.sin(628.3 * t) + 0.2 * Math.sin(860.8 * t), 50],
    ['a frequency that wanders', (t: number) => 1 + 0.5 * Math.sin(2 * Math.PI * 100 * (t + 0.1 * t * t)), 50],
  ] as const)('%s: by the extremes of the record', (_, light, depth) => {
    const it = told(flickerWaveform(seriesOf(light, { rate: 20_000, samples: 8000, noise: 0.01 })));
    expect(it.kind).toBe('irregular');
    expect(Math.abs(it.depth - depth)).toBeLessThan(3 * it.depthUncertainty);
  });

  test('overtones and half frequencies are of one period', () => {
    const light = (t: number) => 1 + 0.3 * Math.sin(628.3 * t) + 0.1 * Math.sin(314.15 * t);
    const it = told(flickerWaveform(seriesOf(light, { rate: 20_000, samples: 4000, noise: 0.002 })));
    expect(it.kind).toBe('periodic');
    expect(it.frequency?.value).toBeCloseTo(100, 1);
  });
});

test('darkness is taken off before anything else', () => {
  const light = (t: number) => 0.2 + 1 + 0.5 * Math.sin(2 * Math.PI * 97 * t);
  const series = seriesOf(light, { rate: 10_000, samples: 4000 });
  expect(told(flickerWaveform(series, { dark: 0.2 })).depth).toBeCloseTo(50, 0);
  expect(told(flickerWaveform(series)).depth).toBeCloseTo(50 / 1.2, 0);
});

test('whatever the record, there is an answer or a reason', () => {
  const value = fc.double({ min: -10, max: 1000, noNaN: true });
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 300 }), (values) => {
      const it = flickerWaveform({ times: Float64Array.from(values.keys()), values: Float64Array.from(values) });
      if (typeof it === 'string') return;
      expect(it.depth).toBeGreaterThanOrEqual(0);
      expect(it.depth).toBeLessThanOrEqual(100);
      expect(Number.isFinite(it.depthUncertainty + it.index)).toBe(true);
    }),
    RUNS,
  );
});
