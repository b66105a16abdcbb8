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
} from '../../../src/measure/instrument/instrument.ts';
import { instrument, slanted } from '../make.ts';

describe('calibration', () => {
  test('is a share of the reading and one error until the next calibration', () => {
    const of = (calibrationDate: string, value = 80) =>
      calibrationComponents(instrument({ calibrationRelative: 0.025, calibrationDate }), value);
    expect(of('2026-01-10')).toMatchObject([
      { contribution: 2, type: 'B', distribution: 'normal', degreesOfFreedom: Number.POSITIVE_INFINITY },
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

  test('without a stated error has no line', () => {
    expect(calibrationComponents(instrument(), 80)).toEqual([]);
  });

  test('says how it was stated', () => {
    const it = instrument({ calibrationRelative: 0.025, calibrationStated: '5 % at k = 2' });
    expect(calibrationComponents(it, 80)[0]?.source.evaluation).toContain('calibration of 2026-01-10: 5 % at k = 2');
  });
});

describe('resolution', () => {
  test('is half a step either way, rectangular: a step over the root of 12', () => {
    expect(resolutionComponents(instrument({ resolution: 0.1 }), 'x')).toMatchObject([
      { key: 'x/resolution', contribution: expect.closeTo(0.1 / Math.sqrt(12), 12), distribution: 'rectangular' },
    ]);
  });

  test('reaches a mean by its share, and says so', () => {
    const [whole] = resolutionComponents(instrument({ resolution: 0.1 }), 'x');
    const [part] = resolutionComponents(instrument({ resolution: 0.1 }), 'x', 1 / 3);
    expect(part?.contribution).toBeCloseTo((whole?.contribution ?? Number.NaN) / 3, 12);
    expect(part?.source.evaluation).toContain('averaged');
    expect(whole?.source.evaluation).not.toContain('averaged');
  });

  test('of a display without steps has no line', () => {
    expect(resolutionComponents(instrument(), 'x')).toEqual([]);
  });
});

describe('angular response', () => {
  test('is one error a session', () => {
    const it = instrument({ angularResponse: slanted(0.02) });
    expect(angularComponents(it, 'lantern-40/2026-03-02', 1.6)).toMatchObject([
      { key: 'lantern-40/2026-03-02/angular', contribution: 1.6 },
    ]);
    expect(angularComponents(it, 'a/2026-03-02', 80)[0]?.source.key).not.toBe(
      angularComponents(it, 'b/2026-03-02', 80)[0]?.source.key,
    );
  });

  test('is said as it was stated', () => {
    const [byIndex] = angularComponents(instrument({ angularResponse: { kind: 'f2', f2: 0.025 } }), 's', 1);
    expect(byIndex?.source.evaluation).toContain('f2 of 2.5 %');
    const points = [30, 60].map((angle) => ({ angle, error: 0.01 }));
    const [byAngles] = angularComponents(instrument({ angularResponse: { kind: 'angles', points } }), 's', 1);
    expect(byAngles?.source.evaluation).toContain('errors at 30°, 60°');
  });

  test('that is not stated has no line, and is said to be missing', () => {
    const it = instrument({ angularResponse: undefined });
    expect(angularComponents(it, 's', 80)).toEqual([]);
    expect(missingAngular(it)).toEqual([
      { what: 'Angular (cosine) response', reason: 'not stated for the irradiance meter' },
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
      { key: 'x/repeatability', contribution: 0.4, type: 'B' },
    ]);
  });

  test('of a sound meter is in dB, whatever the level', () => {
    const it = instrument({ repeatability: undefined, repeatabilityDecibels: 0.5 });
    for (const level of [30, 60]) {
      expect(repeatabilityComponents(it, 'x', level)).toMatchObject([{ key: 'x/repeatability', contribution: 0.5 }]);
    }
    expect(repeatabilityComponents(it, 'x', 30)[0]?.source.evaluation).toContain('0.5 dB');
    expect(missingRepeatability(it)).toEqual([]);
  });

  test('has no line where it is zero or not stated', () => {
    expect(repeatabilityComponents(instrument({ repeatability: 0 }), 'x', 80)).toEqual([]);
    expect(repeatabilityComponents(instrument({ repeatability: undefined }), 'x', 80)).toEqual([]);
  });

  test('is said to be missing only where it is not stated', () => {
    expect(missingRepeatability(instrument({ repeatability: undefined }))).toHaveLength(1);
    expect(missingRepeatability(instrument({ repeatability: undefined }))[0]?.reason).toContain('irradiance meter');
    expect(missingRepeatability(instrument({ repeatability: 0 }))).toEqual([]);
  });
});

describe('whether readings have a known uncertainty', () => {
  test('they do with a meter whose calibration counts', () => {
    expect(isCalibrated(instrument())).toBe(true);
  });

  test('they do not without a meter, or before its first calibration; each says why', () => {
    expect(isCalibrated(undefined)).toBe(false);
    expect(instrumentAbsence(undefined)).toBe(NO_INSTRUMENT);
    const early = instrument({ calibrationAbsent: 'the meter was first calibrated later' });
    expect(isCalibrated(early)).toBe(false);
    expect(instrumentAbsence(early)).toBe('the meter was first calibrated later');
  });
});
