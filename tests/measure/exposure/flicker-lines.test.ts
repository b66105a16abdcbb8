import { describe, expect, test } from 'vitest';
import { flickerLines } from '../../../src/measure/exposure/flicker-lines.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { FLICKER_LINES } from '../../references/exposure.ts';

describe('the flicker lines', () => {
  test.each(FLICKER_LINES.map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(Number(flickerLines(row.arguments.frequency)[row.arguments.line]), row);
  });

  test('end: low risk above 1250 Hz, no effect above 3000 Hz', () => {
    expect(flickerLines(1250.1).lowRisk).toBe('no-limit');
    expect(flickerLines(3000).lowRisk).toBe('no-limit');
    expect(flickerLines(3000.1)).toEqual({ lowRisk: 'no-limit', noEffect: 'no-limit' });
  });

  test.each([0, -1, Number.NaN])('are refused for %s Hz', (frequency) => {
    expect(() => flickerLines(frequency)).toThrow(RangeError);
  });
});
