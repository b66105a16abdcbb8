import { describe, expect, test } from 'vitest';
import { analysed, highestPeak } from '../../../src/measure/spectrum/analysis.ts';
import type { Spectrum } from '../../../src/measure/spectrum/spectrum.ts';
import { centroidOver, reachOf, sumsOver } from '../../../src/measure/spectrum/spectrum.ts';
import { gaussian, spectrumOf } from '../../support/spectrum.ts';

/** Width of a Gaussian at half its height over sigma: 2 sqrt(2 ln 2). */
const FWHM = 2 * Math.sqrt(2 * Math.log(2));

function peakOf(spectrum: Spectrum) {
  const peak = highestPeak(analysed(spectrum));
  if (!peak) throw new Error('no peak was found');
  return peak;
}

describe('a Gaussian peak', () => {
  const cases = [4, 7, 14, 20].flatMap((sigma) => [0.2, 0.5, 1, 2].map((step) => ({ sigma, step })));

  test.each(cases)('of sigma $sigma nm in steps of $step nm', ({ sigma, step }) => {
    const peak = peakOf(spectrumOf([gaussian(660.3, sigma)], { step }));
    expect(peak.wavelength).toBeCloseTo(660.3, 1);
    expect(Math.abs((peak.width?.value ?? 0) / (FWHM * sigma) - 1)).toBeLessThan(step > 1 ? 0.012 : 0.005);
    expect(Math.abs(peak.centroid - 660.3)).toBeLessThan(0.05 * Math.max(1, step));
    expect(peak.share).toBeCloseTo(1, 6);
    // What coarse rows do to the width is in its own error.
    expect(Math.abs((peak.width?.value ?? 0) - FWHM * sigma)).toBeLessThan(3 * (peak.width?.error ?? 0) + 0.002);
  });

  test('adds up to height times width times 1.0645', () => {
    const { area } = sumsOver(spectrumOf([gaussian(660, 20 / FWHM)], { step: 1 }), { from: 600, to: 720 });
    expect(area).toBeCloseTo(21.28934, 4);
    expect(centroidOver(spectrumOf([gaussian(660, 20 / FWHM)], { step: 1 }), { from: 600, to: 720 })).toBeCloseTo(
      660,
      6,
    );
  });

  test('keeps its place and width under noise, within what they are said to be uncertain of', () => {
    const off = { wavelength: 0, width: 0 };
    for (let i = 0; i < 12; i++) {
      const place = 655 + i * 1.13;
      const peak = peakOf(spectrumOf([gaussian(place, 7)], { noise: 0.004, from: 350 + i * 3, dark: 0.02 }));
      off.wavelength += ((peak.wavelength - place) / peak.wavelengthError) ** 2 / 12;
      off.width += (((peak.width?.value ?? 0) - 7 * FWHM) / (peak.width?.error ?? 0)) ** 2 / 12;
    }
    expect(Math.sqrt(off.wavelength)).toBeLessThan(2);
    expect(Math.sqrt(off.width)).toBeLessThan(2);
  });
});

test('a lopsided peak has its place, the width of both sides, and a centroid on its long side', () => {
  const peak = peakOf(spectrumOf([gaussian(660, 9, 1, 6)], { noise: 5e-4 }));
  expect(Math.abs(peak.wavelength - 660)).toBeLessThan(0.5);
  expect(peak.width?.value).toBeCloseTo((FWHM * (9 + 6)) / 2, 1);
  // The mean of two half Gaussians: sqrt(2 / pi) times the difference of their sigmas, less what the foot cuts off.
  expect(peak.centroid).toBeCloseTo(660 - Math.sqrt(2 / Math.PI) * 3, 0);
  expect(peak.parts).toEqual([]);
});

describe('two kinds of LEDs', () => {
  test.each([
    { apart: 25, places: [650, 675] },
    { apart: 20, places: [650, 670] },
  ])('$apart nm apart are two peaks', ({ apart, places }) => {
    const { peaks } = analysed(spectrumOf([gaussian(650, 7), gaussian(650 + apart, 7)], { noise: 1e-3 }));
    expect(peaks).toHaveLength(2);
    peaks.forEach((it, i) => {
      expect(Math.abs(it.wavelength - (places[i] as number))).toBeLessThan(1);
      expect(it.share).toBeCloseTo(0.5, 2);
    });
  });

  test('15 nm apart are one peak with two parts, and the width is that of both', () => {
    const [peak, ...more] = analysed(spectrumOf([gaussian(650, 7), gaussian(665, 7)], { noise: 1e-3 })).peaks;
    expect(more).toEqual([]);
    expect(peak?.width?.value).toBeGreaterThan(25);
    expect(peak?.parts).toHaveLength(2);
    for (const [i, place] of [650, 665].entries()) {
      const part = peak?.parts[i];
      expect(Math.abs((part?.wavelength ?? 0) - place)).toBeLessThan(2 * (part?.wavelengthError ?? 0));
      expect(part?.share).toBeCloseTo(0.5, 1);
    }
  });

  test('one that runs into its higher neighbour has no width of its own', () => {
    const { peaks } = analysed(spectrumOf([gaussian(650, 7), gaussian(670, 7, 0.9)]));
    expect(peaks.map((it) => it.width)).toEqual([undefined, undefined]);
  });
});

test('a weak peak counts from 2 % of the highest on, and noise is none', () => {
  const found = (height: number) =>
    analysed(spectrumOf([gaussian(660, 7), gaussian(850, 12, height)], { noise: 2e-4 })).peaks.length;
  expect(found(0.03)).toBe(2);
  expect(found(0.01)).toBe(1);
  expect(analysed(spectrumOf([() => 0], { noise: 1 })).peaks.length).toBeLessThan(1);
});

test('uneven pixels move nothing', () => {
  const wavelengths = Float64Array.from({ length: 900 }, (_, i) => 400 + 0.55 * i + 9e-5 * i * i);
  const light = gaussian(660, 7);
  const peak = peakOf({ wavelengths, values: wavelengths.map(light), isAbsolute: true });
  expect(peak.wavelength).toBeCloseTo(660, 1);
  expect(peak.width?.value).toBeCloseTo(7 * FWHM, 0);
  expect(reachOf({ wavelengths, values: wavelengths, isAbsolute: true }).from).toBe(400);
});
