import { describe, expect, test } from 'vitest';
import { exponentialFit } from '../../../src/measure/log/exponential-fit.ts';
import { binned, type TimeSeries } from '../../../src/measure/log/series.ts';
import { excessAt, type WarmUp, warmUp } from '../../../src/measure/log/warm-up.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { seriesOf } from '../../support/waves.ts';

const HOUR = 3600;
const log = (light: (t: number) => number, { noise = 0.1, end = HOUR, step = 5, seed = 1 } = {}): TimeSeries =>
  seriesOf(light, { rate: 1 / step, samples: Math.floor(end / step) + 1, noise, seed });

const decay =
  (excess: number, constant: number, settled = 80) =>
  (t: number) =>
    settled * (1 + excess * Math.exp(-t / constant));

const reasonOf = ({ settled, fit }: WarmUp) => ({
  settled: typeof settled === 'string' ? settled : 'known',
  fit: typeof fit === 'string' ? fit : 'known',
});

describe('one exponential', () => {
  test('is fitted within its uncertainty, nineteen of twenty and more', () => {
    let held = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const { fit } = warmUp(log(decay(0.06, 500), { noise: 0.3, step: 15, seed }));
      if (typeof fit === 'string') throw new Error(fit);
      if (Math.abs(fit.constant - 500) < 1.96 * fit.constantUncertainty) held++;
      expect(Math.abs(fit.settled - 80)).toBeLessThan(5 * fit.settledUncertainty);
    }
    expect(held).toBeGreaterThanOrEqual(36);
  });

  test('has its drop from cold, and its time to settle by the criterion', () => {
    const it = warmUp(log(decay(0.06, 500)));
    // From 84.8 to 80: 5.66 %; the mean of the last 15 minutes lies a little over 80.
    expect(it.drop?.value).toBeCloseTo(5.66, 0);
    // The spread over 15 min is under 0.5 % once 6 % exp(-t / 500) (1 - exp(-1.8)) is.
    const expected = 500 * Math.log((6 * (1 - Math.exp(-900 / 500))) / 0.5);
    expect(Math.abs((it.settlingTime?.value ?? 0) - expected)).toBeLessThan(
      2 * (it.settlingTime?.uncertainty ?? 0) + 60,
    );
    expect(excessAt(it, 600)?.value).toBeCloseTo(6 * Math.exp(-1.2), 1);
    expect(excessAt(it, 3 * HOUR)?.value).toBe(0);
  });

  test('is found with missing samples and uneven steps', () => {
    const random = seededRandom(9);
    const whole = log(decay(0.06, 500));
    const kept = [...whole.times.keys()].filter((i) => i < 3 || random.uniform() > 0.5);
    const pick = (all: Float64Array) => Float64Array.from(kept, (i) => all[i] as number);
    const { fit, drop } = warmUp({ times: pick(whole.times), values: pick(whole.values) });
    expect(fit).toMatchObject({ constant: expect.closeTo(500, -1.3) });
    expect(drop?.value).toBeCloseTo(5.66, 0);
  });
});

describe('logs that are something else', () => {
  test.each([
    ['two time constants', log((t) => 80 + 4 * Math.exp(-t / 60) + 4 * Math.exp(-t / 900)), 'known', 'not-exponential'],
    ['a fan that starts', log((t) => decay(0.06, 500)(t) * (t > 2000 ? 1.02 : 1)), 'known', 'not-exponential'],
    ['a steady light', log(() => 80), 'known', 'flat'],
    ['a drift without an end', log((t) => 80 * (1 - (0.03 * t) / HOUR)), 'still-moving', 'not-exponential'],
    ['a slow panel', log(decay(0.1, 2400)), 'still-moving', 'ends-early'],
    ['twenty-five minutes', log(decay(0.06, 500), { end: 1500 }), 'too-short', 'ends-early'],
    ['more scatter than the limit', log(() => 80, { noise: 3, step: 60 }), 'too-noisy', 'flat'],
    ['a few readings by hand', log(decay(0.06, 500), { step: 400, noise: 0 }), 'known', 'too-few'],
  ])('%s', (_, series, settled, fit) => {
    expect(reasonOf(warmUp(series))).toEqual({ settled, fit });
  });

  test('keep the settled value right, whatever their shape', () => {
    for (const light of [
      (t: number) => 80 + 4 * Math.exp(-t / 60) + 2 * Math.exp(-t / 400),
      (t: number) => 80 - 5 * Math.exp(-t / 300),
      (t: number) => (t < 300 ? 90 : 80),
    ]) {
      const { settled } = warmUp(log(light));
      expect(settled).toMatchObject({ value: expect.closeTo(80, 0) });
    }
  });

  test('a step late in the log moves the time to settle behind it', () => {
    const it = warmUp(log((t) => (t < 2000 ? 82 : 80)));
    expect(it.settlingTime?.value).toBeGreaterThan(1900);
    expect(it.fit).toBe('not-exponential');
  });

  test('one that begins late says nothing of the cold panel', () => {
    const late = log(decay(0.06, 500), { end: 2 * HOUR });
    const cut = { times: late.times.subarray(60), values: late.values.subarray(60) };
    expect(warmUp(cut)).toMatchObject({ cold: undefined, drop: undefined });
  });
});

test('a fit is refused where neighbouring points depend on one another', () => {
  const wave = log((t) => decay(0.05, 400)(t) + 0.6 * Math.sin(t / 200), { noise: 0.02 });
  expect(exponentialFit(binned(wave, 15))).toBe('not-exponential');
});
