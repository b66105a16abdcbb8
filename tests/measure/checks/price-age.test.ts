import { describe, expect, test } from 'vitest';
import { priceAge } from '../../../src/measure/checks/price-age.ts';
import { STALE_PRICE_DAYS } from '../../../src/measure/thresholds.ts';
import { facts } from './facts.ts';

const flags = (priceDate: string | undefined, today: string) => priceAge.run(facts({ priceDate, today }));

describe('a price', () => {
  test('is called old after 90 days, not on the ninetieth', () => {
    expect(STALE_PRICE_DAYS).toBe(90);
    // January has 31 days, February 28, March 31: the ninetieth day after 1 January is 1 April.
    expect(flags('2026-01-01', '2026-04-01')).toEqual([]);
    expect(flags('2026-01-01', '2026-04-02')).toMatchObject([
      { severity: 'note', concerns: ['real-price', 'price-per-watt'] },
    ]);
    expect(flags('2026-01-01', '2026-04-02')[0]?.finding).toEqual({
      code: 'price-stale',
      days: 91,
      date: '2026-01-01',
      limit: 90,
    });
  });

  test('counts calendar days across the changes of the clock and leap days', () => {
    expect(flags('2026-03-01', '2026-05-30')).toEqual([]);
    expect(flags('2026-03-01', '2026-05-31')).toHaveLength(1);
    expect(flags('2026-09-01', '2026-11-30')).toEqual([]);
    expect(flags('2026-09-01', '2026-12-01')).toHaveLength(1);
    expect(flags('2024-02-01', '2024-05-01')).toEqual([]);
    expect(flags('2024-02-01', '2024-05-02')).toHaveLength(1);
  });

  test('of today, or with a date ahead, is not old', () => {
    expect(flags('2026-03-20', '2026-03-20')).toEqual([]);
    expect(flags('2026-12-24', '2026-03-20')).toEqual([]);
  });

  test('without a date is not judged', () => {
    expect(flags(undefined, '2026-03-20')).toEqual([]);
  });
});
