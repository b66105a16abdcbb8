import { describe, expect, test } from 'vitest';
import { analysed } from '../../../src/measure/spectrum/analysis.ts';
import { gaussian, spectrumOf } from '../../support/spectrum.ts';

const LED = gaussian(660, 7);
const rounded = (digits: number) => (nm: number) => Number(LED(nm).toFixed(digits));

describe('the dark level', () => {
  test('is taken off where it is clear', () => {
    const { dark, total } = analysed(spectrumOf([LED], { noise: 1e-3, dark: 0.02 }));
    expect(dark.isKnown).toBe(true);
    expect(Math.abs(dark.offset - 0.02)).toBeLessThan(3 * dark.offsetError + 1e-4);
    expect(dark.noise).toBeCloseTo(1e-3, 3);
    expect(total).toBeCloseTo(7 * Math.sqrt(2 * Math.PI), 0);
  });

  test('below nought is taken off too, and no light is lost by it', () => {
    expect(analysed(spectrumOf([LED], { noise: 1e-4, dark: -0.01 })).total).toBeCloseTo(17.55, 1);
  });

  test('is not known where all is lit, and then nothing is taken off', () => {
    const { dark } = analysed(spectrumOf([(nm) => 1 + nm / 1000]));
    expect(dark).toMatchObject({ isKnown: false, offset: 0 });
  });

  test('two dark ends that differ make it unsure by as much', () => {
    const { dark } = analysed(spectrumOf([LED, (nm) => (nm < 660 ? 0 : 0.01)], { noise: 1e-4 }));
    expect(dark.offsetError).toBeGreaterThan(0.002);
  });
});

describe('a full sensor', () => {
  test.each([
    ['without noise', (nm: number) => Math.min(0.8, LED(nm))],
    ['in counts', (nm: number) => Math.round(4095 * Math.min(1, 1.2 * LED(nm)))],
  ])('%s is seen', (_, light) => {
    const { flat } = analysed(spectrumOf([light])).faults;
    expect(flat?.from).toBeLessThan(657);
    expect(flat?.to).toBeGreaterThan(663);
  });

  test.each([1, 2, 3])('a rounded top of %d decimals is none', (digits) => {
    expect(analysed(spectrumOf([rounded(digits)], { step: 0.2 })).faults.flat).toBeUndefined();
  });
});

test('an end that breaks off within light is named, with how much is there', () => {
  const { cut } = analysed(spectrumOf([LED, gaussian(995, 14)], { noise: 1e-3 })).faults;
  expect(cut).toMatchObject([{ end: 'long', at: 1000 }]);
  expect(cut[0]?.share).toBeGreaterThan(0.9);
  expect(analysed(spectrumOf([LED], { noise: 1e-3 })).faults.cut).toEqual([]);
});

test('values too far below nought for noise are told', () => {
  const dip = (nm: number) => (nm > 800 && nm < 830 ? -0.1 : 0);
  expect(analysed(spectrumOf([LED, dip], { noise: 1e-3 })).faults.negative).toBeLessThan(-0.08);
  expect(analysed(spectrumOf([LED], { noise: 5e-3 })).faults.negative).toBeUndefined();
});
