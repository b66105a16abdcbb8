import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fieldPath, shown } from '../../../src/content/schema/problem.ts';
import { RUNS } from '../../measure/make.ts';

describe('fieldPath', () => {
  test.each([
    [[], ''],
    [['model'], 'model'],
    [['sessions', 0, 'date'], 'sessions[0].date'],
    [['sessions', 0, 'grid', 'rows', 1, 2], 'sessions[0].grid.rows[1][2]'],
    [['a.b', 'c'], 'a.b.c'],
    [[0, 'a'], '[0].a'],
  ] as Array<[PropertyKey[], string]>)('%j is %s', (path, text) => {
    expect(fieldPath(path)).toBe(text);
  });
});

describe('shown', () => {
  test.each([
    [undefined, 'nothing'],
    [null, 'an empty field'],
    [[], 'a list of 0'],
    [[1, 2], 'a list of 2'],
    [{}, 'a block of fields'],
    ['20 kg', '"20 kg"'],
    ['', '""'],
    ['two\n  lines', '"two lines"'],
    [0, '0'],
    [-28.4, '-28.4'],
    [Number.NaN, 'NaN'],
    [true, 'true'],
    [new Date('2026-10-01'), '2026-10-01'],
  ])('%j is %s', (value, text) => {
    expect(shown(value)).toBe(text);
  });

  test('a long text is cut', () => {
    const text = shown('x'.repeat(5000));
    expect(text.length).toBeLessThan(90);
    expect(text.endsWith('…')).toBe(true);
  });

  test('signs that command a terminal are not handed on to it', () => {
    expect(shown('\u001b[2Jgone')).not.toMatch(/\p{Cc}/u);
    expect(shown('a\u0000b\u0007c\u009bd')).not.toMatch(/\p{Cc}/u);
  });

  test('is one short line, whatever the value', () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        const text = shown(value);
        expect(text).not.toMatch(/[\n\r]/);
        expect(text).not.toBe('');
        expect(text.length).toBeLessThan(90);
      }),
      RUNS,
    );
  });
});
