import { describe, expect, test } from 'vitest';
import { calibrationDue, instrumentUnit, METER_QUANTITY, meterOf } from '../../src/ledger/meters.ts';
import { INSTRUMENT_KINDS, type Instrument, type InstrumentKind } from '../../src/schema/instrument.ts';
import { QUANTITIES } from '../../src/schema/units.ts';

type Change = Partial<Omit<Instrument, 'calibration'>> & { calibration?: Partial<Instrument['calibration']> };

const instrument = ({ calibration, ...part }: Change = {}): Instrument => ({
  name: 'Thermopile on the bench',
  measures: 'irradiance',
  unit: 'mW/cm2',
  range: { from: 0.1, to: 300 },
  response: 'Flat.',
  resolution: 0.1,
  ...part,
  calibration: {
    date: '2026-01-15',
    validMonths: 24,
    relative: 4,
    absolute: 0,
    coverageFactor: 2,
    reference: 'Invented',
    ...calibration,
  },
});

describe('calibrationDue', () => {
  test.each([
    ['2026-01-15', 24, '2028-01-15'],
    ['2026-01-15', 1, '2026-02-15'],
    ['2026-12-31', 12, '2027-12-31'],
    // A month that has no such day ends with its last one.
    ['2026-01-31', 1, '2026-02-28'],
    ['2024-01-31', 1, '2024-02-29'],
    ['2024-02-29', 12, '2025-02-28'],
    ['2025-10-31', 120, '2035-10-31'],
  ])('%s and %i months is %s', (date, validMonths, due) => {
    expect(calibrationDue(instrument({ calibration: { date, validMonths } }))).toBe(due);
  });
});

describe('instrumentUnit', () => {
  test.each([
    ['irradiance', 'mW/cm²', 1],
    ['irradiance', 'W/m2', 0.1],
    ['magnetic', 'mG', 0.1],
    ['magnetic', 'µT', 1],
    ['radio', 'uW/m2', 0.001],
    ['radio', 'mW/cm2', 10000],
    ['length', 'in', 2.54],
    ['flicker', '%', 1],
    ['spectrum', 'nm', 1],
  ] as Array<[InstrumentKind, string, number]>)('%s in %s: %d', (measures, unit, factor) => {
    expect(instrumentUnit(instrument({ measures, unit }))?.factor).toBe(factor);
  });

  test.each([
    ['irradiance', 'W'],
    ['mains', 'mW/cm2'],
    ['mains', 'constructor'],
    ['mains', '__proto__'],
    ['mains', ''],
  ] as Array<[InstrumentKind, string]>)('%s in "%s" is none', (measures, unit) => {
    expect(instrumentUnit(instrument({ measures, unit }))).toBeUndefined();
  });

  test('every kind of instrument shows a quantity that is known', () => {
    expect(Object.keys(METER_QUANTITY).toSorted()).toEqual([...INSTRUMENT_KINDS].toSorted());
    for (const kind of INSTRUMENT_KINDS) expect(QUANTITIES[METER_QUANTITY[kind]].typed).not.toBe('');
  });
});

describe('meterOf', () => {
  test('percentages become fractions, expanded uncertainties standard ones', () => {
    expect(meterOf('thermopile', instrument({ angularResponse: 1.5, repeatability: 0.8 }))).toEqual({
      id: 'thermopile',
      name: 'thermopile on the bench',
      response: 'Flat.',
      calibrationDate: '2026-01-15',
      calibrationRelative: 0.02,
      calibrationAbsolute: 0,
      calibrationStated: '4 % at k = 2',
      resolution: 0.1,
      angularResponse: 0.015,
      repeatability: 0.008,
    });
  });

  test('another coverage factor is taken as stated', () => {
    const meter = meterOf('m', instrument({ calibration: { relative: 5.16, absolute: 0.3, coverageFactor: 2.58 } }));
    expect(meter.calibrationRelative).toBeCloseTo(0.02, 12);
    expect(meter.calibrationAbsolute).toBeCloseTo(0.3 / 2.58, 12);
    expect(meter.calibrationStated).toBe('5.16 % and 0.3 mW/cm2 at k = 2.58');
  });

  test('absolute uncertainty and resolution are carried over from the unit of the display', () => {
    const meter = meterOf(
      'coil',
      instrument({ measures: 'magnetic', unit: 'mG', resolution: 0.2, calibration: { relative: 0, absolute: 1 } }),
    );
    // 1 mG at k = 2 is 0.05 µT; steps of 0.2 mG are 0.02 µT.
    expect(meter.calibrationAbsolute).toBeCloseTo(0.05, 12);
    expect(meter.resolution).toBeCloseTo(0.02, 12);
    expect(meter.calibrationStated).toBe('1 mG at k = 2');
  });

  test('a difference of temperatures in Fahrenheit has no offset', () => {
    const meter = meterOf(
      't',
      instrument({ measures: 'temperature', unit: 'F', resolution: 1.8, calibration: { relative: 0, absolute: 3.6 } }),
    );
    expect(meter.resolution).toBeCloseTo(1, 12);
    expect(meter.calibrationAbsolute).toBeCloseTo(1, 12);
  });

  test('what the file does not state is not made up', () => {
    const meter = meterOf('m', instrument());
    expect(meter).not.toHaveProperty('angularResponse');
    expect(meter).not.toHaveProperty('repeatability');
    expect(meterOf('m', instrument({ repeatability: 0 })).repeatability).toBe(0);
  });
});
