import { describe, expect, test } from 'vitest';
import { todayFrom } from '../../src/ledger/today.ts';

/** Noon at any place, so that no time zone moves it to another day by itself. */
const NOW = new Date(2026, 10, 25, 12);

describe('todayFrom', () => {
  test('is the day of the clock where nothing is set', () => {
    expect(todayFrom({}, NOW)).toBe('2026-11-25');
    expect(todayFrom({ LEDGER_TODAY: '', SOURCE_DATE_EPOCH: '' }, NOW)).toBe('2026-11-25');
  });

  test('is LEDGER_TODAY where it is set, before all else', () => {
    expect(todayFrom({ LEDGER_TODAY: '2026-03-14' }, NOW)).toBe('2026-03-14');
    expect(todayFrom({ LEDGER_TODAY: '2024-02-29', SOURCE_DATE_EPOCH: '0' }, NOW)).toBe('2024-02-29');
  });

  test.each([
    ['0', '1970-01-01'],
    ['86399', '1970-01-01'],
    ['86400', '1970-01-02'],
    // 2026-03-14T00:00:00Z, and the second before it.
    ['1773446400', '2026-03-14'],
    ['1773446399', '2026-03-13'],
  ])('SOURCE_DATE_EPOCH %s is %s, in every time zone', (seconds, day) => {
    expect(todayFrom({ SOURCE_DATE_EPOCH: seconds }, NOW)).toBe(day);
  });

  test.each([
    'tomorrow',
    '2026-02-30',
    '2026-02-29',
    '2026-13-01',
    '2026-00-00',
    '2026-2-3',
    '2026-11-25T00:00',
    '20261125',
    ' 2026-11-25',
    '-2026-11-25',
  ])('LEDGER_TODAY "%s" is refused', (day) => {
    expect(() => todayFrom({ LEDGER_TODAY: day }, NOW)).toThrow(`LEDGER_TODAY is "${day}"; wanted a day as YYYY-MM-DD`);
  });

  test.each(['now', '-1', '1.5', '1e9', '0x10', ' 1', '99999999999999999999', '253402300800'])(
    'SOURCE_DATE_EPOCH "%s" is refused',
    (seconds) => {
      expect(() => todayFrom({ SOURCE_DATE_EPOCH: seconds }, NOW)).toThrow(
        `SOURCE_DATE_EPOCH is "${seconds}"; wanted seconds since 1970`,
      );
    },
  );
});
