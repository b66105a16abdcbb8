/** Edits of the demonstration's own files, and of any file: all that an edit does not speak of stays byte by byte. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { openContent } from '../../../src/content/edit/content-text.ts';
import type { Edit } from '../../../src/content/edit/edit.ts';
import { editContent } from '../../../src/content/edit/edit-content.ts';
import { EditError } from '../../../src/content/edit/edit-error.ts';
import { valueAt } from '../../../src/content/schema/block.ts';
import { DEMO_SOURCE } from '../../support/demo-folder.ts';

const files = globSync('{*.yaml,{instruments,makers}/*.yaml,panels/*/index.{md,mdx}}', { cwd: DEMO_SOURCE }).map(
  (path) => [path, readFileSync(join(DEMO_SOURCE, path), 'utf8')] as const,
);

/** A file's text with line ends as another system writes them. */
const LINE_ENDS = ['\n', '\r\n', '\r'];

/** Every list and single value in data, by its path. */
function partsOf(data: unknown, path: Array<string | number> = []): Array<{ path: typeof path; value: unknown }> {
  const inner = Array.isArray(data)
    ? data.flatMap((it, i) => partsOf(it, [...path, i]))
    : typeof data === 'object' && data !== null
      ? Object.entries(data).flatMap(([key, it]) => partsOf(it, [...path, key]))
      : [];
  return [{ path, value: data }, ...inner];
}

describe.each(files)('%s', (path, text) => {
  const { yaml } = openContent(text, path);
  const parts = partsOf(parse(yaml));

  test('no edit, and an edit that says what stands there, give the same bytes', () => {
    expect(editContent(text, path, [])).toBe(text);
    // A text is written anew by its value, so that one folded over lines comes out otherwise; numbers and words do not.
    const single = parts.filter(({ value }) => typeof value === 'number' || /^[a-z-]{2,20}$/.test(String(value)));
    for (const { path: field, value } of single.filter((_, i) => i % 9 === 0)) {
      const typed = readBack(text, path, field);
      if (typed !== String(value)) continue;
      expect(editContent(text, path, [{ do: 'set', field, value }])).toBe(text);
    }
  });

  test('an item more in each list leaves every other line alone, whatever the line ends', () => {
    // Those with names all, and of the rows of grids some.
    const isNamed = (field: Array<string | number>) => typeof field.at(-1) === 'string';
    const lists = parts.filter(({ path: field, value }, i) => Array.isArray(value) && (isNamed(field) || i % 7 === 0));
    for (const [i, { path: list, value }] of lists.entries()) {
      const lineEnd = LINE_ENDS[i % LINE_ENDS.length] ?? '\n';
      const raw = text.replaceAll('\n', lineEnd);
      const items = value as unknown[];
      for (const at of [0, items.length]) {
        const item = typeof items[0] === 'object' ? items.at(-1) : 7;
        const after = editContent(raw, path, [{ do: 'insert', list, item, at }]);
        expectOthersKept(raw, after, lineEnd);
        expect(valueAt(parse(openContent(after, path).yaml), list)).toEqual(items.toSpliced(at, 0, item));
      }
    }
  });
});

/** What stands in the file for a single value. */
function readBack(text: string, file: string, field: Array<string | number>): string {
  const mark = 90019;
  const after = editContent(text, file, [{ do: 'set', field, value: mark }]);
  const at = after.indexOf(String(mark));
  return text.slice(at, text.length - (after.length - at - String(mark).length));
}

/** Whole lines were put in at one place, or one line grew; what was before and after is as it was. */
function expectOthersKept(before: string, after: string, lineEnd: string): void {
  const [old, now] = [before.split(lineEnd), after.split(lineEnd)];
  let start = 0;
  while (start < old.length && old[start] === now[start]) start++;
  let end = 0;
  while (end < old.length - start && old.at(-1 - end) === now.at(-1 - end)) end++;
  // At most the one line that holds a list in brackets has changed itself.
  expect(old.length - start - end).toBeLessThanOrEqual(1);
  const [changed] = old.slice(start, old.length - end);
  if (changed === undefined) return;
  const kept = now.slice(start, now.length - end).join(lineEnd);
  const head = [...changed].findIndex((sign, i) => kept[i] !== sign);
  // What is new stands at one place of that line: what came before it there, and what came after it, is as it was.
  expect(head < 0 || kept.endsWith(changed.slice(head))).toBe(true);
}

const word = fc.oneof(
  fc.constantFrom(
    'date',
    'paid',
    'note',
    'x',
    'y: z',
    '# no comment',
    "it's",
    '"',
    '',
    ' spaced ',
    '- dash',
    '2026-11-02',
    '1e3',
    'null',
    '{ a',
    'é ü 漢',
    'tab\there',
    'two\nlines',
  ),
  fc.string({ maxLength: 12 }),
);
const scalar = fc.oneof(word, fc.integer(), fc.double({ noNaN: true, noDefaultInfinity: true }), fc.boolean());
const key = fc.stringMatching(/^[a-z]{1,6}$/);
const item = fc.oneof(
  scalar,
  fc.dictionary(key, fc.oneof(scalar, fc.array(scalar, { maxLength: 3 }), fc.dictionary(key, scalar, { maxKeys: 3 })), {
    minKeys: 1,
    maxKeys: 5,
  }),
);
/** Lists as hands write them. */
const layouts = [
  'top: 1   # first\n\nlist:\n  # of the list\n  - { x: 1, y: "two" }   # one\n\n  # of the second\n  - { x: 3, y: four }\n# at the margin\n\nlast: { a: 1 }\n',
  "list:\n- x: 1\n  y:\n  - 2\n  - 3\n- x: 'four'\n  y: []\n# end\nlast:\n  deep:\n    - - 1\n      - 2\n",
  'list:\n    -   x: |+\n            kept\n\n    -   x: >-\n            folded\n            text\n\n\n        # of the item\nlast: x\n',
  'list: [ {x: 1},   # one\n  {x: 2}\n  ]\nlast: ~\n',
  '%YAML 1.2\n---\nlist: [a, "b, c", \'d\']\nlast: x',
];

test('whatever is put in wherever: it is there when the file is read, and every line that was there still is', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...layouts),
      item,
      fc.nat({ max: 3 }),
      fc.constantFrom(...LINE_ENDS),
      (layout, put, at, lineEnd) => {
        const raw = layout.replaceAll('\n', lineEnd);
        const list = parse(layout).list as unknown[];
        let after: string;
        try {
          after = editContent(raw, 'file.yaml', [{ do: 'insert', list: ['list'], item: put, at }]);
        } catch (error) {
          // Refusing is allowed for what no hand writes; losing something is not.
          expect(error).toBeInstanceOf(EditError);
          return;
        }
        const read = parse(after.replace(/\r\n?/g, '\n'));
        expect(read.list).toHaveLength(list.length + 1);
        expect(read.last).toEqual(parse(layout).last);
        expectOthersKept(raw, after, lineEnd);
      },
    ),
    { numRuns: 300 },
  );
});

test('one change and its undoing give the same bytes', () => {
  const text = 'a:\n  - date: 1\n    paid: 2   # seen\n    note: x\n';
  const there: Edit[] = [
    { do: 'add', field: ['a', 0, 'list'], value: 9, order: ['date', 'list', 'paid'] },
    { do: 'set', field: ['a', 0, 'paid'], value: 5 },
  ];
  const back: Edit[] = [
    { do: 'remove', field: ['a', 0, 'list'] },
    { do: 'set', field: ['a', 0, 'paid'], value: 2 },
  ];
  expect(editContent(text, 'x.yaml', there)).not.toBe(text);
  expect(editContent(editContent(text, 'x.yaml', there), 'x.yaml', back)).toBe(text);
});
