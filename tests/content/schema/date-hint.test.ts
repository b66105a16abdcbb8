/** What is offered for a day in another form is the day that was meant; the calendar's own rules are Node's. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dateHint } from '../../../src/content/schema/date-hint.ts';
import { RUNS } from '../../measure/make.ts';

test.each([
  ['22/11/2026', 'write 2026-11-22'],
  ['22.11.2026', 'write 2026-11-22'],
  ['22. 11. 2026', 'write 2026-11-22'],
  ['22-11-2026', 'write 2026-11-22'],
  ['11/22/2026', 'write 2026-11-22'],
  ['5/6/2026', 'write 2026-06-05 or 2026-05-06, whichever day it was'],
  ['6/6/2026', 'write 2026-06-06'],
  ['2026/11/22', 'write 2026-11-22'],
  ['2026-11-2', 'write 2026-11-02'],
  ['2026.11.22', 'write 2026-11-22'],
  ['2026-11-22T10:00:00Z', 'write 2026-11-22'],
  [20261122, 'write 2026-11-22'],
  ['22 Nov 2026', 'write 2026-11-22'],
  ['22nd of November, 2026', 'write 2026-11-22'],
  ['Nov 22, 2026', 'write 2026-11-22'],
  ['22. november 2026', 'write 2026-11-22'],
  ['2026-11-31', 'November has 30 days'],
  ['31/11/2026', 'November has 30 days'],
  ['31 November 2026', 'November has 30 days'],
  ['2026-02-29', 'February 2026 has 28 days'],
  ['2100-02-29', 'February 2100 has 28 days'],
  ['2028-02-30', 'February 2028 has 29 days'],
  ['2026-13-01', 'there is no month 13; is it 2026-01-13?'],
  ['2026-13-40', 'there is no month 13'],
  ['2026-11-00', 'there is no day 0'],
  ['soon', undefined],
  ['2026', undefined],
  ['41-42', undefined],
  ['22 Foo 2026', undefined],
  [true, undefined],
  [null, undefined],
])('%j: %s', (value, hint) => {
  expect(dateHint(value)).toBe(hint);
});

test('a day of the calendar is found again in every form that leaves one reading', () => {
  const day = fc.date({ min: new Date('1900-01-01'), max: new Date('2199-12-31'), noInvalidDate: true });
  fc.assert(
    fc.property(day, (it) => {
      const iso = it.toISOString().slice(0, 10);
      const [year = '', month = '', date = ''] = iso.split('-');
      const named = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(it);
      for (const form of [`${year}/${month}/${date}`, `${year}${month}${date}`, named]) {
        expect(dateHint(form), form).toBe(`write ${iso}`);
      }
      expect(dateHint(`${date}/${month}/${year}`)).toContain(iso);
      expect(dateHint(`${month}/${date}/${year}`)).toContain(iso);
    }),
    RUNS,
  );
});
