import { describe, expect, test } from 'vitest';
import { NO_INSTRUMENT } from '../../src/measure/instrument/instrument.ts';
import { type InstrumentReading, readingFigure } from '../../src/measure/reading.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { componentOf, instrument, slanted } from './make.ts';

const SENSOR = instrument({
  calibrationRelative: 0.025,
  calibrationAbsolute: 0.05,
  resolution: 0.1,
  angularResponse: slanted(0.01),
  repeatability: 0.008,
});

const reading = (part: Partial<InstrumentReading> = {}): InstrumentReading => ({
  metric: 'peak-irradiance-red',
  value: 80,
  session: 'lantern-40/2026-03-02',
  path: 'lantern-40/sessions/0/peak/red',
  instrument: SENSOR,
  ...part,
});

const JUDGED = verbatim('judged by eye');

const AT_SIX_INCHES = { distance: 15.24, halfWidth: 0.2, area: undefined };

describe('a reading as a figure', () => {
  test('keeps value, unit, identity and where it came from', () => {
    const it = readingFigure(reading({ notes: [verbatim('one reading rejected')] }));
    expect(it).toMatchObject({
      id: 'lantern-40/2026-03-02/peak-irradiance-red',
      metric: 'peak-irradiance-red',
      value: 80,
      unit: 'mW/cm²',
      basis: 'measured',
      method: { id: 'peak-irradiance', version: 3 },
      inputs: ['lantern-40/sessions/0/peak/red'],
      notes: [verbatim('one reading rejected')],
      flags: [],
    });
  });

  test('has the errors of its instrument in its budget', () => {
    const it = readingFigure(reading());
    expect(componentOf(it, '/calibration').contribution).toBeCloseTo(2, 12);
    expect(componentOf(it, '/offset').contribution).toBe(0.05);
    expect(componentOf(it, '/resolution').contribution).toBeCloseTo(0.05 / Math.sqrt(3), 12);
    expect(componentOf(it, '/repeatability').contribution).toBeCloseTo(0.64, 12);
    expect(it.budget).toHaveLength(4);
    expect(it.standardUncertainty).toBeCloseTo(Math.hypot(2, 0.05, 0.05 / Math.sqrt(3), 0.64), 12);
  });

  test('of light also has the distance and oblique light in it', () => {
    const it = readingFigure(reading({ distance: AT_SIX_INCHES }));
    expect(componentOf(it, '/distance').contribution).toBeCloseTo((-2 * 80 * 0.2) / Math.sqrt(3) / 15.24, 12);
    expect(componentOf(it, '/angular').contribution).toBeCloseTo(0.8, 12);
    expect(it.budget).toHaveLength(6);
  });

  test('of light has the sensor’s response to its band in it, by the share of the band', () => {
    const silicon = { ...SENSOR, spectralResponse: { red: 0.01, nearInfrared: 0.05 } };
    const of = (bands?: InstrumentReading['bands']) =>
      readingFigure(reading({ instrument: silicon, distance: AT_SIX_INCHES, ...(bands && { bands }) }));
    const both = of({ red: 0.6, nearInfrared: 0.4 });
    expect(componentOf(both, '/spectral-red').contribution).toBeCloseTo(0.01 * 0.6 * 80, 12);
    expect(componentOf(both, '/spectral-near-infrared').contribution).toBeCloseTo(0.05 * 0.4 * 80, 12);
    // Not known how the light is shared out: each band may be all of it.
    expect(componentOf(of(), '/spectral-near-infrared').contribution).toBeCloseTo(4, 12);
    // What is no light has no bands.
    expect(
      readingFigure(reading({ instrument: silicon })).budget.some((it) => it.source.key.includes('spectral')),
    ).toBe(false);
  });

  test('before the first calibration of its instrument has no uncertainty and tells why', () => {
    const later = { code: 'calibrated-later', first: '2026-04-01' } as const;
    const early = { ...SENSOR, calibrationAbsent: later };
    expect(readingFigure(reading({ instrument: early, noInstrument: JUDGED }))).toMatchObject({
      value: 80,
      standardUncertainty: null,
      uncertaintyAbsent: later,
    });
  });

  test('of light is misread by as much as comes from each angle: none far away, more near by', () => {
    const instrumentOfF2 = { ...SENSOR, angularResponse: { kind: 'f2', f2: 0.025 } as const };
    const at = (distance: number) => {
      const light = { distance, halfWidth: 0.2, area: 1800, field: { width: 30, height: 60 } };
      return (
        componentOf(readingFigure(reading({ instrument: instrumentOfF2, distance: light })), '/angular').contribution /
        80
      );
    };
    expect(at(3000)).toBeLessThan(1e-5);
    expect(at(5)).toBeGreaterThan(at(15));
    // Without the sides of the field an endless plane is taken: f2 and what lies beyond 85 degrees.
    const unknown = readingFigure(reading({ instrument: instrumentOfF2, distance: AT_SIX_INCHES }));
    expect(componentOf(unknown, '/angular').contribution / 80).toBeCloseTo((0.025 * 0.5) / 0.477667, 6);
  });

  test('tells what its instrument’s file is silent about; oblique light only for light', () => {
    const silent = instrument({
      calibrationRelative: 0.025,
      spectralResponse: undefined,
      angularResponse: undefined,
      repeatability: undefined,
    });
    const sources = (part: Partial<InstrumentReading>) =>
      readingFigure(reading({ instrument: silent, ...part })).unassessed.map((it) => it.what);
    expect(sources({})).toEqual([{ code: 'repeatability' }]);
    expect(sources({ distance: AT_SIX_INCHES })).toEqual([
      { code: 'spectral-response' },
      { code: 'cosine-response' },
      { code: 'repeatability' },
    ]);
  });

  test('without an instrument has no uncertainty and tells why', () => {
    const it = readingFigure(reading({ instrument: undefined }));
    expect(it).toMatchObject({
      value: 80,
      standardUncertainty: null,
      interval95: null,
      uncertaintyAbsent: NO_INSTRUMENT,
    });
  });

  test('without an instrument for a reason of its own gives that reason', () => {
    const it = readingFigure(reading({ instrument: undefined, noInstrument: JUDGED }));
    expect(it.uncertaintyAbsent).toBe(JUDGED);
    expect(readingFigure(reading({ noInstrument: JUDGED })).standardUncertainty).toBeGreaterThan(0);
  });

  test.each(['below', 'above'] as const)('that is a bound stays a bound: %s', (bound) => {
    const it = readingFigure(reading({ value: 0.1, bound }));
    expect(it).toMatchObject({ value: 0.1, bound, standardUncertainty: null, interval95: null });
    expect(it.uncertaintyAbsent).toEqual({ code: 'reading-is-bound', bound });
  });

  test('that is no bound has no trace of one', () => {
    expect(Object.keys(readingFigure(reading()))).not.toContain('bound');
  });

  test('of zero keeps an interval from zero up', () => {
    const it = readingFigure(reading({ value: 0 }));
    expect(it.interval95?.[0]).toBe(0);
    expect(it.interval95?.[1]).toBeGreaterThan(0.05);
  });
});
