import { expect, test } from 'vitest';
import { rowsText, sectionText, wrapped } from '../../../src/cli/text/lay-out.ts';

test('a text breaks between words, with its indent on every line', () => {
  const text = wrapped('word '.repeat(40).trim(), 4);
  for (const line of text.split('\n')) expect(line).toMatch(/^ {4}word.{0,75}$/);
  expect(text.replace(/\s+/g, ' ').trim()).toBe('word '.repeat(40).trim());
});

test('names and texts share a line where they fit into it, the column as narrow as may be', () => {
  const rows = [
    { name: 'short', text: '1 W' },
    { name: 'a longer name', text: '2 W' },
    { name: 'n'.repeat(70), text: 'a text that does not fit beside it' },
    { name: '', text: 'a sentence' },
  ];
  expect(rowsText(rows)).toBe(
    [
      '  short          1 W',
      '  a longer name  2 W',
      `  ${'n'.repeat(70)}`,
      '    a text that does not fit beside it',
      '  a sentence',
    ].join('\n'),
  );
});

test('columns are counted as they are seen: an accent is none, a wide letter is two', () => {
  expect(
    rowsText([
      { name: 'e\u0301', text: 'x' },
      { name: '灯', text: 'y' },
    ]),
  ).toBe('  e\u0301   x\n  灯  y');
});

test('what to do stands on a line of its own, sections are a line apart', () => {
  expect(
    sectionText([
      { title: 'One', lead: 'First.', rows: [{ name: 'a.yaml:1', text: 'Old.', todo: 'mend it' }] },
      { title: 'Two', rows: [{ name: 'b', text: 'c' }] },
    ]),
  ).toBe('One\n  First.\n  a.yaml:1\n    Old.\n    → mend it\n\nTwo\n  b  c');
});
