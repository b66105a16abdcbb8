import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { currency, fileReference, isoDate, quantity, text, webAddress } from '../../../src/content/schema/fields.ts';
import { RUNS } from '../../measure/make.ts';

const messages = (schema: z.ZodType, value: unknown) =>
  schema.safeParse(value).error?.issues.map((issue) => issue.message);
const isTaken = (schema: z.ZodType, value: unknown) => schema.safeParse(value).success;

describe('isoDate', () => {
  const day = isoDate('A day.');

  test.each(['2026-11-25', '2024-02-29', '2000-02-29', '1999-12-31'])('%s is a day', (value) => {
    expect(day.parse(value)).toBe(value);
  });

  test('a day that a YAML reader made into a date is the same day', () => {
    expect(day.parse(new Date('2026-10-01T00:00:00Z'))).toBe('2026-10-01');
  });

  test.each([
    '2026-02-30',
    '2026-02-29',
    '1900-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-01-00',
    '2026-1-1',
    '26-01-01',
    '01.10.2026',
    '2026-10-01T00:00:00Z',
    ' 2026-10-01',
    '',
    20261001,
    null,
    {},
    ['2026-10-01'],
  ])('%j is none', (value) => {
    expect(messages(day, value)).toEqual(['a day as YYYY-MM-DD']);
  });

  test('a date that is none does not stop the check', () => {
    expect(() => day.safeParse(new Date('no day'))).not.toThrow();
  });
});

describe('currency', () => {
  const code = currency('A currency.');

  test.each(['EUR', 'GBP', 'USD', 'JPY', 'CHF'])('%s is one', (value) => {
    expect(code.parse(value)).toBe(value);
  });

  test.each(['eur', 'EURO', '€', 'XYZ', '', ' EUR', 'constructor'])('%j is none', (value) => {
    expect(messages(code, value)).toEqual(['a currency code of ISO 4217, such as EUR']);
  });
});

describe('webAddress', () => {
  const address = webAddress('An address.');

  test.each(['https://wrackline.example', 'http://wrackline.example/a?b=c#d'])('%s is taken', (value) => {
    expect(isTaken(address, value)).toBe(true);
  });

  test.each([
    'javascript:alert(1)',
    'JavaScript:alert(1)',
    'data:text/html,<script>alert(1)</script>',
    'file:///etc/hosts',
    'ftp://wrackline.example',
    'wrackline.example',
    '//wrackline.example',
    '',
    5,
  ])('%j is refused', (value) => {
    expect(messages(address, value)).toEqual(['a web address that starts with https://']);
  });
});

describe('text and fileReference', () => {
  test.each([text('Words.'), fileReference('A name.')])('take words and refuse none', (schema) => {
    expect(isTaken(schema, 'words')).toBe(true);
    for (const value of ['', 5, null, undefined, true, ['words']]) expect(isTaken(schema, value)).toBe(false);
  });

  test('a text of nothing but spaces says nothing', () => {
    expect(isTaken(text('Words.'), '   ')).toBe(false);
  });
});

describe('quantity', () => {
  const length = quantity('length', 'A length.', { positive: true, max: 1000 });

  test('gives a reading in the canonical unit', () => {
    expect(length.parse('6 in')).toEqual({ value: 15.24, unit: 'cm', written: '6 in' });
    expect(length.parse(6)).toEqual({ value: 6, unit: 'cm', written: '6 cm' });
  });

  test('hands on what is wanted and the likely slip', () => {
    const [issue] = length.safeParse('20 kg').error?.issues ?? [];
    expect(issue).toMatchObject({
      code: 'custom',
      params: { hint: '"kg" is a unit of a mass, not of a length' },
    });
  });

  test.each([null, true, [], {}, undefined, Number.NaN, Number.POSITIVE_INFINITY])('%j is no quantity', (value) => {
    expect(messages(length, value)).toEqual([
      expect.stringMatching(/^a length: a number in cm, or a text with one of: cm, /),
    ]);
  });

  test('never throws, whatever it is given', () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        expect(() => length.safeParse(value)).not.toThrow();
      }),
      RUNS,
    );
  });
});
