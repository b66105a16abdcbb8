import { describe, expect, test } from 'vitest';
import {
  angularLine,
  calibrationLines,
  missingAngular,
  missingRepeatability,
  repeatabilityLine,
  resolutionLine,
} from '../../src/measure/meter.ts';
import { meter } from './make.ts';

describe('calibration', () => {
  test('is a share of the reading and one error until the next calibration', () => {
    const of = (calibrationDate: string, value = 80) =>
      calibrationLines(meter({ calibrationRelative: 0.025, calibrationDate }), value);
    expect(of('2026-01-10')).toMatchObject([
      { contribution: 2, type: 'B', distribution: 'normal', degreesOfFreedom: Number.POSITIVE_INFINITY },
    ]);
    expect(of('2026-01-10', 20)[0]?.key).toBe(of('2026-01-10', 80)[0]?.key);
    expect(of('2026-01-10')[0]?.key).not.toBe(of('2027-01-12')[0]?.key);
  });

  test('has an offset of its own that does not grow with the reading', () => {
    const it = meter({ calibrationRelative: 0.025, calibrationAbsolute: 0.3 });
    const [share, offset] = calibrationLines(it, 80);
    expect(offset?.contribution).toBe(0.3);
    expect(offset?.key).not.toBe(share?.key);
    expect(calibrationLines(it, 8)[1]?.contribution).toBe(0.3);
  });

  test('without a stated error has no line', () => {
    expect(calibrationLines(meter(), 80)).toEqual([]);
  });

  test('says how it was stated', () => {
    const it = meter({ calibrationRelative: 0.025, calibrationStated: '5 % at k = 2' });
    expect(calibrationLines(it, 80)[0]?.evaluation).toContain('5 % at k = 2');
  });
});

describe('resolution', () => {
  test('is half a step either way, rectangular: a step over the root of 12', () => {
    expect(resolutionLine(meter({ resolution: 0.1 }), 'x')).toMatchObject([
      { key: 'x/resolution', contribution: expect.closeTo(0.1 / Math.sqrt(12), 12), distribution: 'rectangular' },
    ]);
  });

  test('reaches a mean by its share, and says so', () => {
    const [whole] = resolutionLine(meter({ resolution: 0.1 }), 'x');
    const [part] = resolutionLine(meter({ resolution: 0.1 }), 'x', 1 / 3);
    expect(part?.contribution).toBeCloseTo((whole?.contribution ?? Number.NaN) / 3, 12);
    expect(part?.evaluation).toContain('averaged');
    expect(whole?.evaluation).not.toContain('averaged');
  });

  test('of a display without steps has no line', () => {
    expect(resolutionLine(meter(), 'x')).toEqual([]);
  });
});

describe('angular response', () => {
  test('is one error a session', () => {
    const it = meter({ angularResponse: 0.02 });
    expect(angularLine(it, 'lantern-40/2026-03-02', 80)).toMatchObject([
      { key: 'lantern-40/2026-03-02/angular', contribution: 1.6 },
    ]);
    expect(angularLine(it, 'a/2026-03-02', 80)[0]?.key).not.toBe(angularLine(it, 'b/2026-03-02', 80)[0]?.key);
  });

  test('that is not stated has no line, and is said to be missing', () => {
    const it = meter({ angularResponse: undefined });
    expect(angularLine(it, 's', 80)).toEqual([]);
    expect(missingAngular(it)).toEqual([
      { source: 'Angular (cosine) response', reason: 'not stated for the irradiance meter' },
    ]);
  });

  test('that is stated, be it as zero, is not missing', () => {
    expect(missingAngular(meter({ angularResponse: 0 }))).toEqual([]);
    expect(missingAngular(meter({ angularResponse: 0.02 }))).toEqual([]);
  });
});

describe('repeatability from the instrument file', () => {
  test('is a share of the reading', () => {
    expect(repeatabilityLine(meter({ repeatability: 0.01 }), 'x', 80, 0.5)).toMatchObject([
      { key: 'x/repeatability', contribution: 0.4, type: 'B' },
    ]);
  });

  test('has no line where it is zero or not stated', () => {
    expect(repeatabilityLine(meter({ repeatability: 0 }), 'x', 80)).toEqual([]);
    expect(repeatabilityLine(meter({ repeatability: undefined }), 'x', 80)).toEqual([]);
  });

  test('is said to be missing only where it is not stated', () => {
    expect(missingRepeatability(meter({ repeatability: undefined }))).toHaveLength(1);
    expect(missingRepeatability(meter({ repeatability: undefined }))[0]?.reason).toContain('irradiance meter');
    expect(missingRepeatability(meter({ repeatability: 0 }))).toEqual([]);
  });
});
