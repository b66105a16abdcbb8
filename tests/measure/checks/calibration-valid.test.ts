import { describe, expect, test } from 'vitest';
import { calibrationValid } from '../../../src/measure/checks/calibration-valid.ts';
import type { Facts } from '../../../src/measure/checks/check.ts';
import { facts } from './facts.ts';

const flags = (due: string, readOn = '2026-03-02') =>
  calibrationValid.run(
    facts({
      calibrations: [{ instrument: 'irradiance meter', readOn, due, reads: ['mean-irradiance', 'optical-power'] }],
    }),
  );

describe('a calibration', () => {
  test('that ran out before the session is doubtful, for all that the meter reads', () => {
    expect(flags('2026-03-01')).toMatchObject([{ severity: 'doubt', concerns: ['mean-irradiance', 'optical-power'] }]);
    expect(flags('2025-12-31')[0]?.finding).toEqual({
      code: 'calibration-run-out',
      instrument: 'irradiance meter',
      due: '2025-12-31',
      session: '2026-03-02',
    });
  });

  test('holds on the day it is due, and before', () => {
    expect(flags('2026-03-02')).toEqual([]);
    expect(flags('2026-03-03')).toEqual([]);
  });

  test('is held against the day of its readings, not against today', () => {
    const it = facts({
      today: '2030-01-01',
      calibrations: [{ instrument: 'irradiance meter', readOn: '2026-03-02', due: '2026-06-01', reads: [] }],
    });
    expect(calibrationValid.run(it)).toEqual([]);
  });

  test('is checked for each meter', () => {
    const calibrations: Facts['calibrations'] = [
      { instrument: 'irradiance meter', readOn: '2026-03-02', due: '2026-01-01', reads: ['mean-irradiance'] },
      { instrument: 'mains meter', readOn: '2026-03-02', due: '2026-02-01', reads: ['mains-draw-combined'] },
      { instrument: 'tape', readOn: '2026-03-02', due: '2028-02-01', reads: ['led-area'] },
    ];
    expect(calibrationValid.run(facts({ calibrations })).map((it) => it.concerns)).toEqual([
      ['mean-irradiance'],
      ['mains-draw-combined'],
    ]);
    expect(calibrationValid.run(facts({ calibrations: [] }))).toEqual([]);
  });
});
