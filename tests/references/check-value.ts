import { expect } from 'vitest';

/**
 * How far an expected value was checked: `read` in the source itself or on a page that quotes it, `secondary`
 * only in something that cites it, `memory` neither, `computed` arithmetic repeated independently, in another
 * program with 30 digits or exact fractions.
 */
export const STANDINGS = ['read', 'secondary', 'memory', 'computed'] as const;
export type Standing = (typeof STANDINGS)[number];

/** One check value from outside the project. */
export interface CheckValue<Arguments> {
  label: string;
  arguments: Arguments;
  expected: number;
  /** Largest accepted difference, in the unit of the value, and why it is not smaller. */
  tolerance: number;
  because: string;
  source: string;
  verified: Standing;
}

/** Holds a calculated value against its check value; a difference beyond the tolerance fails the test. */
export function expectToMeet(actual: number, row: CheckValue<unknown>): void {
  const difference = Math.abs(actual - row.expected);
  expect(difference <= row.tolerance, `${row.label}: ${actual} instead of ${row.expected} ± ${row.tolerance}`).toBe(
    true,
  );
}
