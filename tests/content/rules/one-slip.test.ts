/**
 * One slip of the hand in one line of a panel's file: each of the usual ways in every line that can have it, or in every
 * fifth one where many can, with the next ways in those between. Whatever comes of it, the tester is led to that line, and
 * not by an avalanche.
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

/** Lines that can have a slip, from which on a fifth of them do. */
const MANY = 16;

let content: ContentFolder;
beforeAll(() => {
  content = tinyContent();
  // Two score pages that would be read again for each slip.
  content.remove('methods');
});
afterAll(() => content.delete());

test.each(Object.entries(SLIPS).map(([name, slip], i) => [name, slip, i % 5] as const))('%s', (name, slip, turn) => {
  const original = content.read(PLOVER);
  const lines = original.split('\n');
  const end = lines.indexOf('---', 1);
  let found = 0;
  try {
    const slipped = lines.slice(0, end).flatMap((line, at) => {
      const put = at > 0 && slip(line);
      return put ? [{ at, put }] : [];
    });
    for (const { at, put } of slipped.length > MANY ? slipped.filter((it) => it.at % 5 === turn) : slipped) {
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
