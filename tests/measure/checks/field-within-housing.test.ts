import { describe, expect, test } from 'vitest';
import { fieldWithinHousing } from '../../../src/measure/checks/field-within-housing.ts';
import { facts } from './facts.ts';

const size = (width: number, height: number) => ({ width, height });
const flags = (field?: ReturnType<typeof size>, housing?: ReturnType<typeof size>) =>
  fieldWithinHousing.run(facts({ field, housing }));

describe('an LED field', () => {
  test('larger than its housing is impossible, on either side', () => {
    expect(flags(size(31.1, 60), size(31, 66))).toMatchObject([
      { severity: 'impossible', concerns: ['led-area', 'field-width', 'field-height'] },
    ]);
    expect(flags(size(28, 66.1), size(31, 66))).toHaveLength(1);
    expect(flags(size(35, 61), size(31, 66))[0]?.finding).toEqual({
      code: 'field-larger-than-housing',
      field: size(35, 61),
      housing: size(31, 66),
    });
  });

  test('of a smaller area that still does not fit is impossible', () => {
    expect(flags(size(10, 100), size(40, 60))).toHaveLength(1);
  });

  test('up to the size of its housing is nothing odd', () => {
    expect(flags(size(31, 66), size(31, 66))).toEqual([]);
    expect(flags(size(30.9, 65.9), size(31, 66))).toEqual([]);
  });

  test('that fits only when turned on its side gets a note: the two were noted down in a different order', () => {
    expect(flags(size(61, 28), size(31, 66))).toMatchObject([
      { severity: 'note', finding: { code: 'field-turned-in-housing' }, concerns: ['field-width', 'field-height'] },
    ]);
  });

  test('is not judged where one of the two is not known', () => {
    expect(flags(size(50, 100), undefined)).toEqual([]);
    expect(flags(undefined, size(31, 66))).toEqual([]);
  });
});
