import { describe, expect, test } from 'vitest';
import { ratioTo } from '../../../src/measure/difference.ts';
import {
  type Band,
  type BandShares,
  bandShares,
  missingSpectral,
  NEAR_INFRARED_ALONE,
  RED_ALONE,
  SHARES_UNKNOWN,
  spectralComponents,
} from '../../../src/measure/instrument/spectral-response.ts';
import { figure, instrument } from '../make.ts';

/** A silicon sensor scaled for red: near-infrared is misread by much more. */
const SILICON = instrument({ id: 'silicon', spectralResponse: { red: 0.01, nearInfrared: 0.05 } });

const contributions = (shares: BandShares, value = 80) =>
  Object.fromEntries(spectralComponents(SILICON, value, shares).map((it) => [it.source.key, it.contribution]));

describe('the shares of the bands', () => {
  test('follow from the peaks of each channel alone', () => {
    expect(bandShares(30, 20)).toEqual({ red: 0.6, nearInfrared: 0.4 });
  });

  test('are not known without both, and each band then counts for all of the light', () => {
    for (const [red, nearInfrared] of [
      [30, undefined],
      [undefined, 20],
      [undefined, undefined],
    ] as const) {
      expect(bandShares(red, nearInfrared)).toEqual({ red: 1, nearInfrared: 1 });
    }
  });
});

describe('the errors of the sensor', () => {
  test('of one channel alone are those of its band', () => {
    expect(contributions(RED_ALONE)).toEqual({ 'silicon/spectral-red': 0.8 });
    expect(contributions(NEAR_INFRARED_ALONE)).toEqual({ 'silicon/spectral-near-infrared': 4 });
  });

  test('of both together count by their share', () => {
    const both = contributions(bandShares(30, 20));
    expect(both['silicon/spectral-red']).toBeCloseTo(0.01 * 0.6 * 80, 12);
    expect(both['silicon/spectral-near-infrared']).toBeCloseTo(0.05 * 0.4 * 80, 12);
  });

  test('without known shares are larger than with any', () => {
    const unknown = Math.hypot(...Object.values(contributions(SHARES_UNKNOWN)));
    for (const red of [0, 1, 10, 50, 99, 100]) {
      expect(unknown).toBeGreaterThanOrEqual(Math.hypot(...Object.values(contributions(bandShares(red, 100 - red)))));
    }
  });

  test('are one error for all that the instrument ever read: another calibration leaves them', () => {
    const keys = (calibrationDate: string) =>
      spectralComponents({ ...SILICON, calibrationDate }, 80, SHARES_UNKNOWN).map((it) => it.source.key);
    expect(keys('2024-01-01')).toEqual(keys('2026-01-01'));
  });

  test('cancel between readings of the same mix of light, and not between those of different ones', () => {
    const read = (value: number, shares: BandShares) => figure(value, spectralComponents(SILICON, value, shares));
    const alike = ratioTo(read(80, bandShares(30, 20)), read(40, bandShares(15, 10)));
    expect(alike).toMatchObject({ kind: 'apart', interval95: [2, 2] });
    const different = ratioTo(read(80, RED_ALONE), read(80, NEAR_INFRARED_ALONE));
    expect(different.kind).toBe('tie');
  });

  test('of nought have no component', () => {
    expect(
      spectralComponents(instrument({ spectralResponse: { red: 0, nearInfrared: 0 } }), 80, SHARES_UNKNOWN),
    ).toEqual([]);
  });
});

describe('a response that is not stated', () => {
  const missing = (spectralResponse: { red?: number; nearInfrared?: number } | undefined, shares: BandShares) =>
    missingSpectral(instrument({ spectralResponse }), shares);
  const silentIn = (...bands: Band[]) => [
    {
      what: { code: 'spectral-response' },
      reason: { code: 'spectral-not-stated', bands, instrument: 'irradiance meter' },
    },
  ];

  test('is told for the bands that were read', () => {
    expect(missing(undefined, SHARES_UNKNOWN)).toEqual(silentIn('red', 'nearInfrared'));
    expect(missing(undefined, RED_ALONE)).toEqual(silentIn('red'));
    expect(missing({ red: 0.01 }, bandShares(30, 20))).toEqual(silentIn('nearInfrared'));
  });

  test('is not missing where it is stated, be it as nought, or where the band was not on', () => {
    expect(missing({ red: 0, nearInfrared: 0 }, SHARES_UNKNOWN)).toEqual([]);
    expect(missing({ red: 0.01 }, RED_ALONE)).toEqual([]);
  });
});
