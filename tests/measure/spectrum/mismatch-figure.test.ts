import { describe, expect, test } from 'vitest';
import type { Instrument } from '../../../src/measure/instrument/instrument.ts';
import type { ModeLight } from '../../../src/measure/instrument/spectral-response.ts';
import { gridFigures } from '../../../src/measure/irradiance/grid.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { readingFigure } from '../../../src/measure/reading.ts';
import { analysed } from '../../../src/measure/spectrum/analysis.ts';
import { mismatchFigure, mixedFactor } from '../../../src/measure/spectrum/mismatch-figure.ts';
import { mismatchBeyondStated } from '../../../src/measure/spectrum/mismatch-flag.ts';
import type { SpectrumReading } from '../../../src/measure/spectrum/reading.ts';
import type { Spectrum } from '../../../src/measure/spectrum/spectrum.ts';
import { productFigure } from '../../../src/measure/uncertainty.ts';
import { gaussian, spectrumOf } from '../../support/spectrum.ts';
import { figureOf, gridOf, identity, instrument } from '../make.ts';

/** 0.80 at 660 nm and 1.00 at 850 nm, in a straight line. */
const response = (nm: number) => 0.8 + (0.2 * (nm - 660)) / 190;
const RISING = [300, 1100].map((wavelength) => ({ wavelength, response: response(wavelength) }));

const meter = (part: Partial<Instrument> = {}): Instrument => ({
  ...instrument({ id: 'meter', calibrationRelative: 0, calibrationAbsolute: 0, resolution: 0 }),
  spectralResponse: { red: 0.1, nearInfrared: 0.1 },
  responsivity: { calibratedAt: 850, points: RISING, error: 0.01 },
  ...part,
});
const spectrometer = instrument({ id: 'fibre', calibrationRelative: 0, calibrationAbsolute: 0.4, powerError: 0.03 });

const taken = (spectrum: Spectrum, part: Partial<SpectrumReading> = {}): SpectrumReading => ({
  session: 'p/d',
  mode: 'combined',
  path: 'p/d/spectra.combined',
  scale: 'relative',
  analysis: analysed(spectrum),
  instrument: spectrometer,
  distance: { distance: 15, halfWidth: 0, area: undefined },
  edges: { red: { from: 600, to: 700 }, nearInfrared: { from: 700, to: 1400 } },
  ...part,
});
const lines = (red: number, nearInfrared: number) =>
  spectrumOf([gaussian(660, 4, red), gaussian(850, 4, nearInfrared)]);
const factorOf = (spectrum: Spectrum, of = meter()) => figureOf(mismatchFigure(taken(spectrum), of));
const lit = (spectrum: Spectrum): ModeLight => ({ red: 0.5, nearInfrared: 0.5, mismatch: factorOf(spectrum) });

describe('the factor', () => {
  test('of two lines is that by hand, with what it is uncertain of by hand', () => {
    const { value, budget } = factorOf(lines(1, 1));
    expect(value).toBeCloseTo(1 / 0.9, 4);
    const part = (ending: string) => budget.find((it) => it.source.key.endsWith(ending))?.contribution;
    // Of what the meter shows, 0.8 / 1.8 is red.
    expect(part('meter/responsivity-red')).toBeCloseTo((-0.01 * (0.8 / 1.8)) / 0.9, 5);
    expect(part('meter/responsivity-near-infrared')).toBeCloseTo((-0.01 * (1 / 1.8)) / 0.9, 5);
    // The mean response rises by 0.2 / 190 a nanometre.
    expect(part('/offset')).toBeCloseTo((-0.4 * (0.2 / 190)) / 0.9 ** 2, 5);
    // Half red that is read 3 % too high is 0.0075 more red, whose response is lower by 0.2.
    expect(part('/spectral-shape-red')).toBeCloseTo((0.0074 * 0.2) / 0.9 ** 2, 4);
  });

  test('is one for a flat response, and for the light of the calibration', () => {
    const flat = meter({
      responsivity: { calibratedAt: 850, points: RISING.map((it) => ({ ...it, response: 3 })), error: 0.01 },
    });
    expect(factorOf(lines(1, 0.3), flat).value).toBeCloseTo(1, 9);
    expect(factorOf(lines(1, 0.3), flat).budget.map((it) => it.source.key)).toEqual([
      'meter/responsivity-red',
      'meter/responsivity-near-infrared',
    ]);
    expect(factorOf(lines(0, 1)).value).toBeCloseTo(1, 4);
  });

  test('takes the errors of the bands where none is stated of the responsivity, and says where neither is', () => {
    const { error: _, ...silent } = meter().responsivity as NonNullable<Instrument['responsivity']>;
    const { budget } = factorOf(lines(1, 1), meter({ responsivity: silent }));
    expect(budget[0]?.contribution).toBeCloseTo((-0.1 * (0.8 / 1.8)) / 0.9, 4);
    const { spectralResponse: __, ...nothing } = meter({ responsivity: silent });
    expect(factorOf(lines(1, 1), nothing).unassessed.map((it) => it.reason.code)).toContain(
      'responsivity-error-absent',
    );
  });

  test.each([
    ['responsivity-not-stated', (({ responsivity: _, ...it }) => it)(meter()), taken(lines(1, 1))],
    ['instrument-not-named', undefined, taken(lines(1, 1))],
    ['spectrum-raw-counts', meter(), taken(lines(1, 1), { scale: 'counts' })],
    ['spectrum-cut-off', meter(), taken(spectrumOf([gaussian(660, 7), gaussian(990, 14)]))],
    ['instrument-not-named', meter(), taken(lines(1, 1), { instrument: undefined })],
    [
      'responsivity-too-short',
      meter({
        responsivity: {
          calibratedAt: 850,
          points: RISING.map((it) => ({ ...it, wavelength: Math.max(700, it.wavelength) })),
        },
      }),
      taken(lines(1, 1)),
    ],
  ])('is not told: %s', (code, of, reading) => {
    expect(mismatchFigure(reading, of)).toMatchObject({ gap: true, reason: { code } });
  });

  test('with both channels on follows from those of each alone', () => {
    const [red, infrared] = [factorOf(lines(1, 0)), factorOf(lines(0, 1))];
    // Equal light shows as 0.8 and 1.
    const mixed = figureOf(
      mixedFactor('p/d', [
        { read: 0.8, factor: red },
        { read: 1, factor: infrared },
      ]),
    );
    expect(mixed.value).toBeCloseTo(factorOf(lines(1, 1)).value, 4);
    expect(
      mixedFactor('p/d', [
        { read: undefined, factor: red },
        { read: 1, factor: infrared },
      ]),
    ).toMatchObject({
      reason: { code: 'mode-without-spectrum' },
    });
  });
});

describe('readings of light', () => {
  const reading = (bands: ModeLight, session = 'p/d') =>
    readingFigure({
      metric: 'peak-irradiance-combined',
      value: 45,
      session,
      path: `${session}/peak.combined`,
      instrument: meter({ resolution: 0.1 }),
      distance: { distance: 15, halfWidth: 0, area: undefined },
      bands,
    });

  test('are multiplied by it, their steps too, and its errors take the place of those of the bands', () => {
    const { value, budget, inputs, notes } = reading(lit(lines(1, 1)));
    expect(value).toBeCloseTo(50, 2);
    const keys = budget.map((it) => it.source.key);
    expect(keys.filter((it) => it.includes('/spectral-red') || it.includes('/spectral-near'))).toEqual([]);
    expect(keys).toContain('meter/responsivity-red');
    expect(budget.find((it) => it.source.key.endsWith('/resolution'))?.contribution).toBeCloseTo(
      (0.05 / Math.sqrt(3)) * 1.111,
      4,
    );
    expect(inputs).toEqual(['p/d/peak.combined', 'p/d/mismatch-factor-combined']);
    expect(notes.map((it) => it.code)).toEqual(['corrected-for-spectrum']);
    const plain = reading({ red: 0.5, nearInfrared: 0.5, uncorrected: { code: 'spectrum-full' } });
    expect(plain.value).toBe(45);
    expect(plain.budget.map((it) => it.source.key)).toContain('meter/spectral-red');
    expect(plain.notes).toEqual([{ code: 'not-corrected-for-spectrum', reason: { code: 'spectrum-full' } }]);
  });

  test('of a grid are multiplied alike, and their ratios do not move', () => {
    const rows = [
      [40, 50, 41],
      [44, 60, 45],
    ];
    const of = (bands?: ModeLight) =>
      gridFigures(gridOf(rows, { instrument: meter(), ...(bands && { bands }) }), { code: 'field-not-measured' });
    const [plain, corrected] = [of(), of(lit(lines(1, 1)))];
    expect(figureOf(corrected.mean).value / figureOf(plain.mean).value).toBeCloseTo(1 / 0.9, 4);
    expect(figureOf(corrected.lowestToMean).value).toBeCloseTo(figureOf(plain.lowestToMean).value, 9);
    expect(figureOf(corrected.mean).calculation).toContain('(40 + 50 + 41 + 44 + 60 + 45) ÷ 6');
  });

  test('of two panels with the same LEDs share the error of the responsivity, which cancels in their ratio', () => {
    const ratio = (one: Spectrum, other: Spectrum) =>
      productFigure(identity(), [
        { figure: reading(lit(one)), power: 1 },
        { figure: reading(lit(other), 'q/d'), power: -1 },
      ]).budget.filter((it) => it.source.key.startsWith('meter/responsivity'));
    for (const it of ratio(lines(1, 1), lines(2, 2))) expect(Math.abs(it.contribution)).toBeLessThan(1e-9);
    expect(Math.abs(ratio(lines(1, 0.2), lines(0.2, 1))[0]?.contribution ?? 0)).toBeGreaterThan(1e-3);
  });
});

test('a correction beyond what the file states of its bands is flagged, one within is not', () => {
  const flags = (error: number) =>
    mismatchBeyondStated(
      'combined',
      lit(lines(1, 1)),
      meter({ spectralResponse: { red: error, nearInfrared: error } }),
      ['spectra', 'combined'],
    );
  // 11.1 % against 1.96 times the error over the root of two.
  expect(flags(0.079)).toMatchObject([{ severity: 'note', at: ['session', 'spectra', 'combined'] }]);
  expect(flags(0.081)).toEqual([]);
});

test('its interval holds the truth of simulated meters, whose errors bend within a band too', () => {
  const random = seededRandom(5);
  let held = 0;
  const runs = 120;
  for (let run = 0; run < runs; run++) {
    const [red, infrared] = [630 + 40 * random.uniform(), 810 + 130 * random.uniform()];
    const light = (by: number, brighter: number) =>
      spectrumOf([gaussian(red + by, 8, brighter), gaussian(infrared + by, 15, 0.5)], { step: 1, noise: 1e-4 });
    const [low, high, bend] = [0.01 * random.normal(), 0.01 * random.normal(), 0.005 * random.normal()];
    const truth = (nm: number) =>
      response(nm) * (1 + (nm < 750 ? low : high) + bend * Math.sin(nm / 30) * (nm === 850 ? 0 : 1));
    const own = light(0, 1);
    let [all, seen] = [0, 0];
    for (let i = 0; i < own.wavelengths.length; i++) {
      all += own.values[i] as number;
      seen += (own.values[i] as number) * truth(own.wavelengths[i] as number);
    }
    const read = light(0.4 * random.normal(), 1 + 0.03 * random.normal());
    const [from, to] = factorOf(read).interval95 ?? [0, 0];
    if (from <= all / seen && all / seen <= to) held += 1;
  }
  // Fewer than 103 of 120 has a chance of less than one in a thousand where each holds with 95 %, by the binomial law.
  expect(held).toBeGreaterThanOrEqual(103);
});
