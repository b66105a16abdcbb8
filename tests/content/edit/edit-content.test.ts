/** Edits of YAML: what they put in is laid out as its neighbours, and all else stays byte by byte. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import type { Edit } from '../../../src/content/edit/edit.ts';
import { editContent } from '../../../src/content/edit/edit-content.ts';
import { EditError } from '../../../src/content/edit/edit-error.ts';
import { decimal, YamlText } from '../../../src/content/edit/render.ts';
import { DEMO_SOURCE } from '../../support/demo-folder.ts';

const edited = (text: string, ...edits: Edit[]) => editContent(text, 'file.yaml', edits);
const price = { date: '2026-11-18', list: 1190, paid: 849, currency: 'EUR' };

describe('an item goes into a list as the one beside it is written', () => {
  const cases: Array<
    [name: string, before: string, edit: Omit<Edit & { do: 'insert' }, 'do' | 'list'>, after: string]
  > = [
    [
      'in brackets, in the order of its fields, below the comment on its line',
      'prices:\n  - { currency: EUR, date: 2026-10-09, paid: 999 }   # seen\n\nfield: 1\n',
      { item: price },
      'prices:\n  - { currency: EUR, date: 2026-10-09, paid: 999 }   # seen\n  - { currency: EUR, list: 1190, date: 2026-11-18, paid: 849 }\n\nfield: 1\n',
    ],
    [
      'without spaces inside brackets, without indentation, at the end of a file without a last line end',
      'prices:\n- {date: 2026-10-09, paid: 999}',
      { item: { date: '2026-11-18', paid: 849 } },
      'prices:\n- {date: 2026-10-09, paid: 999}\n- {date: 2026-11-18, paid: 849}',
    ],
    [
      'as a block, with its quotes, its own dash and a folded text before it',
      "prices:\n    -   date: '2026-10-09'\n        paid: 999\n        note: >-\n          Long\n          words.\n    # the end\nx: 1\n",
      { item: { date: '2026-11-18', paid: 849, note: 'Short.' } },
      "prices:\n    -   date: '2026-10-09'\n        paid: 999\n        note: >-\n          Long\n          words.\n    -   date: '2026-11-18'\n        paid: 849\n        note: Short.\n    # the end\nx: 1\n",
    ],
    [
      'at the start, above the comment of what was first, with the blank line between items',
      'c:\n  # of the new one\n  - date: 2026-06-29\n    by: us\n\n  - date: 2025-06-30\n    by: them\n',
      { item: { date: '2026-11-02', by: 'a school' }, at: 0 },
      'c:\n  - date: 2026-11-02\n    by: a school\n\n  # of the new one\n  - date: 2026-06-29\n    by: us\n\n  - date: 2025-06-30\n    by: them\n',
    ],
    [
      'in the middle',
      'c:\n  - { d: 3 }\n  - { d: 1 }\n',
      { item: { d: 2 }, at: 1 },
      'c:\n  - { d: 3 }\n  - { d: 2 }\n  - { d: 1 }\n',
    ],
    [
      'on one line',
      'c: [{ d: 1 }, { d: 2 }]  # all\n',
      { item: { d: 3 } },
      'c: [{ d: 1 }, { d: 2 }, { d: 3 }]  # all\n',
    ],
    [
      'on lines of its own in brackets, with the comma at the end',
      'c: [\n  { d: 1 },   # one\n  { d: 2 },   # two\n]\n',
      { item: { d: 3 } },
      'c: [\n  { d: 1 },   # one\n  { d: 2 },   # two\n  { d: 3 },\n]\n',
    ],
    [
      'and without it',
      'c: [\n  { d: 1 },\n  { d: 2 }   # two\n]\n',
      { item: { d: 3 } },
      'c: [\n  { d: 1 },\n  { d: 2 },   # two\n  { d: 3 }\n]\n',
    ],
    ['at the start in brackets', 'c: [\n  1,\n  2\n]\n', { item: 0, at: 0 }, 'c: [\n  0,\n  1,\n  2\n]\n'],
    [
      'into an empty list',
      'a: 1\nc: []   # none yet\nb: 2\n',
      { item: { d: 1 } },
      'a: 1\nc:   # none yet\n  - { d: 1 }\nb: 2\n',
    ],
    ['below a bare name', 'a: 1\nc:\nb: 2\n', { item: { d: 1 } }, 'a: 1\nc:\n  - { d: 1 }\nb: 2\n'],
    [
      'where there is no list',
      'a: 1\n\nb: 2\n',
      { item: { d: 1 }, order: ['a', 'c', 'b'] },
      'a: 1\n\nc:\n  - { d: 1 }\n\nb: 2\n',
    ],
    [
      'as it was typed, comments and all',
      'c:\n  - date: 2025-10-21\n    rows:\n      - [1, 2]\n\n  # a year later\n  - date: 2026-10-20\n',
      { item: new YamlText('date: 2026-11-20   # again\n# not read:\nrows:\n  - [3, 4]\n') },
      'c:\n  - date: 2025-10-21\n    rows:\n      - [1, 2]\n\n  # a year later\n  - date: 2026-10-20\n\n  - date: 2026-11-20   # again\n    # not read:\n    rows:\n      - [3, 4]\n',
    ],
  ];
  test.each(cases)('%s', (_name, before, edit, after) => {
    expect(edited(before, { do: 'insert', list: ['prices' in parse(before) ? 'prices' : 'c'], ...edit })).toBe(after);
  });

  test('what is too long for a line in brackets becomes a block, with its long text folded', () => {
    const note =
      'Open to anyone until the year ends, says the shop, and to members of the library for a month after that.';
    expect(
      edited('prices:\n  - { date: 2026-10-09, paid: 999 }\n', {
        do: 'insert',
        list: ['prices'],
        item: { ...price, note },
      }),
    ).toBe(
      'prices:\n  - { date: 2026-10-09, paid: 999 }\n  - date: 2026-11-18\n    list: 1190\n    paid: 849\n    currency: EUR\n    note: >-\n      Open to anyone until the year ends, says the shop, and to members of the library for a month after that.\n',
    );
  });

  test('blocks and lists inside it are written as in its neighbour, and lists have their own spaces', () => {
    const before = 'x:\n  - name: a\n    code:\n      needed: true\n    rows: [[1, 2]]\n    box: { w: 1 }\n';
    const item = { name: 'it’s: b', code: { needed: false }, rows: [[3, 4]], box: { w: 2 }, more: { h: [5] } };
    expect(edited(before, { do: 'insert', list: ['x'], item })).toBe(
      `${before}  - name: "it’s: b"\n    code:\n      needed: false\n    rows: [[3, 4]]\n    box: { w: 2 }\n    more:\n      h: [5]\n`,
    );
  });

  test('amounts keep their cents', () => {
    expect(edited('p:\n  - { paid: 1 }\n', { do: 'insert', list: ['p'], item: { paid: decimal(599.5, 2) } })).toContain(
      '599.50 }',
    );
    expect(edited('p:\n  - { paid: 1 }\n', { do: 'insert', list: ['p'], item: { paid: decimal(599, 2) } })).toContain(
      '599 }',
    );
  });
});

describe('a single value', () => {
  test.each([
    ['a: 1   # one\nb: 2\n', ['a'], 5, 'a: 5   # one\nb: 2\n'],
    ["a: 'x'\n", ['a'], "it's", "a: 'it''s'\n"],
    ['a:   # to be read\nb: 2\n', ['a'], 5, 'a: 5   # to be read\nb: 2\n'],
    ['l:\n  - { a: 1, b: 2 }\n', ['l', 0, 'b'], 3, 'l:\n  - { a: 1, b: 3 }\n'],
    ['l: [1, 2]\n', ['l', 1], 3, 'l: [1, 3]\n'],
    ['a: >-\n  folded\n  text\n\nb: 1\n', ['a'], 'short', 'a: short\n\nb: 1\n'],
    ['a: x\n', ['a'], 'no: plain # text', 'a: "no: plain # text"\n'],
  ])('%j', (before, field, value, after) => {
    expect(edited(before, { do: 'set', field, value })).toBe(after);
  });
});

describe('a field', () => {
  const order = ['date', 'list', 'paid', 'currency', 'note'];
  test.each([
    ['- date: 1\n  currency: EUR   # here\n', [0, 'paid'], '- date: 1\n  paid: 9\n  currency: EUR   # here\n'],
    ['- currency: EUR\n  note: x\n', [0, 'paid'], '- paid: 9\n  currency: EUR\n  note: x\n'],
    ['- { date: 1, note: x }\n', [0, 'paid'], '- { date: 1, paid: 9, note: x }\n'],
    ['- { currency: EUR }\n', [0, 'paid'], '- { paid: 9, currency: EUR }\n'],
    ['- {}\n', [0, 'paid'], '- { paid: 9 }\n'],
    ['x:\n  y:\n', ['x', 'y', 'paid'], 'x:\n  y:\n    paid: 9\n'],
    ['', ['paid'], 'paid: 9'],
  ])('goes to its place: %j', (before, field, after) => {
    expect(edited(before, { do: 'add', field, value: 9, order })).toBe(after);
  });

  test('of several lines stands apart where the others do', () => {
    const value = new YamlText('# as printed\npower: 110 W');
    expect(
      edited('a: 1\n\nclaims: 2\n\nb: 3\n', { do: 'add', field: ['sizes'], value, order: ['claims', 'sizes'] }),
    ).toBe('a: 1\n\nclaims: 2\n\nsizes:\n  # as printed\n  power: 110 W\n\nb: 3\n');
  });

  test.each([
    ['- date: 1   # day\n  note: x\n', [0, 'date'], '- note: x\n'],
    [
      '- date: 1\n  # of the note\n  note: >-\n    x\n    y\n  z: 1\n',
      [0, 'note'],
      '- date: 1\n  # of the note\n  z: 1\n',
    ],
    ['- { a: 1, b: 2 }\n', [0, 'a'], '- { b: 2 }\n'],
    ['- { a: 1, b: 2 }\n', [0, 'b'], '- { a: 1 }\n'],
    ['a: 1\nb: 2', ['b'], 'a: 1'],
  ])('is taken out: %j', (before, field, after) => {
    expect(edited(before, { do: 'remove', field })).toBe(after);
  });
});

test('what can’t be edited is refused, with the name of the file', () => {
  const insert: Edit = { do: 'insert', list: ['c'], item: 1 };
  const refused = (text: string, edit: Edit = insert) => {
    expect(() => edited(text, edit)).toThrow(EditError);
    try {
      edited(text, edit);
      return '';
    } catch (error) {
      return String((error as Error).message);
    }
  };
  expect(refused('c: [1\n')).toBe('file.yaml: Its YAML has a fault; `npm run check` says where. Nothing was changed.');
  expect(refused('d: &x [1]\nc: *x\n')).toContain('`c` is an alias');
  expect(refused('c: text\n')).toContain('`c` is no list');
  expect(refused('a: 1\n', { do: 'set', field: ['b'], value: 1 })).toContain('There is no field `b`');
  expect(refused('a: { b: 1 }\n', { do: 'set', field: ['a'], value: 1 })).toContain('one value can’t take its place');
  expect(refused('a: { b: 1 }\n', { do: 'remove', field: ['a', 'b'] })).toContain('the only field');
  expect(() => editContent('no fences\n', 'index.md', [insert])).toThrow('index.md has no front matter');
});

test('front matter alone is edited, with its own line ends and byte order mark', () => {
  const before = '\ufeff---\r\nc:\r\n  - { d: 1 }\r\n---\r\n\r\nc: the body\r\n---\nodd';
  const after = editContent(before, 'panels/x/index.md', [{ do: 'insert', list: ['c'], item: { d: 2 } }]);
  expect(after).toBe(before.replace('{ d: 1 }\r\n', '{ d: 1 }\r\n  - { d: 2 }\r\n'));
});

test('the example of the documentation', () => {
  const gannet = readFileSync(`${DEMO_SOURCE}/panels/kelpwright-gannet/index.mdx`, 'utf8');
  const after = editContent(gannet, 'index.mdx', [
    { do: 'insert', list: ['prices'], item: { ...price, date: '2026-11-24' } },
  ]);
  expect(after).toBe(
    gannet.replace(
      '    note: Open to anyone until the year ends, says the shop.\n',
      (line) => `${line}  - date: 2026-11-24\n    list: 1190\n    paid: 849\n    currency: EUR\n`,
    ),
  );
});

describe('an item takes the place of another', () => {
  const before =
    'a: 1\nsessions:\n  - date: 2026-10-01   # the first\n    on: 1\n    # of this one\n\n  # above the second\n  - date: 2026-11-01\n    on: 2\n\nz: 1   # end\n';

  test('with what is written beside its lines, and nothing else of the file', () => {
    const item = new YamlText('date: 2026-10-01\non: [1, 2]');
    expect(edited(before, { do: 'replace', list: ['sessions'], at: 0, item })).toBe(
      'a: 1\nsessions:\n  - date: 2026-10-01\n    on: [1, 2]\n\n  # above the second\n  - date: 2026-11-01\n    on: 2\n\nz: 1   # end\n',
    );
    expect(edited(before, { do: 'replace', list: ['sessions'], at: 1, item: { date: '2026-11-01', on: 3 } })).toBe(
      before.replace('on: 2', 'on: 3'),
    );
  });

  test.each([2, -1])('but there is none at %i', (at) => {
    const edit: Edit = { do: 'replace', list: ['sessions'], at, item: { date: '2026-12-01' } };
    expect(() => edited(before, edit)).toThrow(EditError);
  });
});
