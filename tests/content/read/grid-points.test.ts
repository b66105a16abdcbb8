import { describe, expect, test } from 'vitest';
import { acceptedReadings, pointReadings } from '../../../src/content/read/grid-points.ts';
import { gridPoint } from '../../../src/content/schema/session.ts';

describe('readings of a point of the grid', () => {
  test.each([
    ['a reading', 40, [40], [40]],
    ['a reading in another unit', '400 W/m2', [40], [40]],
    ['repeats', [40, 41, '39 mW/cm2'], [40, 41, 39], [40, 41, 39]],
    ['a struck one', { value: 60, struck: 'Slipped.' }, [60], []],
    ['a struck one and the one that replaced it', [{ value: 60, struck: 'Slipped.' }, 41], [60, 41], [41]],
    [
      'struck ones only',
      [
        { value: 60, struck: 'Slipped.' },
        { value: 61, struck: 'Slipped again.' },
      ],
      [60, 61],
      [],
    ],
  ])('%s', (_name, written, all, accepted) => {
    const point = gridPoint.parse(written);
    expect(pointReadings(point).map((it) => it.reading.value)).toEqual(all);
    expect(acceptedReadings(point)).toEqual(accepted);
  });

  test('the reason stays with the reading that was struck', () => {
    const point = gridPoint.parse([{ value: '600 W/m2', struck: 'Slipped.' }, 41]);
    expect(pointReadings(point)).toEqual([
      { reading: { value: 60, unit: 'mW/cm²', written: '600 W/m2' }, rejected: 'Slipped.' },
      { reading: { value: 41, unit: 'mW/cm²', written: '41 mW/cm²' } },
    ]);
  });
});
