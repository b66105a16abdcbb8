import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { CORE_SCHEMA, load } from 'js-yaml';
import { describe, expect, test, vi } from 'vitest';
import { parseYaml } from '../../../src/content/read/parse-yaml.ts';
import { RUNS } from '../../measure/make.ts';
import { DEMO_FOLDER } from '../../support/demo-folder.ts';

/** What another reader of YAML makes of a text, the one that Astro has; undefined where it refuses it. */
function reference(text: string): { data: unknown } | undefined {
  try {
    return { data: load(text, { schema: CORE_SCHEMA }) };
  } catch {
    return undefined;
  }
}

/** Where both read a text, they read the same; each may refuse what the other takes. */
function expectAgreement(text: string): void {
  const result = parseYaml(text);
  const wanted = reference(text);
  if ('errors' in result) expect(result.errors.length).toBeGreaterThan(0);
  else if (wanted) expect(result.data ?? null, text).toEqual(wanted.data ?? null);
}

const TEXTS = globSync('**/*.{yaml,md,mdx}', { cwd: DEMO_FOLDER })
  .toSorted()
  .map((file) => {
    const text = readFileSync(join(DEMO_FOLDER, file), 'utf8');
    return file.endsWith('.yaml') ? text : (text.split(/^---$/m)[1] ?? '');
  });

test('every file of the demo content is read as Astro reads it', () => {
  expect(TEXTS.length).toBeGreaterThan(25);
  for (const text of TEXTS) {
    expect(parseYaml(text)).not.toHaveProperty('errors');
    expectAgreement(text);
  }
});

/** What the two read differently: YAML 1.2 has `-.5` as a number, and `0b11` is none. */
test.each([
  ['-.5', -0.5],
  ['+.5', 0.5],
  ['0b11', '0b11'],
])('%s is read by the core schema of YAML 1.2', (text, value) => {
  expect(parseYaml(`a: ${text}\n`)).toMatchObject({ data: { a: value } });
});

test('a tag that nobody knows is refused, and its line named', () => {
  expect(parseYaml('a: 1\nb: !odd c\n')).toEqual({
    errors: [{ line: 2, found: '"b: !odd c"', hint: 'a text that starts with ! needs quotes' }],
  });
});

describe('values', () => {
  const SCALARS = [
    '5',
    '-5',
    '+5',
    '5.',
    '.5',
    '5e3',
    '5E-3',
    '1_000',
    '0x1F',
    '0o17',
    '017',
    '08',
    '1:30',
    '12:30:45',
    '.inf',
    '-.inf',
    '.nan',
    '.NaN',
    'Infinity',
    'NaN',
    '~',
    'null',
    'Null',
    'NULL',
    'true',
    'True',
    'TRUE',
    'yes',
    'no',
    'on',
    'off',
    'y',
    'n',
    '2026-10-01',
    '2026-10-01T00:00:00Z',
    '6 in',
    '<0.1 uT',
    '50 %',
    "'it''s'",
    '"a\\n\\u00e9"',
    '"\\x41"',
    'a#b',
    'a #b',
    '!!str 5',
    '!!int "5"',
    '!foo bar',
    '%',
    '5%',
    '=',
    '<<',
    '""',
    "''",
    '12345678901234567890',
    '0.1e-5',
    '- 5',
    '--5',
    '5-',
    '|\n  a\n  b',
    '>-\n  a\n  b\n\n  c',
    '[1, 2, ]',
    '{ a: 1, b }',
    '{ a: 1, a: 2 }',
    '[a, [b]]',
    '"unclosed',
    '[unclosed',
    '@at',
    '`tick`',
    '\u{1f426}',
    '\u0085',
    '\u2028',
    '\ufeff',
  ];
  test.each(SCALARS)('%j', (scalar) => {
    expectAgreement(`key: ${scalar}\n`);
    expectAgreement(`list:\n  - ${scalar.replaceAll('\n', '\n  ')}\n`);
    // As names, "null" and blocks mean no field to anybody; the two call them differently, and no schema has them.
    if (!/^(?:~$|null$|[[{])/i.test(scalar)) expectAgreement(`${scalar}: value\n`);
  });

  test.each(['__proto__', 'constructor', 'toString'])('the key %s is a field like any other', (key) => {
    const result = parseYaml(`${key}: { a: 1 }\nb: 2\n`);
    if ('errors' in result) throw new Error('refused');
    expect(Object.hasOwn(result.data as object, key)).toBe(true);
    expect(Object.getPrototypeOf(result.data)).toBe(Object.prototype);
    expect(({} as Record<string, unknown>).a).toBeUndefined();
  });

  test('merge keys', () => expectAgreement('a: { x: 1 }\n<<: { y: 2 }\n'));
});

test('whatever slips a text has, it is read, or refused with lines that it has', () => {
  const piece = fc.constantFrom(
    '-',
    '- ',
    ': ',
    ':',
    ' #',
    '*',
    '&a ',
    '|',
    '>',
    '"',
    "'",
    '{',
    '}',
    '[',
    ']',
    ', ',
    '? ',
    '%',
    '@',
    '\t',
    '\n',
    '\n  ',
    '\n---\n',
    '...\n',
    '0',
    '9',
    'e9',
    '.',
    '<',
    '<<: ',
    '!odd ',
    '\r',
    'true',
    '.inf',
    '0o7',
    '0x',
    '_',
    '\u0000',
    '\u0085',
    '\ufeff',
  );
  const slip = fc.tuple(fc.nat(), fc.nat({ max: 12 }), piece);
  fc.assert(
    fc.property(fc.constantFrom(...TEXTS), fc.array(slip, { minLength: 1, maxLength: 4 }), (text, slips) => {
      const changed = slips.reduce((it, [place, cut, put]) => {
        const at = place % (it.length + 1);
        return it.slice(0, at) + put + it.slice(at + cut);
      }, text);
      const lines = changed.split('\n').length;
      const result = parseYaml(changed);
      if ('errors' in result) {
        expect(result.errors.length).toBeGreaterThan(0);
        for (const { line, found, hint } of result.errors) {
          expect(line, changed).toBeGreaterThan(0);
          expect(line, changed).toBeLessThanOrEqual(lines);
          expect(`${found}${hint}`).not.toMatch(/undefined|\[object/);
        }
        return;
      }
      const keys = typeof result.data === 'object' && result.data !== null ? Object.keys(result.data) : [];
      for (const key of keys) {
        expect(result.lineOf([key]), changed).toBeGreaterThan(0);
        expect(result.lineOf([key]), changed).toBeLessThanOrEqual(lines);
      }
    }),
    { ...RUNS, numRuns: 300 },
  );
}, 60_000);

describe('lineOf', () => {
  const text = 'a: 1\nb:\n  - c: 2\n\n  - d:\n      e: 3\nf: { g: 4 }\n';
  test.each([
    [[], 1],
    [['a'], 1],
    [['b'], 2],
    [['b', 0], 3],
    [['b', 0, 'c'], 3],
    [['b', 1, 'd', 'e'], 6],
    [['f', 'g'], 7],
    // What is not there is looked for in the nearest block around it.
    [['b', 1, 'x'], 5],
    [['x'], 1],
    [['a', 'x', 'y'], 1],
  ] as Array<[PropertyKey[], number]>)('%j is line %i', (path, line) => {
    const result = parseYaml(text);
    if ('errors' in result) throw new Error('refused');
    expect(result.lineOf(path)).toBe(line);
  });
});

test('nothing is written to the terminal, whatever is odd in a text', async () => {
  const warnings: string[] = [];
  const listen = (it: Error) => warnings.push(it.message);
  const stderr = vi.spyOn(process.stderr, 'write').mockImplementation(() => true);
  process.on('warning', listen);
  try {
    for (const text of [
      '? { a: 1 }\n: b\n',
      '{ a: 1 }: b\n',
      'a: !odd b\n',
      '%ODD directive\n---\na: 1\n',
      'a: &x 1\nb: *x\n',
      '[1]: 2\nc: *none\n',
      'a: 1\n a: 2\n',
    ]) {
      parseYaml(text);
    }
    // Warnings of the process come a turn later.
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect([warnings, stderr.mock.calls]).toEqual([[], []]);
  } finally {
    process.off('warning', listen);
    stderr.mockRestore();
  }
});
