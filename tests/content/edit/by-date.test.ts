/** Where a dated item goes in a list that a hand keeps in an order of its own. */
import { expect, test } from 'vitest';
import { placeByDate } from '../../../src/content/edit/by-date.ts';

test.each([
  ['the newest last', ['2025-01-01', '2026-01-01'], '2026-06-01', 'end'],
  ['the newest first', ['2026-01-01', '2025-01-01'], '2026-06-01', 0],
  ['between two', ['2025-01-01', '2026-01-01'], '2025-06-01', 1],
  ['between two, the newest first', ['2026-01-01', '2025-01-01'], '2025-06-01', 1],
  ['before all', ['2025-01-01', '2026-01-01'], '2024-06-01', 0],
  ['after all, the newest first', ['2026-01-01', '2025-01-01'], '2024-06-01', 'end'],
  ['beside one', ['2026-01-01'], '2026-06-01', 'end'],
  ['before one', ['2026-01-01'], '2025-06-01', 0],
  ['alone', [], '2026-06-01', 'end'],
])('%s', (_name, dates, date, place) => {
  expect(placeByDate(dates, date)).toBe(place);
});
