import { describe, expect, test } from 'vitest';
import { linesOf } from '../../../src/measure/waveform/lines.ts';
import { periodogram } from '../../../src/measure/waveform/periodogram.ts';
import { seriesOf } from '../../support/waves.ts';

describe('the periodogram', () => {
  test('has the powers that numpy 2.4 makes of the same record under the same window', () => {
    // x = [1,3,2,5,4,4,1,0,2,6,5,3,1,2,2,7]; w = Hann, periodic; 4 |fft((x - Σwx / Σw) w)|² / (Σw)²
    const numpy = [
      0, 0.1914858162267014, 3.6416410958511993, 6.421414827229681, 1.9032997372194231, 0.33591779396172344,
      0.033488936224487814, 0.0411193452417662,
    ];
    const record = Float64Array.from([1, 3, 2, 5, 4, 4, 1, 0, 2, 6, 5, 3, 1, 2, 2, 7]);
    const { power, spacing } = periodogram(record, 16);
    expect(spacing).toBe(1);
    for (const [k, it] of numpy.entries()) expect(power[k]).toBeCloseTo(it, 12);
  });

  test('shows a sine at its amplitude, whatever the length of the record', () => {
    for (const samples of [1000, 1024, 1500]) {
      const { values } = seriesOf((t) => 5 + 0.7 * Math.sin(2 * Math.PI * 123.4 * t), { rate: 4000, samples });
      const [line, ...others] = linesOf(values, 4000).lines;
      expect(line?.frequency).toBeCloseTo(123.4, 0);
      expect(line?.amplitude).toBeCloseTo(0.7, 1);
      expect(others).toEqual([]);
    }
  });
});

test('noise has the scatter that it was made with', () => {
  const { values } = seriesOf(() => 1, { rate: 1000, samples: 4000, noise: 0.2 });
  const { lines, noise } = linesOf(values, 1000);
  expect(lines).toEqual([]);
  expect(noise).toBeGreaterThan(0.18);
  expect(noise).toBeLessThan(0.22);
});
