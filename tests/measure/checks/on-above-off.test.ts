import { expect, test } from 'vitest';
import { FIELD_TOLERANCE, onAboveOff, SOUND_TOLERANCE } from '../../../src/measure/checks/on-above-off.ts';
import { facts } from './facts.ts';

const flags = (values: Record<string, number>) => onAboveOff.run(facts({ values }));

test('less with the panel on than with it off is doubtful', () => {
  expect(flags({ 'electric-field-on': 4, 'electric-field-off': 37 })).toMatchObject([
    {
      severity: 'doubt',
      finding: { code: 'on-below-off', of: 'electric', on: 4, off: 37 },
      concerns: ['electric-field-on', 'electric-field-off'],
    },
  ]);
  expect(flags({ 'sound-on': 32.1, 'sound-off': 44 })).toHaveLength(1);
});

test('as much as chance and a changing room make is nothing odd', () => {
  expect([FIELD_TOLERANCE, SOUND_TOLERANCE]).toEqual([0.25, 1.5]);
  expect(flags({ 'magnetic-field-on': 0.75, 'magnetic-field-off': 1 })).toEqual([]);
  expect(flags({ 'sound-on': 30, 'sound-off': 31.5 })).toEqual([]);
  expect(flags({ 'radio-field-on': 0.1 })).toEqual([]);
});

test('a bound tells nothing of the two', () => {
  const { figure, ...rest } = facts({ values: { 'magnetic-field-on': 0.1, 'magnetic-field-off': 0.4 } });
  const bounded = (metric: Parameters<typeof figure>[0]) => {
    const it = figure(metric);
    return it && { ...it, bound: 'below' as const };
  };
  expect(onAboveOff.run({ ...rest, figure })).toHaveLength(1);
  expect(onAboveOff.run({ ...rest, figure: bounded })).toEqual([]);
});
