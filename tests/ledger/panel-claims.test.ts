import { describe, expect, test } from 'vitest';
import { panelSchema } from '../../src/content/schema/panel.ts';
import { panelClaims } from '../../src/ledger/panel-claims.ts';
import type { FigureOrGap } from '../../src/measure/figure.ts';
import { gap } from '../../src/measure/figure.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { claimText } from '../../src/words/claim-text.ts';
import { figure, figureMap, line, vague } from '../measure/make.ts';

const panel = (claims: object | undefined) =>
  panelSchema.parse({ maker: 'm', model: 'M', status: 'published', ...(claims && { claims }) });

/** A session that read 50 ± 4 mW/cm², 100 ± 2 W, 661 nm and 838 nm. */
const READ: Record<string, FigureOrGap> = {
  'peak-irradiance-combined': figure(50, [line('peak', 2)], 'peak-irradiance-combined', 'mW/cm²'),
  'mains-draw-combined': figure(100, [line('draw', 1)], 'mains-draw-combined', 'W'),
  'wavelength-red': figure(661, [line('red', 0.4)], 'wavelength-red', 'nm'),
  'wavelength-near-infrared': figure(838, [line('nir', 0.4)], 'wavelength-near-infrared', 'nm'),
};

const checks = (claims: object | undefined, figures = READ, distance = 15.24) =>
  panelClaims(panel(claims), figureMap(figures), distance).map((it) => {
    const { subject, outcome, text } = claimText(it);
    return [subject, it.claimed, outcome, text];
  });

test('nothing claimed, nothing checked', () => {
  expect(checks(undefined)).toEqual([]);
  expect(checks({ ledCount: 60, beamAngle: 60 })).toEqual([]);
});

describe('irradiance', () => {
  const irradiance = (value: number, distance?: string) => ({
    irradiance: { value, ...(distance !== undefined && { distance }) },
  });

  test.each([
    [50, 'within', 'held, within the uncertainty'],
    [53.9, 'within', 'held, within the uncertainty'],
    [100, 'missed', '50 % under the claim: missed'],
    [40, 'apart', '25 % over the claim'],
  ])('%d mW/cm² at the distance of the session: %s', (value, outcome, text) => {
    expect(checks(irradiance(value, '6 in'))).toEqual([['irradiance', value, outcome, text]]);
  });

  test('without a distance can’t be compared', () => {
    expect(checks(irradiance(100))).toEqual([
      ['irradiance', 100, 'not comparable', 'not comparable: claimed without a distance'],
    ]);
  });

  test('at another distance can’t be compared', () => {
    expect(checks(irradiance(110, '3 in'))).toEqual([
      ['irradiance', 110, 'not comparable', 'not comparable: claimed at 3 in, measured at 15.24 cm'],
    ]);
    // 5 % of the claimed distance, on both sides.
    expect(checks(irradiance(110, '14.52 cm'))[0]?.[2]).toBe('missed');
    expect(checks(irradiance(110, '14.51 cm'))[0]?.[2]).toBe('not comparable');
    expect(checks(irradiance(110, '16.04 cm'))[0]?.[2]).toBe('missed');
    expect(checks(irradiance(110, '16.05 cm'))[0]?.[2]).toBe('not comparable');
  });

  test('at a distance close by allows for what the inverse square can do, and for no more', () => {
    // 50 ± 3.92 mW/cm² at 15.24 cm: up to 53.92 (15.24 / 15)² = 55.66 at 15 cm, down to 46.08 (15.24 / 15.8)² = 42.87.
    expect(checks(irradiance(55.6, '15 cm'))[0]?.[2]).toBe('within');
    expect(checks(irradiance(55.7, '15 cm'))[0]?.[2]).toBe('missed');
    expect(checks(irradiance(55.6, '6 in'))[0]?.[2]).toBe('missed');
    expect(checks(irradiance(42.9, '15.8 cm'))[0]?.[2]).toBe('within');
    expect(checks(irradiance(42.8, '15.8 cm'))[0]?.[2]).toBe('apart');
  });

  test('without a reading can’t be compared', () => {
    const none = { 'peak-irradiance-combined': gap('peak-irradiance-combined', verbatim('not measured')) };
    expect(checks(irradiance(50, '6 in'), none)).toEqual([
      ['irradiance', 50, 'not comparable', 'not comparable: the peak was not measured'],
    ]);
  });

  test('of unknown uncertainty can’t be compared', () => {
    const unsure = { 'peak-irradiance-combined': vague(50, 'the session does not name the meter') };
    expect(checks(irradiance(60, '6 in'), unsure)[0]?.[3]).toBe('not comparable: the session does not name the meter');
  });
});

describe('mains draw', () => {
  test.each([
    [101, 'within'],
    [130, 'apart'],
    [80, 'missed'],
  ])('%d W: %s', (power, outcome) => {
    expect(checks({ power })[0]?.[2]).toBe(outcome);
  });

  test('in kilowatts is the same', () => {
    expect(checks({ power: '0.13 kW' })[0]).toEqual(['mains draw', 130, 'apart', '23 % under the claim']);
  });

  test('without a reading can’t be compared', () => {
    expect(checks({ power: 100 }, {})[0]?.[3]).toBe('not comparable: the draw was not measured');
  });
});

describe('wavelengths', () => {
  const wavelengths = (...peaks: number[]) => ({ wavelengths: peaks.map((peak) => ({ peak })) });

  test('each channel is held against the nearest claim of its kind', () => {
    expect(checks(wavelengths(660, 850))).toEqual([
      ['wavelength 660 nm', 660, 'within', 'held, 1 nm from it (tolerance 10 nm)'],
      ['wavelength 850 nm', 850, 'off', 'off by 12 nm, to the shorter side'],
    ]);
  });

  test('a claim that no reading answers to is not lost', () => {
    expect(checks(wavelengths(630, 660, 810, 850))).toEqual([
      ['wavelength 660 nm', 660, 'within', 'held, 1 nm from it (tolerance 10 nm)'],
      ['wavelength 850 nm', 850, 'off', 'off by 12 nm, to the shorter side'],
      ['wavelength 630 nm', 630, 'not comparable', 'not comparable: not seen as a peak of its own'],
      ['wavelength 810 nm', 810, 'not comparable', 'not comparable: not seen as a peak of its own'],
    ]);
  });

  test('without a spectrum no claim is lost either', () => {
    expect(checks(wavelengths(660, 850), {}).map((it) => [it[1], it[2]])).toEqual([
      [660, 'not comparable'],
      [850, 'not comparable'],
    ]);
  });

  test('a red reading is not held against an infrared claim', () => {
    expect(checks(wavelengths(850), { 'wavelength-red': READ['wavelength-red'] as FigureOrGap })).toEqual([
      ['wavelength 850 nm', 850, 'not comparable', 'not comparable: not seen as a peak of its own'],
    ]);
  });
});
