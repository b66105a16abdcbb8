import { describe, expect, test } from 'vitest';
import type { FieldReading } from '../../../src/measure/exposure/field-reading.ts';
import { fieldResult } from '../../../src/measure/exposure/field-results.ts';
import { sentenceOf } from '../../../src/measure/exposure/limit.ts';
import { gap } from '../../../src/measure/figure.ts';
import { figure, figureOf, line, vague } from '../make.ts';

const magnetic = (part: Partial<FieldReading> = {}): FieldReading => ({
  kind: 'magnetic',
  on: figure(0.31, [line('coil', 0.02)], 'magnetic-field-on', 'µT'),
  off: figure(0.05, [line('coil', 0.005)], 'magnetic-field-off', 'µT'),
  distance: '15 cm',
  ...part,
});
const electric = (value: number): FieldReading => ({
  kind: 'electric',
  on: figure(value, [line('rod', 1)], 'electric-field-on', 'V/m'),
  off: gap('electric-field-off', 'not measured'),
  distance: undefined,
});
const radio = (value: number): FieldReading => ({
  kind: 'radio',
  on: figure(value, [line('probe', value / 4)], 'radio-field-on', 'mW/m²'),
  off: figure(0.001, [], 'radio-field-off', 'mW/m²'),
  distance: '30 cm',
});

describe('fields as a share of the reference level', () => {
  test('magnetic: 0.31 µT of 200 µT, at 50 Hz and 60 Hz alike', () => {
    for (const mains of [50, 60] as const) {
      const it = figureOf(fieldResult('p/d', magnetic(), mains).figure);
      expect(it).toMatchObject({
        id: 'p/d/magnetic-field-share',
        unit: '%',
        basis: 'derived',
        method: 'field-levels@1',
      });
      expect(it.value).toBeCloseTo(0.155, 12);
      expect(it.standardUncertainty).toBeCloseTo(0.01, 12);
      expect(it.working).toBe('s = 100 × 0.31 µT (= 3.1 mG = 310 nT) ÷ 200 µT = 0.155 %');
      expect(it.notes[0]).toContain(`the mains’ ${mains} Hz is taken`);
    }
  });

  test('electric: the level falls from 50 Hz to 60 Hz', () => {
    expect(figureOf(fieldResult('p/d', electric(50), 50).figure).value).toBeCloseTo(1, 12);
    expect(figureOf(fieldResult('p/d', electric(50), 60).figure).value).toBeCloseTo(1.2, 12);
  });

  test('radio: of the lowest level for power density, since the frequency is not known', () => {
    const result = fieldResult('p/d', radio(20), 50);
    const it = figureOf(result.figure);
    expect(it.value).toBeCloseTo(1, 12);
    expect(it.working).toBe('s = 100 × 20 mW/m² (= 20000 µW/m² = 0.02 W/m²) ÷ 2000 mW/m² = 1 %');
    expect(sentenceOf(result)).toContain('above 2 GHz the share would be a fifth of this one');
    expect(sentenceOf(result)).toContain('(from memory)');
  });

  test('bounds stay bounds', () => {
    const on = { ...vague(0.1, 'the reading is a bound'), unit: 'µT' as const, bound: 'below' as const };
    const result = fieldResult('p/d', magnetic({ on }), 50);
    expect(figureOf(result.figure)).toMatchObject({ bound: 'below' });
    expect(figureOf(result.figure).value).toBeCloseTo(0.05, 12);
    expect(figureOf(result.figure).working).toBe('s < 100 × 0.1 µT (= 1 mG = 100 nT) ÷ 200 µT = 0.05 %');
    expect(sentenceOf(result)).toContain('was below 0.1 µT (below 1 mG)');
    expect(sentenceOf(result)).toContain('is below 0.05 % of the level');
  });

  test('the sentence has both readings, the distance, the level and the implants', () => {
    const result = fieldResult('p/d', magnetic(), 50);
    const { caution } = result;
    const sentence = sentenceOf(result);
    expect(sentence).toContain('0.31 µT (3.1 mG); with it off, 0.05 µT; read at 15 cm.');
    expect(sentence).toContain('0.155 % of the level, 200 µT, at the cautious end of the interval 0.175 %');
    expect(sentence).toContain('ICNIRP, 2010, Health Physics 99(6):818–836 (seen on a page that quotes it)');
    expect(sentence).toContain('Implants may be disturbed below the level too');
    expect(caution).toBe('implants-and-fields');
    expect(sentenceOf(fieldResult('p/d', electric(50), 50))).toContain(
      'with it off, there is no reading (not measured); the distance is not recorded.',
    );
  });

  test('without a reading is a gap', () => {
    const result = fieldResult('p/d', magnetic({ on: gap('magnetic-field-on', 'not measured') }), 50);
    expect(result.figure).toEqual(gap('magnetic-field-share', 'not measured'));
    expect(sentenceOf(result)).toContain('can be given for the magnetic field: not measured.');
  });
});
