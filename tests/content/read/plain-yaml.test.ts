import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseYaml } from '../../../src/content/read/parse-yaml.ts';
import { plainYaml } from '../../../src/content/read/plain-yaml.ts';
import { RUNS } from '../../measure/make.ts';
import { DEMO_FOLDER } from '../../support/demo-folder.ts';

/** Whatever is taken for plain is sound to the other reader too, and says the same; true where it was. */
function agrees(text: string): boolean {
  const plain = plainYaml(text);
  if (!plain) return false;
  const whole = parseYaml(text);
  if ('errors' in whole) expect.unreachable(`plain, but refused: ${JSON.stringify(text)}`);
  else expect(plain.data ?? null, text).toStrictEqual(whole.data ?? null);
  return true;
}

const TEXTS = globSync('**/*.{yaml,md,mdx}', { cwd: DEMO_FOLDER })
  .toSorted()
  .map((file) => {
    const text = readFileSync(join(DEMO_FOLDER, file), 'utf8');
    return file.endsWith('.yaml') ? text : (text.split(/^---$/m)[1] ?? '');
  });

test('nearly every file of the demonstration is written plainly, and read alike', () => {
  const plain = TEXTS.filter(agrees);
  expect(plain.length).toBeGreaterThan(0.8 * TEXTS.length);
});

test('the places of its fields are those that the other reader finds', () => {
  const text = 'a: 1\nb:\n  - c: 2\n\n  - d:\n      e: 3\nf: { g: 4 }\n';
  const plain = plainYaml(text);
  expect([['a'], ['b', 0, 'c'], ['b', 1, 'd', 'e'], ['f', 'g']].map((path) => plain?.lineOf(path))).toEqual([
    1, 3, 6, 7,
  ]);
});

describe('what readers may take for different things is not plain', () => {
  test.each([
    'a: 007',
    'a: 1_000',
    'a: 5e3',
    'a: -0',
    'a: -0.0',
    'a: 0x1F',
    'a: .5',
    'a: ~',
    'null: 1',
    'True: 1',
    'a: *b',
    'a: &b c',
    'a: !b c',
    'a: "\\n"',
    "a: 'it''s'",
    'a: b: c',
    'a:\tb',
    'a: b\r',
    'a: b\u2028',
    'a: b\u00a0c',
    'a: {}',
    'a: { b }',
    'a: [[[1]]]',
    '- ',
    '  -',
    '---\na: 1\n',
    'a: 1\na: 2',
    'a: 1\n  b: 2',
  ])('%j', (text) => expect(plainYaml(text)).toBeUndefined());
});

describe('whatever is taken for plain is read alike', () => {
  const values = [
    ...['5', '-3.50', '0', '00', '1.', '+5', 'abc def', 'a: b', 'true', 'Null', 'yes', '6 in', '<0.1 uT', '<0.1'],
    ...[
      '2026-11-11',
      '2026-11-111',
      '0.7 %',
      '12 - 3',
      '5:30',
      '"q: #x"',
      "'it'",
      'x - y',
      'x -',
      'text # c',
      'text #',
    ],
    ...['# c', 'text:', 'http://a.b/c#d', '-', '- x', '[1, 2,3]', '{ a: 1, b: x y }', '[{ a: 1 }, { b: [2, 3] }]'],
    ...['[a b, c]', '[1, ]', '{ a: http://x }', '{ a: 1 b }', '{ null }', '>-', '|', '"a" b', 'a "b"', '', '=', '<<'],
  ];
  const line = fc
    .tuple(
      fc.constantFrom(0, 0, 1, 2, 2, 3, 4),
      fc.constantFrom('', '', '- ', '- - ', '-'),
      fc.constantFrom('', 'a: ', 'b: ', 'c:', 'null: ', 'toString: ', 'y:  '),
      fc.constantFrom(...values),
    )
    .map(([indent, entries, name, value]) => `${' '.repeat(indent)}${entries}${name}${value}\n`);

  test('lines in any order', () => {
    let plain = 0;
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 6 }), (lines) => {
        if (agrees(lines.join(''))) plain++;
      }),
      { ...RUNS, numRuns: 5000 },
    );
    expect(plain).toBeGreaterThan(50);
  });

  test('files with slips in them', () => {
    const piece = fc.constantFrom(
      '-',
      '- ',
      ': ',
      '#',
      ' #',
      '"',
      "'",
      '{',
      ']',
      ', ',
      '\n',
      '\n  ',
      ' ',
      '0',
      '\r',
      '',
    );
    const slip = fc.tuple(fc.nat(), fc.nat({ max: 8 }), piece);
    let plain = 0;
    fc.assert(
      fc.property(fc.constantFrom(...TEXTS), fc.array(slip, { minLength: 1, maxLength: 3 }), (text, slips) => {
        const changed = slips.reduce((it, [place, cut, put]) => {
          const at = place % (it.length + 1);
          return it.slice(0, at) + put + it.slice(at + cut);
        }, text);
        if (agrees(changed)) plain++;
      }),
      { ...RUNS, numRuns: 300 },
    );
    expect(plain).toBeGreaterThan(20);
  }, 60_000);
});
