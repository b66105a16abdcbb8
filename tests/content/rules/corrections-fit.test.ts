import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';

const RIGHT = `corrections:
  - date: 2026-10-05
    panel: plover
    session: 2026-10-01
    metric: mains-draw-combined
    from: 110
    to: { value: 120, low: 119, high: 121 }
    why: Mistyped.
    alsoMoved:
      - { metric: efficiency-combined, from: 20, to: none }
  - { date: 2026-10-06, method: rank, version: 1, from: The page said so, to: It does not, why: A slip. }
`;

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  content.write('corrections.yaml', RIGHT);
});
afterEach(() => content.delete());

test('a list that fits has no problem, and no list has none either', () => {
  expect(content.problems()).toEqual([]);
  expect(content.content().corrections?.data.corrections).toHaveLength(2);
  content.remove('corrections.yaml');
  expect(content.problems()).toEqual([]);
});

describe('is refused at its line', () => {
  test.each([
    ['panel: plover', 'panel: plovr', 3, 'corrections[0].panel', 'did you mean "plover"?'],
    ['session: 2026-10-01', 'session: 2026-10-02', 4, 'corrections[0].session', 'it has 2026-10-01'],
    ['    session: 2026-10-01\n', '', 2, 'corrections[0].session', '2026-10-01'],
    ['metric: mains-draw-combined', 'metric: led-area', 4, 'corrections[0].session', 'take the line out'],
    ['metric: mains-draw-combined', 'metric: mains-drawn', 5, 'corrections[0].metric', undefined],
    ['date: 2026-10-05', 'date: 2026-09-30', 2, 'corrections[0].date', undefined],
    ['date: 2026-10-05', 'date: 2027-01-01', 2, 'corrections[0].date', undefined],
    ['from: 110', 'from: 110 W', 6, 'corrections[0].from', 'the unit is that of the figure, and is left out'],
    ['low: 119', 'low: 120.5', 7, 'corrections[0].to', undefined],
    ['from: 20, to: none', 'from: 20, to: 20', 10, 'corrections[0].alsoMoved[0].to', undefined],
    ['method: rank', 'method: ranks', 11, 'corrections[1].method', 'did you mean "rank"?'],
    ['version: 1', 'version: 99', 11, 'corrections[1].version', undefined],
    ['method: rank, ', 'method: rank, panel: plover, ', 11, 'corrections[1].panel', undefined],
    ['why: A slip.', "why: ''", 11, 'corrections[1].why', undefined],
  ])('%s → %s', (from, to, line, field, hint) => {
    content.edit('corrections.yaml', from, to);
    const found = content.problems().filter((it) => it.field === field);
    expect(found.map((it) => [it.file, it.line])).toEqual([['content/corrections.yaml', line]]);
    if (hint !== undefined) expect(found[0]?.hint).toBe(hint);
  });

  test('a draft, which nobody has seen', () => {
    content.edit('panels/plover/index.md', 'status: published', 'status: draft');
    expect(content.problems().map((it) => it.field)).toContain('corrections[0].panel');
  });

  test('two of one figure on a day', () => {
    const [, second = ''] = RIGHT.split(/(?= {2}- \{ date)/);
    content.write('corrections.yaml', `${RIGHT}${second}`);
    expect(content.problems().map((it) => [it.line, it.field])).toEqual([[12, 'corrections[2].date']]);
  });
});
