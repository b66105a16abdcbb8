import { describe, expect, test } from 'vitest';
import {
  type Calibration,
  INSTRUMENT_KINDS,
  type InstrumentKind,
  type InstrumentQuantity,
} from '../../src/content/schema/instrument.ts';
import { INSTRUMENT_QUANTITY } from '../../src/content/schema/instrument-kinds.ts';
import { instrumentUnit } from '../../src/content/schema/instrument-units.ts';
import { sessionSchema } from '../../src/content/schema/session.ts';
import { QUANTITIES } from '../../src/content/schema/units.ts';
import { calibrationDue, calibrationOn, instrumentOf, usedInstruments } from '../../src/ledger/instruments.ts';

type Change = Partial<Omit<InstrumentQuantity, 'calibrations'>> & { calibration?: Partial<Calibration> };

const DAY = '2026-03-02';

const calibrationOf = (part: Partial<Calibration> = {}): Calibration => ({
  date: '2026-01-15',
  validMonths: 24,
  relative: 4,
  absolute: 0,
  coverageFactor: 2,
  reference: 'Invented',
  ...part,
});

const file = ({ calibration, ...part }: Change = {}): InstrumentQuantity => ({
  name: 'Thermopile on the bench',
  measures: 'irradiance',
  unit: 'mW/cm2',
  range: { from: 0.1, to: 300 },
  response: 'Flat.',
  resolution: 0.1,
  ...part,
  calibrations: [calibrationOf(calibration)],
});

/** Recalibrated twice; the list is in no order. */
const recalibrated = (): InstrumentQuantity => ({
  ...file(),
  calibrations: [
    calibrationOf({ date: '2025-01-15', relative: 5 }),
    calibrationOf({ date: '2026-01-15', relative: 3, absolute: 0.2 }),
    calibrationOf({ date: '2024-01-15', relative: 6 }),
  ],
});

describe('calibrationOn', () => {
  test.each([
    ['2024-01-15', '2024-01-15'],
    ['2025-01-14', '2024-01-15'],
    ['2025-01-15', '2025-01-15'],
    ['2026-01-14', '2025-01-15'],
    ['2026-01-15', '2026-01-15'],
    // Lapsed or not: that is for the reader to weigh, and flagged.
    ['2039-01-01', '2026-01-15'],
  ])('on %s the one of %s counts', (day, date) => {
    expect(calibrationOn(recalibrated(), day)?.date).toBe(date);
  });

  test('before the first none does', () => {
    expect(calibrationOn(recalibrated(), '2024-01-14')).toBeUndefined();
  });
});

describe('usedInstruments', () => {
  const session = (date: string) =>
    sessionSchema.parse({ date, methodVersion: 1, instruments: { irradiance: 'thermopile', mains: 'lost' } });
  const known = new Map([
    [
      'thermopile',
      {
        id: 'thermopile',
        file: 'f',
        data: { name: 'Thermopile on the bench', quantities: [recalibrated()], hasBlocks: false },
      },
    ],
  ]) as never;

  test('each with the calibration of its day, and how long it holds', () => {
    expect(usedInstruments(session('2025-06-01'), known)).toMatchObject([
      { kind: 'irradiance', id: 'thermopile', unit: 'mW/cm2', calibration: { date: '2025-01-15', due: '2027-01-15' } },
    ]);
  });

  test('without one before the first', () => {
    expect(usedInstruments(session('2023-06-01'), known)[0]?.calibration).toBeUndefined();
  });
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
    expect(calibrationDue(calibrationOf({ date, validMonths }))).toBe(due);
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
    expect(instrumentUnit(file({ measures, unit }))?.factor).toBe(factor);
  });

  test.each([
    ['irradiance', 'W'],
    ['mains', 'mW/cm2'],
    ['mains', 'constructor'],
    ['mains', '__proto__'],
    ['mains', ''],
  ] as Array<[InstrumentKind, string]>)('%s in "%s" is none', (measures, unit) => {
    expect(instrumentUnit(file({ measures, unit }))).toBeUndefined();
  });

  test('every kind of instrument shows a quantity that is known', () => {
    expect(Object.keys(INSTRUMENT_QUANTITY).toSorted()).toEqual([...INSTRUMENT_KINDS].toSorted());
    for (const kind of INSTRUMENT_KINDS) expect(QUANTITIES[INSTRUMENT_QUANTITY[kind]].typed).not.toBe('');
  });
});

describe('instrumentOf', () => {
  test('percentages become fractions, expanded uncertainties standard ones', () => {
    expect(instrumentOf('thermopile', file({ angularResponse: { f2: 1.5 }, repeatability: 0.8 }), DAY)).toEqual({
      id: 'thermopile',
      name: 'thermopile on the bench',
      response: 'Flat.',
      calibrationDate: '2026-01-15',
      calibrationRelative: 0.02,
      calibrationAbsolute: 0,
      calibrationStated: { relative: 4, absolute: 0, unit: 'mW/cm2', coverageFactor: 2 },
      resolution: 0.1,
      range: { from: 0.1, to: 300 },
      angularResponse: { kind: 'f2', f2: 0.015 },
      repeatability: 0.008,
    });
  });

  test('another coverage factor is taken as stated', () => {
    const instrument = instrumentOf(
      'm',
      file({ calibration: { relative: 5.16, absolute: 0.3, coverageFactor: 2.58 } }),
      DAY,
    );
    expect(instrument.calibrationRelative).toBeCloseTo(0.02, 12);
    expect(instrument.calibrationAbsolute).toBeCloseTo(0.3 / 2.58, 12);
    expect(instrument.calibrationStated).toEqual({
      relative: 5.16,
      absolute: 0.3,
      unit: 'mW/cm2',
      coverageFactor: 2.58,
    });
  });

  test('absolute uncertainty and resolution are carried over from the unit of the display', () => {
    const instrument = instrumentOf(
      'coil',
      file({ measures: 'magnetic', unit: 'mG', resolution: 0.2, calibration: { relative: 0, absolute: 1 } }),
      DAY,
    );
    // 1 mG at k = 2 is 0.05 µT; steps of 0.2 mG are 0.02 µT.
    expect(instrument.calibrationAbsolute).toBeCloseTo(0.05, 12);
    expect(instrument.resolution).toBeCloseTo(0.02, 12);
    expect(instrument.calibrationStated).toEqual({ relative: 0, absolute: 1, unit: 'mG', coverageFactor: 2 });
  });

  test('a difference of temperatures in Fahrenheit has no offset', () => {
    const instrument = instrumentOf(
      't',
      file({ measures: 'temperature', unit: 'F', resolution: 1.8, calibration: { relative: 0, absolute: 3.6 } }),
      DAY,
    );
    expect(instrument.resolution).toBeCloseTo(1, 12);
    expect(instrument.calibrationAbsolute).toBeCloseTo(1, 12);
  });

  test('what the file does not state is not made up', () => {
    const instrument = instrumentOf('m', file(), DAY);
    expect(instrument).not.toHaveProperty('spectralResponse');
    expect(instrument).not.toHaveProperty('repeatabilityDecibels');
    expect(instrument).not.toHaveProperty('calibrationAbsent');
    expect(instrument).not.toHaveProperty('angularResponse');
    expect(instrument).not.toHaveProperty('repeatability');
    expect(instrumentOf('m', file({ repeatability: 0 }), DAY).repeatability).toBe(0);
  });

  test('takes the calibration of the day', () => {
    const [before, after] = ['2026-01-14', '2026-01-15'].map((day) => instrumentOf('m', recalibrated(), day));
    expect(before).toMatchObject({ calibrationDate: '2025-01-15', calibrationRelative: 0.025, calibrationAbsolute: 0 });
    expect(after).toMatchObject({
      calibrationDate: '2026-01-15',
      calibrationRelative: 0.015,
      calibrationAbsolute: 0.1,
    });
    expect(after?.calibrationStated).toMatchObject({ relative: 3, absolute: 0.2, coverageFactor: 2 });
  });

  test('before the first calibration tells that none counts, and since when one would', () => {
    const instrument = instrumentOf('m', recalibrated(), '2024-01-14');
    expect(instrument.calibrationAbsent).toEqual({ code: 'calibrated-later', first: '2024-01-15' });
    expect(instrument.calibrationRelative).toBe(0);
  });

  test('the range is carried over to the canonical unit, with the offset of a temperature', () => {
    const of = (measures: InstrumentKind, unit: string, range: InstrumentQuantity['range']) =>
      instrumentOf('m', file({ measures, unit, range }), DAY).range;
    expect(of('magnetic', 'mG', { from: 0.2, to: 2000 })).toEqual({ from: expect.closeTo(0.02, 12), to: 200 });
    // 32 °F is 0 °C and 212 °F is 100 °C.
    expect(of('temperature', 'F', { from: 32, to: 212 })).toEqual({
      from: expect.closeTo(0, 10),
      to: expect.closeTo(100, 10),
    });
  });

  test('errors in each band become fractions; one that is not stated stays out', () => {
    const of = (spectralResponse: NonNullable<InstrumentQuantity['spectralResponse']>) =>
      instrumentOf('m', file({ spectralResponse }), DAY).spectralResponse;
    expect(of({ red: 1, nearInfrared: 5 })).toEqual({ red: 0.01, nearInfrared: 0.05 });
    expect(of({ nearInfrared: 5 })).toEqual({ nearInfrared: 0.05 });
  });

  test('errors at named angles become fractions, in the order of the angles', () => {
    const angle = (value: number) => ({ value, unit: '°', written: `${value} deg` });
    const angles = [
      { angle: angle(60), error: 6 },
      { angle: angle(30), error: 1.5 },
    ];
    expect(instrumentOf('m', file({ angularResponse: { angles } }), DAY).angularResponse).toEqual({
      kind: 'angles',
      points: [
        { angle: 30, error: 0.015 },
        { angle: 60, error: 0.06 },
      ],
    });
  });

  test('a scatter in decibels stays one', () => {
    const sound = file({ measures: 'sound', unit: 'dB', repeatabilityDecibels: 0.5 });
    expect(instrumentOf('m', sound, DAY).repeatabilityDecibels).toBe(0.5);
  });
});
