import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildEnding, earlierRanks } from '../../src/build/build-ending.ts';
import { panelsJson } from '../../src/site/export/panels-json.ts';
import { type Demo, demoLedger } from '../support/demo-ledger.ts';

let demo: Demo;
let folder: string;
let file: { panels: Array<Record<string, unknown>>; built_for: string; format: number };
beforeAll(() => {
  demo = demoLedger();
  folder = mkdtempSync(join(tmpdir(), 'build-ending-'));
  mkdirSync(join(folder, 'data'));
  for (const page of ['index.html', '404.html']) writeFileSync(join(folder, page), '');
  file = JSON.parse([...panelsJson(demo.ledger)].join(''));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The end of a build after one that had published that. */
function endingAfter(data?: object, warnings: Parameters<typeof buildEnding>[1]['warnings'] = []) {
  if (data) writeFileSync(join(folder, 'data/panels.json'), JSON.stringify(data));
  else rmSync(join(folder, 'data/panels.json'), { force: true });
  return buildEnding(demo, { earlier: earlierRanks(folder), warnings, folder, seconds: 12.34 });
}

test('day, time, panels, drafts, pages, folder, warnings', () => {
  const { panels } = demo.ledger;
  expect(endingAfter().lines).toEqual([
    `Built for 25 Nov 2026 in 12.3 s: ${panels.size} panels (1 of them withdrawn, 1 draft left out), 2 pages, in ${folder}.`,
    '0 problems, 0 warnings; notes are listed by check.',
    'No guide lay there before.',
  ]);
});

test('nothing has changed in rank', () => {
  const { lines, changes } = endingAfter({ ...file, built_for: '2026-11-20' });
  expect(lines.at(-1)).toBe('Since the guide that lay there, for 20 Nov 2026, no rank has changed.');
  expect(changes).toEqual([]);
});

test('panels new, gone and withdrawn, ranks and ties; the rest is counted', () => {
  const [first, ...rest] = file.panels;
  const other = { ...first, slug: 'kelpwright-shag', model: 'Shag', maker: 'Kelpwright' };
  const bord = { ...first, slug: 'ostrel-bord', model: 'Bord', maker: 'Ostrel' };
  const { lines, changes } = endingAfter({
    ...file,
    panels: [
      other,
      bord,
      ...rest.map((it) =>
        it.slug === 'kelpwright-cormorant' ? { ...it, rank: { place: 1, of: 3, range: [1, 1], tiedWith: [] } } : it,
      ),
    ],
  });
  expect(lines.at(-1)).toBe('Since the guide that lay there, for 25 Nov 2026:');
  expect(changes).toContainEqual({ name: demo.ledger.panels.get(String(first?.slug))?.name, text: 'new' });
  expect(changes).toContainEqual({ name: 'Kelpwright Shag', text: 'gone' });
  expect(changes).toContainEqual({ name: 'Ostrel Bord', text: 'withdrawn' });
  expect(changes.find((it) => it.name === 'Kelpwright Cormorant')?.text).toMatch(/^1st → 2nd/);
  const all = endingAfter({ ...file, panels: [] }).changes;
  expect(all).toHaveLength(6);
  expect(all.at(-1)).toEqual({ name: '', text: `and ${file.panels.length - 5} more` });
});

test('a guide of a form that can’t be read stops nothing', () => {
  expect(endingAfter({ ...file, format: 1 }).lines.at(-1)).toMatch(
    /^Ranks are not compared with the guide that lay there: .*data format 1; this version reads/,
  );
});
