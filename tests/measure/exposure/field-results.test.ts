import { describe, expect, test } from 'vitest';
import type { MainsFrequency } from '../../../src/measure/exposure/field-levels.ts';
import type { FieldReading } from '../../../src/measure/exposure/field-reading.ts';
import { fieldResults } from '../../../src/measure/exposure/field-results.ts';
import { gap } from '../../../src/measure/figure.ts';
import { electric, magnetic, radio, resultOf, shownFrequency } from '../../support/exposure-readings.ts';
import { figureOf, vague } from '../make.ts';

const strictOf = (reading: FieldReading, mains: MainsFrequency = 50) =>
  resultOf(fieldResults('p/d', reading, mains), `${reading.kind}-field-share`);
const mildOf = (reading: FieldReading, mains: MainsFrequency = 50) =>
  resultOf(fieldResults('p/d', reading, mains), `${reading.kind}-field-share-at-mains`);

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
      expect(strict.notes).toEqual([{ code: 'field-share-holds-if', frequency: { from: 'driver' } }]);
      const mild = figureOf(mildOf(magnetic(), mains).figure);
      expect(mild).toMatchObject({
        id: 'p/d/magnetic-field-share-at-mains',
        unit: '%',
        method: { id: 'field-levels', version: 2 },
      });
      expect(mild.value).toBeCloseTo(0.155, 12);
      expect(mild.standardUncertainty).toBeCloseTo(0.01, 12);
      expect(mild.notes).toEqual([{ code: 'field-share-holds-if', frequency: { from: 'mains', hertz: mains } }]);
    }
  });

  test('electric: 40 V/m is 0.8 % of the level at 50 Hz, 0.96 % at 60 Hz, and 48 % above 3 kHz', () => {
    expect(figureOf(mildOf(electric(40), 50).figure).value).toBeCloseTo(0.8, 12);
    expect(figureOf(mildOf(electric(40), 60).figure).value).toBeCloseTo(0.96, 12);
    for (const mains of [50, 60] as const) {
      expect(figureOf(strictOf(electric(40), mains).figure).value).toBeCloseTo(4000 / 83, 12);
    }
  });

  test('the strict end comes first, and each knows both', () => {
    const both = fieldResults('p/d', electric(40), 50);
    expect(both.map(({ id, end }) => [id, end])).toEqual([
      ['electric-field-share', 'strict'],
      ['electric-field-share-at-mains', 'mild'],
    ]);
    for (const { strict, mild } of both) expect([strict, mild]).toEqual(both.map((it) => it.figure));
    for (const { levels } of both) expect([levels.strict.value, levels.mild?.value]).toEqual([83, 5000]);
  });

  test('bounds stay bounds at both ends', () => {
    const on = { ...vague(0.1, 'the reading is a bound'), unit: 'µT' as const, bound: 'below' as const };
    const [strict, mild] = [strictOf(magnetic({ on })), mildOf(magnetic({ on }))];
    expect(figureOf(mild.figure)).toMatchObject({ bound: 'below' });
    expect(figureOf(mild.figure).value).toBeCloseTo(0.05, 12);
    expect(figureOf(mild.figure).calculation).toBe('s < 100 × 0.1 µT (= 1 mG = 100 nT) ÷ 200 µT = 0.05 %');
    expect(figureOf(strict.figure)).toMatchObject({ bound: 'below' });
  });

  test('are held against the level of their kind', () => {
    expect(strictOf(magnetic())).toMatchObject({
      hazard: 'field',
      limit: 'magnetic-level',
    });
    expect(strictOf(electric(40)).limit).toBe('electric-level');
  });

  test('without a reading both are gaps', () => {
    const reading = magnetic({ on: gap('magnetic-field-on', { code: 'not-measured-panel-on' }) });
    const reason = { code: 'not-measured-panel-on' } as const;
    expect(strictOf(reading).figure).toEqual(gap('magnetic-field-share', reason));
    expect(mildOf(reading).figure).toEqual(gap('magnetic-field-share-at-mains', reason));
  });
});

describe('fields with a frequency that the meter showed', () => {
  // ICNIRP 2010, Table 4: 250/f kV/m is 250 V/m at 1 kHz; 83 V/m from 3 kHz; 0.08/f T is 80 µT at 1 kHz.
  test.each([
    [50, 0.8],
    [1000, 16],
    [65_000, 4000 / 83],
  ])('electric, at %s Hz: 40 V/m is %s %%', (hertz, share) => {
    const reading = electric(40, { frequency: shownFrequency(hertz) });
    const [strict, mild] = [strictOf(reading), mildOf(reading)];
    const it = figureOf(strict.figure);
    expect(it.value).toBeCloseTo(share, 9);
    expect(it.inputs).toContain('test/electric-field-frequency');
    expect(it.notes).toEqual([{ code: 'field-share-holds-if', frequency: { from: 'instrument', hertz } }]);
    expect(strict.levels.mild).toBeUndefined();
    expect(mild.figure).toEqual(
      gap('electric-field-share-at-mains', { code: 'field-share-at-shown-frequency', hertz }),
    );
  });

  test('one that no share can be taken at is as none', () => {
    // Above 100 kHz the levels for radio hold as well, and can be lower.
    const odd = [shownFrequency(24.9), shownFrequency(100_001), { ...shownFrequency(2000), bound: 'above' as const }];
    const apartFromReading = (it: FieldReading) => fieldResults('p/d', it, 50).map(({ reading: _, ...rest }) => rest);
    for (const frequency of odd) {
      expect(apartFromReading(electric(40, { frequency }))).toEqual(apartFromReading(electric(40)));
    }
  });

  test('magnetic, at 1 kHz', () => {
    const it = figureOf(strictOf(magnetic({ frequency: shownFrequency(1000) })).figure);
    expect(it.value).toBeCloseTo(0.3875, 12);
    expect(it.calculation).toBe('s = 100 × 0.31 µT (= 3.1 mG = 310 nT) ÷ 80 µT = 0.3875 %');
  });

  test('always lies between the two ends, but for the step of the rows at 3 kHz', () => {
    for (const frequency of [50, 60, 400, 999, 2999, 3001, 20_000, 1e5]) {
      for (const make of [(part: object) => magnetic(part), (part: object) => electric(40, part)]) {
        const at = figureOf(strictOf(make({ frequency: shownFrequency(frequency) })).figure).value;
        const [strict, mild] = [figureOf(strictOf(make({})).figure).value, figureOf(mildOf(make({})).figure).value];
        expect(at).toBeGreaterThanOrEqual(mild * (1 - 1e-12));
        expect(at).toBeLessThanOrEqual(strict * 1.0126);
      }
    }
  });
});

describe('radio', () => {
  test('has one share, of the lowest level for power density, since the frequency is not known', () => {
    const results = fieldResults('p/d', radio(20), 50);
    expect(results.map((it) => it.id)).toEqual(['radio-field-share']);
    const it = figureOf(resultOf(results, 'radio-field-share').figure);
    expect(it.value).toBeCloseTo(1, 12);
    expect(it.calculation).toBe('s = 100 × 20 mW/m² (= 20000 µW/m² = 0.02 W/m²) ÷ 2000 mW/m² = 1 %');
    expect(it.notes).toEqual([{ code: 'field-radio-lowest-level' }]);
    expect(results[0]?.limit).toBe('radio-level');
  });
});
