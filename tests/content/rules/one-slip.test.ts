/**
 * One slip of the hand in one line of a panel's file: each line of it is changed in each of the usual ways. Whatever
 * comes of it, the tester is led to that line, and not by an avalanche.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';

/** The changed line, or the lines in its place; null where a line can't have the slip. */
type Slip = (line: string) => string[] | null;

const replaced = (pattern: RegExp, by: string): Slip => {
  return (line) => (pattern.test(line) ? [line.replace(pattern, by)] : null);
};

const SLIPS: Record<string, Slip> = {
  'one space too many': (line) => [` ${line}`],
  'two spaces too many': (line) => [`  ${line}`],
  'one space too few': replaced(/^ /, ''),
  'two spaces too few': replaced(/^ {2}/, ''),
  'a tab for the indentation': replaced(/^ *(?=\S)/, '\t'),
  'a tab for two spaces': replaced(/^ {2}/, '\t'),
  'no dash': replaced(/^(\s*)- /, '$1'),
  'spaces for the dash': replaced(/^(\s*)- /, '$1  '),
  'no space after the dash': replaced(/^(\s*)- /, '$1-'),
  'no colon': replaced(/:(?= |$)/, ''),
  'no space after the colon': replaced(/: /, ':'),
  'no comma between fields': replaced(/, (?=[a-z]+:)/i, ' '),
  'no closing bracket': replaced(/[\]}](?=[^\]}]*$)/, ''),
  'no opening bracket': replaced(/[[{] ?/, ''),
  'the line is lost': () => [],
};

let content: ContentFolder;
beforeAll(() => {
  content = tinyContent();
  // Two score pages that would be read again for each slip.
  content.remove('methods');
});
afterAll(() => content.delete());

test.each(Object.entries(SLIPS))('%s', (name, slip) => {
  const original = content.read(PLOVER);
  const lines = original.split('\n');
  const end = lines.indexOf('---', 1);
  let found = 0;
  try {
    for (let at = 1; at < end; at++) {
      const put = slip(lines[at] ?? '');
      if (!put) continue;
      content.write(PLOVER, lines.toSpliced(at, 1, ...put).join('\n'));
      const problems = content.problems().filter((it) => it.file === `content/${PLOVER}`);
      const told = `line ${at + 1}, "${lines[at]}": ${JSON.stringify(problems, null, 1)}`;
      if (problems.length === 0) continue;
      found++;
      // What a lost line held may be missing in its block, or leave a list without a name.
      if (name === 'the line is lost') {
        expect(problems.length, told).toBeLessThanOrEqual(3);
        continue;
      }
      expect(problems.length, told).toBe(1);
      expect(Math.abs((problems[0]?.line ?? 0) - (at + 1)), told).toBeLessThanOrEqual(1);
    }
  } finally {
    content.write(PLOVER, original);
  }
  expect(found).toBeGreaterThan(4);
});
