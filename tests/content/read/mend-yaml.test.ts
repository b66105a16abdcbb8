/** The one line that explains a file's faults is found, and nothing is mended that was no slip of a line. */
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { readMended } from '../../../src/content/read/read-mended.ts';

const schema = z.strictObject({
  text: z.string(),
  number: z.number(),
  block: z.strictObject({ a: z.number(), b: z.string().optional() }),
  list: z.array(z.strictObject({ c: z.number(), d: z.number().optional() })).optional(),
});

const GOOD = 'text: >-\n  one,\n  two\nnumber: 5\nblock:\n  a: 1\n  b: x\nlist:\n  - c: 1\n    d: 2\n  - { c: 3 }\n';
const read = (text: string) => readMended(text, schema);

test('what is right is read as it is', () => {
  expect(read(GOOD)).toMatchObject({ problems: [], read: { data: { number: 5, block: { a: 1, b: 'x' } } } });
});

describe('a slip of one line', () => {
  test.each([
    [
      'a field that became part of the text above',
      'number: 5',
      '  number: 5',
      4,
      'take 2 spaces away at the start of this line',
    ],
    ['a space too many', '  b: x', '   b: x', 7, 'take one space away at the start of this line'],
    ['a lost dash', '  - c: 1', '    c: 1', 9, 'start each entry of a list with a dash and a space'],
    ['a tab', '  a: 1', '\ta: 1', 6, 'indent with spaces, not with tabs'],
    ['a lost bracket', '{ c: 3 }', '{ c: 3', 11, 'a closing } is missing'],
    ['a colon in a text', 'b: x', 'b: x: y', 7, 'a text with ": " in it needs quotes'],
  ])('%s', (_name, from, to, line, hint) => {
    const text = GOOD.replace(from, to);
    expect(text).not.toBe(GOOD);
    const { read: data, problems } = read(text);
    expect(problems).toMatchObject([{ line, hint }]);
    // The rest is read as it was meant.
    expect(schema.safeParse(data?.data).success).toBe(true);
  });

  test('two of them are two problems', () => {
    const text = GOOD.replace('  b: x', '   b: x').replace('number: 5', '  number: 5');
    expect(
      read(text)
        .problems.map((it) => it.line)
        .toSorted(),
    ).toEqual([4, 7]);
  });
});

describe('what is no slip of a line is left to the schema', () => {
  test.each([
    ['a misspelt field', 'number: 5', 'nubmer: 5'],
    ['a wrong value', 'number: 5', 'number: five'],
    ['a missing field', 'number: 5\n', ''],
    ['a missing value', 'number: 5', 'number:'],
    ['an unknown field', '  b: x', '  b: x\n  z: 1'],
  ])('%s', (_name, from, to) => {
    const text = GOOD.replace(from, to);
    const { read: data, problems } = read(text);
    expect(problems).toEqual([]);
    expect(schema.safeParse(data?.data).success).toBe(false);
  });

  test('what cannot be read and not be mended by a line has one problem, and no data', () => {
    const { read: data, problems } = read('text: [1, "2\nnumber: }}\nblock: {{\n  - - : :\n');
    expect(data).toBeUndefined();
    expect(problems).toHaveLength(1);
  });
});
