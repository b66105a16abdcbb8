import { describe, expect, test } from 'vitest';
import type { MainsFrequency } from '../../../src/measure/exposure/field-levels.ts';
import type { FieldReading } from '../../../src/measure/exposure/field-reading.ts';
import { fieldResults } from '../../../src/measure/exposure/field-results.ts';
import { type LimitResult, sentenceOf } from '../../../src/measure/exposure/limit.ts';
import { gap } from '../../../src/measure/figure.ts';
import { figure, figureOf, line, vague } from '../make.ts';

const magnetic = (part: Partial<FieldReading> = {}): FieldReading => ({
  kind: 'magnetic',
  on: figure(0.31, [line('coil', 0.02)], 'magnetic-field-on', 'µT'),
  off: figure(0.05, [line('coil', 0.005)], 'magnetic-field-off', 'µT'),
  distance: '15 cm',
  ...part,
});
const electric = (value: number, part: Partial<FieldReading> = {}): FieldReading => ({
  kind: 'electric',
  on: figure(value, [line('rod', 1)], 'electric-field-on', 'V/m'),
  off: gap('electric-field-off', 'not measured'),
  distance: undefined,
  ...part,
});
const radio = (value: number): FieldReading => ({
  kind: 'radio',
  on: figure(value, [line('probe', value / 4)], 'radio-field-on', 'mW/m²'),
  off: figure(0.001, [], 'radio-field-off', 'mW/m²'),
  distance: '30 cm',
});

const hertz = (value: number) => figure(value, [], 'electric-field-frequency', 'Hz');
const strictOf = (reading: FieldReading, mains: MainsFrequency = 50) =>
  fieldResults('p/d', reading, mains)[0] as LimitResult;
const mildOf = (reading: FieldReading, mains: MainsFrequency = 50) =>
  fieldResults('p/d', reading, mains)[1] as LimitResult;

describe('fields without a frequency', () => {
  test('magnetic: 0.31 µT of 27 µT above 3 kHz, and of 200 µT at 50 Hz and 60 Hz alike', () => {
    for (const mains of [50, 60] as const) {
      const strict = figureOf(strictOf(magnetic(), mains).figure);
      expect(strict).toMatchObject({
        id: 'p/d/magnetic-field-share',
        unit: '%',
        basis: 'derived',
        method: { id: 'field-levels', version: 2 },
      });
      // 100 x 0.31 / 27, and 0.02 / 27 of standard uncertainty.
      expect(strict.value).toBeCloseTo(1.148148, 6);
      expect(strict.standardUncertainty).toBeCloseTo(0.0740741, 7);
      expect(strict.calculation).toBe('s = 100 × 0.31 µT (= 3.1 mG = 310 nT) ÷ 27 µT = 1.148 %');
      expect(strict.notes[0]).toContain('above 3 kHz');
      const mild = figureOf(mildOf(magnetic(), mains).figure);
      expect(mild).toMatchObject({
        id: 'p/d/magnetic-field-share-at-mains',
        unit: '%',
        method: { id: 'field-levels', version: 2 },
      });
      expect(mild.value).toBeCloseTo(0.155, 12);
      expect(mild.standardUncertainty).toBeCloseTo(0.01, 12);
      expect(mild.notes[0]).toContain(`the mains’ ${mains} Hz`);
    }
  });

  test('electric: 40 V/m is 0.8 % of the level at 50 Hz, 0.96 % at 60 Hz, and 48 % above 3 kHz', () => {
    expect(figureOf(mildOf(electric(40), 50).figure).value).toBeCloseTo(0.8, 12);
    expect(figureOf(mildOf(electric(40), 60).figure).value).toBeCloseTo(0.96, 12);
    for (const mains of [50, 60] as const) {
      expect(figureOf(strictOf(electric(40), mains).figure).value).toBeCloseTo(4000 / 83, 12);
    }
  });

  test('the strict end comes first, and one sentence says both', () => {
    const [strict, mild] = [strictOf(electric(40)), mildOf(electric(40))];
    expect(strict.outcome).toEqual(mild.outcome);
    expect(sentenceOf(strict)).toContain(
      'If all of it lies above 3 kHz, as from a driver, the reading with the panel on, the room’s own field included, is 48.2 % of the level, 83 V/m, at the cautious end of the interval 50.6 %; if all of it is at the mains’ 50 Hz, it is 0.8 % of the level, 5000 V/m, at the cautious end of the interval 0.84 %.',
    );
    expect(sentenceOf(strict)).toContain('which can come to more than either end');
  });

  test('what the meter can’t see is in no share, and that is said', () => {
    expect(sentenceOf(strictOf(magnetic({ response: 'One coil, 30 Hz to 400 Hz.' })))).toContain(
      'What the meter can’t see is in no share: its file says “One coil, 30 Hz to 400 Hz”.',
    );
    expect(sentenceOf(strictOf(magnetic()))).toContain('in no share: what it responds to is not recorded.');
  });

  test('bounds stay bounds at both ends', () => {
    const on = { ...vague(0.1, 'the reading is a bound'), unit: 'µT' as const, bound: 'below' as const };
    const [strict, mild] = fieldResults('p/d', magnetic({ on }), 50) as [LimitResult, LimitResult];
    expect(figureOf(mild.figure)).toMatchObject({ bound: 'below' });
    expect(figureOf(mild.figure).value).toBeCloseTo(0.05, 12);
    expect(figureOf(mild.figure).calculation).toBe('s < 100 × 0.1 µT (= 1 mG = 100 nT) ÷ 200 µT = 0.05 %');
    expect(figureOf(strict.figure)).toMatchObject({ bound: 'below' });
    expect(sentenceOf(strict)).toContain('was below 0.1 µT (below 1 mG)');
    expect(sentenceOf(strict)).toContain('is below 0.37 % of the level, 27 µT');
    expect(sentenceOf(strict)).toContain('it is below 0.05 % of the level, 200 µT');
  });

  test('the sentence has both readings, the distance, the level and the implants', () => {
    const result = strictOf(magnetic());
    const sentence = sentenceOf(result);
    expect(sentence).toContain('0.31 µT (3.1 mG); with it off, 0.05 µT; read at 15 cm.');
    expect(sentence).toContain('0.155 % of the level, 200 µT, at the cautious end of the interval 0.175 %');
    expect(sentence).toContain('ICNIRP, 2010, Health Physics 99(6):818–836 (seen on a page that quotes it)');
    expect(sentence).toContain('Implants may be disturbed below the level too');
    expect(result.caution).toBe('implants-and-fields');
    expect(sentenceOf(strictOf(electric(50)))).toContain(
      'with it off, there is no reading (not measured); the distance is not recorded.',
    );
  });

  test('without a reading both are gaps', () => {
    const [strict, mild] = fieldResults('p/d', magnetic({ on: gap('magnetic-field-on', 'not measured') }), 50) as [
      LimitResult,
      LimitResult,
    ];
    expect(strict.figure).toEqual(gap('magnetic-field-share', 'not measured'));
    expect(mild.figure).toEqual(gap('magnetic-field-share-at-mains', 'not measured'));
    expect(sentenceOf(strict)).toContain('can be given for the magnetic field: not measured.');
  });
});

describe('fields with a frequency that the meter showed', () => {
  // ICNIRP 2010, Table 4: 250/f kV/m is 250 V/m at 1 kHz; 83 V/m from 3 kHz; 0.08/f T is 80 µT at 1 kHz.
  test.each([
    [50, 0.8, '50 Hz'],
    [1000, 16, '1 kHz'],
    [65_000, 4000 / 83, '65 kHz'],
  ])('electric, at %s Hz: 40 V/m is %s %%', (frequency, share, words) => {
    const reading = electric(40, { frequency: hertz(frequency) });
    const [strict, mild] = [strictOf(reading), mildOf(reading)];
    const it = figureOf(strict.figure);
    expect(it.value).toBeCloseTo(share, 9);
    expect(it.inputs).toContain('test/electric-field-frequency');
    expect(it.notes[0]).toContain(`all of it is at the ${words} that the meter showed`);
    expect(mild.figure).toEqual(
      gap('electric-field-share-at-mains', `the meter showed ${words}, and the share is for that one`),
    );
    expect(sentenceOf(strict)).not.toContain('if all of it is at the mains');
    expect(sentenceOf(strict)).toContain(`If all of it is at the ${words} that the meter showed, the reading with`);
  });

  test('one that no share can be taken at is as none', () => {
    // Above 100 kHz the levels for radio hold as well, and can be lower.
    const odd = [hertz(24.9), hertz(100_001), { ...hertz(2000), bound: 'above' as const }];
    for (const frequency of odd) {
      expect(fieldResults('p/d', electric(40, { frequency }), 50)).toEqual(fieldResults('p/d', electric(40), 50));
    }
  });

  test('magnetic, at 1 kHz', () => {
    const it = figureOf(strictOf(magnetic({ frequency: hertz(1000) })).figure);
    expect(it.value).toBeCloseTo(0.3875, 12);
    expect(it.calculation).toBe('s = 100 × 0.31 µT (= 3.1 mG = 310 nT) ÷ 80 µT = 0.3875 %');
  });

  test('always lies between the two ends, but for the step of the rows at 3 kHz', () => {
    for (const frequency of [50, 60, 400, 999, 2999, 3001, 20_000, 1e5]) {
      for (const make of [(part: object) => magnetic(part), (part: object) => electric(40, part)]) {
        const at = figureOf(strictOf(make({ frequency: hertz(frequency) })).figure).value;
        const [strict, mild] = [strictOf(make({})), mildOf(make({}))].map((it) => figureOf(it.figure).value);
        expect(at).toBeGreaterThanOrEqual((mild as number) * (1 - 1e-12));
        expect(at).toBeLessThanOrEqual((strict as number) * 1.0126);
      }
    }
  });
});

describe('radio', () => {
  test('has one share, of the lowest level for power density, since the frequency is not known', () => {
    const results = fieldResults('p/d', radio(20), 50);
    expect(results.map((it) => it.id)).toEqual(['radio-field-share']);
    const [result] = results as [LimitResult];
    const it = figureOf(result.figure);
    expect(it.value).toBeCloseTo(1, 12);
    expect(it.calculation).toBe('s = 100 × 20 mW/m² (= 20000 µW/m² = 0.02 W/m²) ÷ 2000 mW/m² = 1 %');
    expect(sentenceOf(result)).toContain('above 2 GHz the share would be a fifth of this one');
    expect(sentenceOf(result)).toContain('(seen in secondary sources only)');
  });
});
