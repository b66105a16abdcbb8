import { describe, expect, test } from 'vitest';
import { analysed } from '../../../src/measure/spectrum/analysis.ts';
import { bandShares } from '../../../src/measure/spectrum/bands.ts';
import { mostBeyond, planckShare } from '../../../src/measure/spectrum/beyond-reach.ts';
import { mismatchFactor, responseAt } from '../../../src/measure/spectrum/mismatch.ts';
import { areaOver } from '../../../src/measure/spectrum/spectrum.ts';
import { gaussian, spectrumOf } from '../../support/spectrum.ts';

/** mW/cm² */
const HEAT_TO_3000 = 0.119812;
const EDGES = { red: { from: 600, to: 700 }, nearInfrared: { from: 700, to: 1400 } };

/** Planck's law, in W/m²/m over pi, without its constant: shares need none. c2 in m K (CODATA 2018). */
const planck = (kelvin: number) => (nm: number) =>
  (nm * 1e-9) ** -5 / Math.expm1(1.438776877e-2 / (nm * 1e-9 * kelvin));

describe('a black body', () => {
  /* F(0-lT) at lT in um K, recomputed by two roads: the series, and a quadrature of Planck's law in another program. */
  test.each([
    [1000, 0.00032077],
    [2000, 0.0667299],
    [2898, 0.2501063],
    [4000, 0.4808646],
    [5000, 0.6337259],
    [6000, 0.7377894],
    [10000, 0.914157],
  ])('has up to %d um K the share of the tables', (product, share) => {
    expect(planckShare(product / 1000, 1000)).toBeCloseTo(share, 6);
    expect(planckShare(product / 2500, 2500)).toBeCloseTo(share, 6);
  });

  test('of 2856 K, as a spectrum, shares out its light as the law says', () => {
    const spectrum = spectrumOf([planck(2856)], { from: 300, to: 3000, step: 1 });
    const share = (to: number) => planckShare(to / 1000, 2856);
    const whole = share(3000) - share(300);
    for (const [from, to] of [
      [600, 700],
      [700, 1400],
      [780, 3000],
    ] as const) {
      expect(areaOver(spectrum, { from, to }) / areaOver(spectrum, { from: 300, to: 3000 })).toBeCloseTo(
        (share(to) - share(from)) / whole,
        5,
      );
    }
    const found = bandShares(analysed(spectrum), EDGES);
    expect(found?.red.value).toBeCloseTo((share(700) - share(600)) / whole, 4);
  });

  test('of 100 °C adds 0.13 mW/cm² from 1000 nm to 3000 nm', () => {
    // A quadrature of Planck’s law in another program.
    expect(mostBeyond(analysed(spectrumOf([gaussian(660, 7)])), 3000)).toBeCloseTo(HEAT_TO_3000, 4);
  });
});

test('shares of two LEDs are those of their areas, and noise is in their errors', () => {
  const found = bandShares(analysed(spectrumOf([gaussian(660, 7), gaussian(850, 14, 0.5)], { noise: 1e-3 })), EDGES);
  expect(found?.red.value).toBeCloseTo(0.5, 2);
  expect(found?.['near-infrared'].value).toBeCloseTo(0.5, 2);
  expect(found?.rest.value).toBeLessThan(0.01);
  expect(found?.red.noise).toBeGreaterThan(0);
});

describe('spectral mismatch', () => {
  const rising = [
    { wavelength: 850, response: 1 },
    { wavelength: 660, response: 0.8 },
  ];
  const wide = [
    { wavelength: 300, response: 0.8 - (0.2 * 360) / 190 },
    { wavelength: 1100, response: 1 + (0.2 * 250) / 190 },
  ];

  test('of a response that rises in a straight line, by two narrow lines of equal light', () => {
    const light = spectrumOf([gaussian(660, 4), gaussian(850, 4)]);
    expect(mismatchFactor(light, wide, 850)).toBeCloseTo(1 / 0.9, 4);
    expect(mismatchFactor(light, wide, spectrumOf([gaussian(850, 4)]))).toBeCloseTo(1 / 0.9, 4);
  });

  test('is none for a flat response, and is not told where light lies beyond it', () => {
    const light = spectrumOf([gaussian(660, 7)]);
    expect(
      mismatchFactor(
        light,
        [
          { wavelength: 300, response: 3 },
          { wavelength: 1100, response: 3 },
        ],
        500,
      ),
    ).toBeCloseTo(1, 9);
    expect(mismatchFactor(light, rising, 850)).toBeUndefined();
    expect(responseAt(rising, 755)).toBeCloseTo(0.9, 12);
    expect(responseAt(rising, 900)).toBeUndefined();
  });
});
