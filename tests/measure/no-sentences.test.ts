import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { sentencesIn } from '../sentence-scan.ts';

const MEASURE = new URL('../../src/measure/', import.meta.url);

/** Registries of methods and metrics: names and formulas of the trade, and what their symbols and constants mean. */
const REGISTRIES = /(?:^|\/)(?:metrics|methods|method-constants|catalogue[^/]*)\.ts$|(?:^|\/)catalogue\//;

const FILES = readdirSync(MEASURE, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
  .map((entry) => `${entry.parentPath}/${entry.name}`.replaceAll('\\', '/').replace(/^.*\/src\/measure\/+/, ''));

test('src/measure has files to look at', () => {
  expect(FILES.length).toBeGreaterThan(50);
  expect(FILES.filter((file) => REGISTRIES.test(file)).length).toBeGreaterThan(0);
});

test('src/measure holds numbers and codes, and no sentences: words/ has them', () => {
  const found = FILES.filter((file) => !REGISTRIES.test(file)).flatMap((file) =>
    sentencesIn(readFileSync(new URL(file, MEASURE), 'utf8')).map(({ line, text }) => `${file}:${line} ${text}`),
  );
  expect(found).toEqual([]);
});

/** Examples have `#{` where code has the sign for a value that is put in. */
const code = (example: string) => example.replaceAll('#{', '$'.concat('{'));

describe('finding sentences', () => {
  test.each([
    ["const reason = 'not measured';", 'not measured'],
    ['const it = "The panel was on.";', 'The panel was on.'],
    ['const it = `of the room, #{value} W`;', 'of the room, 0 W'],
    ['const it = `#{share} % of the limit`;', '0 % of the limit'],
    ['const it = `#{n} LEDs, #{a > 1 ? "which is much" : 0}`;', 'which is much'],
    ["const it = { reason: 'the draw’s own error' };", 'the draw’s own error'],
    ["type Outcome = 'within' | 'not comparable';", 'not comparable'],
    ["const it = 'Near-infrared alone';", 'Near-infrared alone'],
    ["fail(new RangeError('no such point'));", 'no such point'],
  ])('%s', (source, text) => {
    expect(sentencesIn(`\n${code(source)}`)).toEqual([{ line: 2, text }]);
  });

  test.each([
    "throw new RangeError('a distance of nought');",
    'throw new Error(`no words for "#{code}" here`);',
    "import { a } from './a file.ts';",
    '// not measured\n/** The panel was on. */',
    "const it = { code: 'not-measured' };",
    "const it = 'optical-power';",
    'const unit = `#{value} mW/cm²`;',
    "const it = 'mW/cm² W';",
    'const tex = String.raw`\\bar{E} \\cdot A \\times 10^{-3}`;',
    'const id = `#{panel}/#{session}/mean`;',
    'const it = `#{a} × #{b} = #{c}`;',
  ])('%s has none', (source) => {
    expect(sentencesIn(code(source))).toEqual([]);
  });
});
