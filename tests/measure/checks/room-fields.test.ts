import { describe, expect, test } from 'vitest';
import { roomFields } from '../../../src/measure/checks/room-fields.ts';
import type { MetricId } from '../../../src/measure/metrics.ts';
import { facts } from './facts.ts';

const flags = (metric: MetricId, value: number, usual: number, count = 5) =>
  roomFields.run(facts({ values: { [metric]: value }, rooms: new Map([[metric, { usual, count }]]) }));
const magnetic = (value: number, count?: number) => flags('magnetic-field-off', value, 0.05, count);

describe('the field of a room', () => {
  test('in milligauss typed as microtesla is ten times that of the other sessions', () => {
    // 1 mG = 0.1 µT.
    const [flag] = magnetic(0.5);
    expect(flag).toMatchObject({ severity: 'doubt', concerns: ['magnetic-field-off', 'magnetic-field-on'] });
    expect(flag?.finding).toMatchObject({
      code: 'room-unlike-others',
      ...{ field: 'magnetic', value: 0.5, times: 10, count: 5, usual: 0.05, unit: 'µT', typed: 'mG', factor: 10 },
    });
    expect(flag?.hint).toMatchObject({ code: 'smaller-unit-meant', value: 0.5, unit: 'µT', typed: 'mG' });
  });

  test.each([
    [0.249, 0],
    [0.251, 1],
    [0.999, 1],
    [1.001, 0],
    [0.05, 0],
  ])('of %s µT where others have 0.05: flags %s time(s)', (value, count) => {
    expect(magnetic(value)).toHaveLength(count);
  });

  test('of radio and of electric fields by a thousand', () => {
    expect(flags('radio-field-off', 5, 0.005)[0]?.hint).toMatchObject({
      value: 5,
      unit: 'mW/m²',
      typed: 'uW/m2',
    });
    expect(flags('radio-field-off', 2.4, 0.005)).toEqual([]);
    expect(flags('electric-field-off', 4000, 4)).toHaveLength(1);
    expect(flags('electric-field-off', 40, 4)).toEqual([]);
  });

  test('is held against three other sessions at least', () => {
    expect(magnetic(0.5, 3)).toHaveLength(1);
    expect(magnetic(0.5, 2)).toEqual([]);
    expect(roomFields.run(facts({ values: { 'magnetic-field-off': 0.5 } }))).toEqual([]);
  });
});
