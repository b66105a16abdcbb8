import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { isoDate, quantity, text } from '../../../src/content/schema/fields.ts';
import { gridPoint } from '../../../src/content/schema/session.ts';
import { type Finding, findings } from '../../../src/content/schema/wording.ts';

function findingsIn(schema: z.ZodType, data: unknown): Finding[] {
  const parsed = schema.safeParse(data);
  if (parsed.success) throw new Error('the data fits its schema');
  return findings(schema, data, parsed.error.issues);
}

const plain = z.strictObject({
  name: text('What it is called.'),
  count: z.int().positive().max(12).describe('How many.').optional(),
  share: z.number().min(0).max(100).describe('Its share, %.').optional(),
  kind: z.enum(['bought', 'lent', 'given']).describe('How it came.').optional(),
  list: z.array(z.string()).min(2).describe('Some words.').optional(),
  summary: z.string().min(20).describe('A sentence.').optional(),
  block: z
    .strictObject({ day: isoDate('A day.') })
    .describe('A block.')
    .optional(),
  open: z.boolean().describe('Whether.').optional(),
  weight: quantity('mass', 'How heavy.', { positive: true }).optional(),
});

const CASES: Array<[string, object, Omit<Finding, 'path'>]> = [
  ['a missing field', {}, { field: 'name', found: 'nothing', wanted: 'a text (What it is called)' }],
  ['an empty field', { name: null }, { field: 'name', found: 'an empty field', wanted: 'a text (What it is called)' }],
  [
    'an empty text',
    { name: '' },
    { field: 'name', found: '""', wanted: 'a text that is not empty (What it is called)' },
  ],
  ['a number for a text', { name: 5 }, { field: 'name', found: '5', wanted: 'a text (What it is called)' }],
  [
    'a text for a number',
    { name: 'n', share: 'half' },
    { field: 'share', found: '"half"', wanted: 'a number (Its share, %)' },
  ],
  [
    'a fraction for a count',
    { name: 'n', count: 1.5 },
    { field: 'count', found: '1.5', wanted: 'a whole number (How many)' },
  ],
  ['nought of them', { name: 'n', count: 0 }, { field: 'count', found: '0', wanted: 'a number above 0 (How many)' }],
  ['too many', { name: 'n', count: 13 }, { field: 'count', found: '13', wanted: 'a number of at most 12 (How many)' }],
  [
    'too little',
    { name: 'n', share: -1 },
    { field: 'share', found: '-1', wanted: 'a number of at least 0 (Its share, %)' },
  ],
  [
    'a short list',
    { name: 'n', list: ['a'] },
    { field: 'list', found: 'a list of 1', wanted: 'a list of at least 2 (Some words)' },
  ],
  ['a text for a list', { name: 'n', list: 'a' }, { field: 'list', found: '"a"', wanted: 'a list (Some words)' }],
  ['a wrong item', { name: 'n', list: ['a', 5] }, { field: 'list[1]', found: '5', wanted: 'a text' }],
  [
    'a short text',
    { name: 'n', summary: 'Short.' },
    { field: 'summary', found: '"Short."', wanted: 'a text of at least 20 characters (A sentence)' },
  ],
  [
    'a text for a block',
    { name: 'n', block: 'b' },
    { field: 'block', found: '"b"', wanted: 'a block of fields: day (A block)' },
  ],
  [
    'a list for a block',
    { name: 'n', block: [] },
    {
      field: 'block',
      found: 'a list of 0',
      wanted: 'a block of fields: day (A block)',
      hint: 'one block is wanted here, without dashes',
    },
  ],
  [
    'no day',
    { name: 'n', block: { day: 'soon' } },
    { field: 'block.day', found: '"soon"', wanted: 'a day as YYYY-MM-DD (A day)' },
  ],
  [
    'a text for yes or no',
    { name: 'n', open: 'yes' },
    { field: 'open', found: '"yes"', wanted: 'true or false (Whether)', hint: 'write true' },
  ],
  [
    'a list for a quantity',
    { name: 'n', weight: [5] },
    {
      field: 'weight',
      found: 'a list of 1',
      wanted: 'a mass: a number in kg, or a text with one of: kg, g, lb, oz (How heavy)',
    },
  ],
  [
    'nothing of a quantity',
    { name: 'n', weight: 0 },
    { field: 'weight', found: '0', wanted: 'a mass above 0 kg (How heavy)' },
  ],
  [
    'a misspelt choice',
    { name: 'n', kind: 'bougt' },
    { field: 'kind', found: '"bougt"', wanted: 'one of: bought, lent, given', hint: 'did you mean "bought"?' },
  ],
  [
    'no choice',
    { name: 'n', kind: 'stolen' },
    { field: 'kind', found: '"stolen"', wanted: 'one of: bought, lent, given' },
  ],
  [
    'a misspelt unit',
    { name: 'n', weight: '5 kgg' },
    {
      field: 'weight',
      found: '"5 kgg"',
      wanted: 'a mass: a number in kg, or a text with one of: kg, g, lb, oz (How heavy)',
      hint: 'did you mean "5 kg"?',
    },
  ],
  [
    'a misspelt field',
    { name: 'n', shar: 5 },
    {
      field: 'shar',
      found: 'an unknown field, "shar"',
      wanted: 'one of: name, count, share, kind, list, summary, block, open, weight',
      hint: 'did you mean "share"?',
    },
  ],
  [
    'a block for a list',
    { name: 'n', list: { a: 1 } },
    {
      field: 'list',
      found: 'a block of fields',
      wanted: 'a list (Some words)',
      hint: 'start each entry of the list with a dash and a space',
    },
  ],
  [
    'a day in another order',
    { name: 'n', block: { day: '22/11/2026' } },
    {
      field: 'block.day',
      found: '"22/11/2026"',
      wanted: 'a day as YYYY-MM-DD (A day)',
      hint: 'write 2026-11-22',
    },
  ],
  [
    'a day that is none',
    { name: 'n', block: { day: '2026-11-31' } },
    {
      field: 'block.day',
      found: '"2026-11-31"',
      wanted: 'a day as YYYY-MM-DD (A day)',
      hint: 'November has 30 days',
    },
  ],
  [
    'a number with its unit',
    { name: 'n', share: '12 percent' },
    {
      field: 'share',
      found: '"12 percent"',
      wanted: 'a number (Its share, %)',
      hint: 'write 12 alone: the unit is the field’s own',
    },
  ],
  [
    'nothing read, said in words',
    { name: 'n', weight: 'n/a' },
    {
      field: 'weight',
      found: '"n/a"',
      wanted: 'a mass: a number in kg, or a text with one of: kg, g, lb, oz (How heavy)',
      hint: 'leave the field out: what was not read is left out',
    },
  ],
  [
    'nothing read, where the field is needed',
    { name: 'n', block: { day: 'tbd' } },
    {
      field: 'block.day',
      found: '"tbd"',
      wanted: 'a day as YYYY-MM-DD (A day)',
      hint: 'this field is needed; where its block can do without, leave the whole block out',
    },
  ],
  [
    'a decimal comma among the fields of a block',
    { name: 'n', share: 28, 4: null },
    {
      field: '4',
      found: 'an unknown field, "4"',
      wanted: 'one of: name, count, share, kind, list, summary, block, open, weight',
      hint: 'a comma ends a field: write decimals after a point, and thousands without a separator',
    },
  ],
  [
    'another name for a field',
    { name: 'n', mass: 5 },
    {
      field: 'mass',
      found: 'an unknown field, "mass"',
      wanted: 'one of: name, count, share, kind, list, summary, block, open, weight',
      hint: 'did you mean "weight"?',
    },
  ],
  [
    'a misspelt field of a block',
    { name: 'n', block: { day: '2026-01-01', dy: 1 } },
    { field: 'block.dy', found: 'an unknown field, "dy"', wanted: 'one of: day', hint: 'did you mean "day"?' },
  ],
];

describe('one fault in the tester’s words', () => {
  test.each(CASES)('%s', (_name, data, expected) => {
    const [finding, ...more] = findingsIn(plain, data);
    expect(more).toEqual([]);
    const { path, ...rest } = finding as Finding;
    expect(rest).toEqual(expected);
    expect(path.join('.')).toBe(expected.field.replace(/\[(\d+)\]/g, '.$1'));
  });
});

describe('a lost line is told once', () => {
  test('entries of another list, below a list of texts', () => {
    const list = ['a', { b: 1 }, { b: 2 }, { b: 3 }];
    expect(findingsIn(plain, { name: 'n', list }).map((it) => [it.field, it.found, it.hint])).toEqual([
      [
        'list[1]',
        'a block of fields',
        '2 more entries of this list are so too: is the name of another list missing above them?',
      ],
    ]);
  });

  test('two of them are told one by one', () => {
    expect(findingsIn(plain, { name: 'n', list: ['a', { b: 1 }, { b: 2 }] }).map((it) => it.field)).toEqual([
      'list[1]',
      'list[2]',
    ]);
  });

  test('the fields of a block, in the block around it', () => {
    const schema = z.strictObject({
      outer: z.strictObject({ inner: z.strictObject({ a: z.number(), b: z.number(), c: z.number() }).optional() }),
    });
    expect(findingsIn(schema, { outer: { a: 1, b: 2, c: 3 } })).toMatchObject([
      {
        ...{ field: 'outer.a', found: 'fields that belong to another block: a, b, c', wanted: 'one of: inner' },
        hint: 'is the line "inner:" missing above them, or do they start too far to the right or left?',
      },
    ]);
    // Two unknown fields may be two slips.
    expect(findingsIn(schema, { outer: { a: 1, b: 2 } }).map((it) => it.field)).toEqual(['outer.a', 'outer.b']);
    expect(findingsIn(schema, { outer: { a: 1, b: 2, d: 3 } })).toHaveLength(3);
  });
});

test('all faults of a file are there, each unknown field on its own', () => {
  const found = findingsIn(plain, { kind: 'bougt', a: 1, b: 2, weight: -1 });
  expect(found.map((it) => it.field).toSorted()).toEqual(['a', 'b', 'kind', 'name', 'weight']);
});

describe('of alternatives, the one that was meant is spoken of', () => {
  test.each([
    ['a wrong unit', '41 W', '', /^an irradiance: a number in mW\/cm2/],
    ['a wrong unit among readings', [41, '41 W'], '[1]', /^an irradiance: a number in mW\/cm2/],
    ['a struck reading without its reason', { value: 41 }, 'struck', /^a text \(Why it does not count\)$/],
    ['a struck reading that is absurd', { value: 4100, struck: 'Slipped.' }, 'value', /at most 2000 mW\/cm²/],
    [
      'a struck reading without its reason among readings',
      [41, { value: 41 }],
      '[1].struck',
      /^a text \(Why it does not count\)$/,
    ],
    [
      'an absurd struck reading among readings',
      [41, { value: 4100, struck: 'Slipped.' }],
      '[1].value',
      /at most 2000 mW\/cm²/,
    ],
    ['no readings', [], '', /^a list of at least 1/],
  ] as Array<[string, unknown, string, RegExp]>)('%s', (_name, point, field, wanted) => {
    const [finding, ...more] = findingsIn(gridPoint, point);
    expect(more).toEqual([]);
    expect(finding?.field).toBe(field);
    expect(finding?.wanted).toMatch(wanted);
  });

  test('a misspelt field of a struck reading', () => {
    const found = findingsIn(gridPoint, { valeu: 61, struck: 'Slipped.' });
    expect(found.map((it) => [it.field, it.hint]).toSorted()).toEqual([
      ['valeu', 'did you mean "value"?'],
      ['value', undefined],
    ]);
  });

  test('where none was meant, all are named', () => {
    const either = z.strictObject({ a: z.union([z.number(), z.array(z.number())]).describe('One or more.') });
    expect(findingsIn(either, { a: 'b' })).toMatchObject([{ field: 'a', wanted: 'a number, or a list (One or more)' }]);
  });
});
