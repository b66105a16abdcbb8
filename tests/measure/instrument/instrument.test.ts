import { describe, expect, test } from 'vitest';
import {
  angularComponents,
  calibrationComponents,
  instrumentAbsence,
  isCalibrated,
  missingAngular,
  missingRepeatability,
  NO_INSTRUMENT,
  repeatabilityComponents,
  resolutionComponents,
  unassessedScatter,
} from '../../../src/measure/instrument/instrument.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { instrument, slanted } from '../make.ts';

describe('calibration', () => {
  test('is a share of the reading and one error until the next calibration', () => {
    const of = (calibrationDate: string, value = 80) =>
      calibrationComponents(instrument({ calibrationRelative: 0.025, calibrationDate }), value);
    expect(of('2026-01-10')).toMatchObject([
      {
        contribution: 2,
        source: {
          what: { code: 'calibration', instrument: 'irradiance meter' },
          type: 'B',
          distribution: 'normal',
          degreesOfFreedom: Number.POSITIVE_INFINITY,
        },
      },
    ]);
    expect(of('2026-01-10', 20)[0]?.source.key).toBe(of('2026-01-10', 80)[0]?.source.key);
    expect(of('2026-01-10')[0]?.source.key).not.toBe(of('2027-01-12')[0]?.source.key);
  });

  test('has an offset of its own that does not grow with the reading', () => {
    const it = instrument({ calibrationRelative: 0.025, calibrationAbsolute: 0.3 });
    const [share, offset] = calibrationComponents(it, 80);
    expect(offset?.contribution).toBe(0.3);
    expect(offset?.source.key).not.toBe(share?.source.key);
    expect(calibrationComponents(it, 8)[1]?.contribution).toBe(0.3);
  });

  test('without a stated error has no component', () => {
    expect(calibrationComponents(instrument(), 80)).toEqual([]);
  });

  test('tells how it was stated', () => {
    const stated = { relative: 5, absolute: 0, unit: 'mW/cm2', coverageFactor: 2 };
    const it = instrument({ calibrationRelative: 0.025, calibrationStated: stated });
    expect(calibrationComponents(it, 80)[0]?.source.evaluation).toEqual({
      code: 'calibration-as-stated',
      date: '2026-01-10',
      stated,
    });
  });
});

describe('resolution', () => {
  test('is half a step either way, rectangular: a step over the root of 12', () => {
    expect(resolutionComponents(instrument({ resolution: 0.1 }), 'x')).toMatchObject([
      {
        source: { key: 'x/resolution', distribution: 'rectangular' },
        contribution: expect.closeTo(0.1 / Math.sqrt(12), 12),
      },
    ]);
  });

  test('reaches a mean by its share, and tells so', () => {
    const [whole] = resolutionComponents(instrument({ resolution: 0.1 }), 'x');
    const [part] = resolutionComponents(instrument({ resolution: 0.1 }), 'x', 1 / 3);
    expect(part?.contribution).toBeCloseTo((whole?.contribution ?? Number.NaN) / 3, 12);
    expect(part?.source.evaluation).toEqual({ code: 'half-step-averaged' });
    expect(whole?.source.evaluation).toEqual({ code: 'half-step' });
  });

  test('of a display without steps has no component', () => {
    expect(resolutionComponents(instrument(), 'x')).toEqual([]);
  });
});

describe('angular response', () => {
  test('is one error of the instrument before a panel, in all of its sessions', () => {
    const it = instrument({ angularResponse: slanted(0.02) });
    expect(angularComponents(it, 'lantern-40/2026-03-02', 1.6)).toMatchObject([
      { source: { key: 'lantern-40/irradiance-meter/angular' }, contribution: 1.6 },
    ]);
    const keyOf = (session: string, meter = it) => angularComponents(meter, session, 80)[0]?.source.key;
    expect(keyOf('a/2027-03-02')).toBe(keyOf('a/2026-03-02'));
    expect(keyOf('a/2026-03-02', { ...it, calibrationDate: '2027-01-10' })).toBe(keyOf('a/2026-03-02'));
    expect(keyOf('a/2026-03-02', { ...it, id: 'other' })).not.toBe(keyOf('a/2026-03-02'));
    expect(keyOf('b/2026-03-02')).not.toBe(keyOf('a/2026-03-02'));
  });

  test('is told as it was stated', () => {
    const response = { kind: 'f2', f2: 0.025 } as const;
    const [it] = angularComponents(instrument({ angularResponse: response }), 's', 1);
    expect(it?.source.evaluation).toEqual({ code: 'angular-as-stated', response });
  });

  test('that is not stated has no component, and is told to be missing', () => {
    const it = instrument({ angularResponse: undefined });
    expect(angularComponents(it, 's', 80)).toEqual([]);
    expect(missingAngular(it)).toEqual([
      { what: { code: 'cosine-response' }, reason: { code: 'not-stated-for', instrument: 'irradiance meter' } },
    ]);
  });

  test('that is stated, be it as zero, is not missing', () => {
    expect(missingAngular(instrument({ angularResponse: slanted(0) }))).toEqual([]);
    expect(missingAngular(instrument({ angularResponse: slanted(0.02) }))).toEqual([]);
  });
});

describe('repeatability from the instrument file', () => {
  test('is a share of the reading', () => {
    expect(repeatabilityComponents(instrument({ repeatability: 0.01 }), 'x', 80, 0.5)).toMatchObject([
      {
        source: {
          key: 'x/repeatability',
          type: 'B',
          evaluation: { code: 'repeatability-as-stated', relative: 0.01 },
        },
        contribution: 0.4,
      },
    ]);
  });

  test('of a sound meter is in dB, whatever the level', () => {
    const it = instrument({ repeatability: undefined, repeatabilityDecibels: 0.5 });
    for (const level of [30, 60]) {
      expect(repeatabilityComponents(it, 'x', level)).toMatchObject([
        { source: { key: 'x/repeatability' }, contribution: 0.5 },
      ]);
    }
    expect(repeatabilityComponents(it, 'x', 30)[0]?.source.evaluation).toEqual({
      code: 'repeatability-as-stated',
      decibels: 0.5,
    });
    expect(missingRepeatability(it)).toEqual([]);
  });

  test('has no component where it is zero or not stated', () => {
    expect(repeatabilityComponents(instrument({ repeatability: 0 }), 'x', 80)).toEqual([]);
    expect(repeatabilityComponents(instrument({ repeatability: undefined }), 'x', 80)).toEqual([]);
  });

  test('is told to be missing only where it is not stated', () => {
    const missing = missingRepeatability(instrument({ repeatability: undefined }));
    expect(missing).toEqual([
      { what: { code: 'repeatability' }, reason: { code: 'scatter-not-known', instrument: 'irradiance meter' } },
    ]);
    expect(unassessedScatter([{ what: verbatim('Repeatability'), reason: verbatim('') }, ...missing])).toBe(missing[0]);
    expect(unassessedScatter(missingAngular(instrument({ angularResponse: undefined })))).toBeUndefined();
    expect(missingRepeatability(instrument({ repeatability: 0 }))).toEqual([]);
  });
});

describe('whether readings have a known uncertainty', () => {
  test('they do with a meter whose calibration counts', () => {
    expect(isCalibrated(instrument())).toBe(true);
  });

  test('they do not without a meter, or before its first calibration; each tells why', () => {
    expect(isCalibrated(undefined)).toBe(false);
    expect(instrumentAbsence(undefined)).toBe(NO_INSTRUMENT);
    const later = { code: 'calibrated-later', first: '2026-04-01' } as const;
    const early = instrument({ calibrationAbsent: later });
    expect(isCalibrated(early)).toBe(false);
    expect(instrumentAbsence(early)).toBe(later);
  });
});
