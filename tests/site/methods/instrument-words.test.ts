import { describe, expect, test } from 'vitest';
import { type InstrumentQuantity, instrumentSchema } from '../../../src/content/schema/instrument.ts';
import {
  angularWords,
  calibrationLine,
  repeatabilityWords,
  spectralWords,
} from '../../../src/site/methods/instrument-words.ts';

const instrument = (part: object = {}): InstrumentQuantity => {
  const { quantities } = instrumentSchema.parse({
    name: 'Meter',
    measures: 'irradiance',
    unit: 'mW/cm2',
    range: { from: 0, to: 300 },
    response: 'Flat.',
    resolution: 0.1,
    calibrations: [{ date: '2026-01-15', validMonths: 24, relative: 4, absolute: 0.2, reference: 'A lamp' }],
    ...part,
  });
  return quantities[0] as InstrumentQuantity;
};

describe('what an instrument’s file says, in words', () => {
  test('a calibration with its days, what it promises, and against what', () => {
    expect(calibrationLine(instrument().calibrations[0] as never, 'mW/cm2')).toEqual({
      date: '15 Jan 2026',
      due: '15 Jan 2028',
      uncertainty: '4 % and 0.2 mW/cm² at k = 2',
      reference: 'A lamp',
    });
  });

  test('oblique light, by f2 or by named angles', () => {
    expect(angularWords(instrument({ angularResponse: { f2: 2.5 } }))).toBe('f2 of 2.5\u00a0%');
    const angles = [
      { angle: '30 deg', error: 1.5 },
      { angle: '60 deg', error: 6 },
    ];
    expect(angularWords(instrument({ angularResponse: { angles } }))).toBe(
      '1.5\u00a0% at 30°, 6\u00a0% at 60° (standard uncertainty)',
    );
  });

  test('each band; one that is not stated is not assessed', () => {
    expect(spectralWords(instrument({ spectralResponse: { red: 1, nearInfrared: 5 } }))).toBe(
      'red 1\u00a0%, near-infrared 5\u00a0% (standard uncertainty)',
    );
    expect(spectralWords(instrument({ spectralResponse: { red: 1 } }))).toBe(
      'red 1\u00a0%, near-infrared not assessed (standard uncertainty)',
    );
  });

  test('scatter in per cent or in decibels', () => {
    expect(repeatabilityWords(instrument({ repeatability: 0.8 }))).toBe('0.8\u00a0% (standard deviation)');
    expect(repeatabilityWords(instrument({ repeatabilityDecibels: 0.5 }))).toBe('0.5\u00a0dB (standard deviation)');
  });

  test('nothing is said for a silent file', () => {
    const silent = instrument();
    expect([angularWords(silent), spectralWords(silent), repeatabilityWords(silent)]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});
