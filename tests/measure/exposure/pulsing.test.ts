import { describe, expect, test } from 'vitest';
import type { FlickerReading } from '../../../src/measure/exposure/flicker-results.ts';
import { pulsing, pulsingResults } from '../../../src/measure/exposure/pulsing.ts';
import type { Mode } from '../../../src/measure/modes.ts';
import { NO_FLICKER } from '../../support/exposure-readings.ts';
import { figure, line, vague } from '../make.ts';

describe('pulsing', () => {
  test.each([
    [9, 'deliberate'],
    [8.9, 'slow'],
    [11, 'deliberate'],
    [11.1, 'slow'],
    [39, 'deliberate'],
    [41, 'deliberate'],
    [41.1, 'slow'],
    [89.9, 'slow'],
    [90, undefined],
    [100, undefined],
  ])('at %s Hz and 60 % is %s', (frequency, kind) => {
    expect(pulsing(frequency, 60)).toBe(kind);
  });

  test('starts at a depth of 5 %', () => {
    expect(pulsing(10, 5)).toBe('deliberate');
    expect(pulsing(60, 5)).toBe('slow');
    expect(pulsing(10, 4.99)).toBeUndefined();
    expect(pulsing(60, Number.NaN)).toBeUndefined();
  });
});

describe('pulsing modes', () => {
  const reading = (depth: number, frequency: number, u = 0.5): FlickerReading => ({
    depth: figure(depth, [line('meter', u)], 'flicker-red', '%'),
    frequency: { ...vague(frequency), unit: 'Hz' },
  });
  const results = (given: Partial<Record<Mode, FlickerReading>>) => pulsingResults((mode) => given[mode] ?? NO_FLICKER);

  test('has a result for each mode that pulses, none for the others', () => {
    expect(results({})).toEqual([]);
    expect(results({ combined: reading(1, 10), red: reading(60, 120) })).toEqual([]);
    expect(results({ combined: reading(60, 10), 'near-infrared': reading(60, 33) }).map((it) => it.id)).toEqual([
      'pulsing-combined',
      'pulsing-near-infrared',
    ]);
  });

  test('names what it looks like; the rule is not held against what nobody sees', () => {
    const [red] = results({ red: reading(60, 40.4) });
    expect(red).toMatchObject({
      hazard: 'pulsing',
      mode: 'red',
      pulsing: 'deliberate',
      limit: 'flicker-seizures',
    });
    expect(red?.frequency.value).toBe(40.4);
    expect(results({ red: reading(60, 33) })[0]?.pulsing).toBe('slow');
    expect(results({ 'near-infrared': reading(60, 10) })[0]?.limit).toBeUndefined();
  });

  test('goes by the cautious end of the depth, and by the bound of a bounded one', () => {
    expect(results({ red: reading(4.5, 10, 0.5) })).toHaveLength(1);
    expect(results({ red: reading(4.5, 10, 0.1) })).toHaveLength(0);
    const bounded = (value: number, bound: 'below' | 'above'): FlickerReading => ({
      depth: { ...vague(value, 'a bound'), unit: '%', bound },
      frequency: { ...vague(10), unit: 'Hz' },
    });
    expect(results({ red: bounded(10, 'below') })[0]?.figure.bound).toBe('below');
    expect(results({ red: bounded(1, 'below') })).toEqual([]);
    expect(results({ red: bounded(50, 'above') })[0]?.figure.bound).toBe('above');
  });
});
