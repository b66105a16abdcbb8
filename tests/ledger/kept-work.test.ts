import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keptFiles } from '../../src/content/read/kept-files.ts';
import { readContent } from '../../src/content/read/read-content.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { keptComparisons } from '../../src/ledger/comparisons.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { keptPanels } from '../../src/ledger/worked-panels.ts';
import { TODAY } from '../support/content-folder.ts';
import { generateContent } from '../support/generate-content.ts';

let folder: string;
const read = (path: string) => readFileSync(join(folder, path), 'utf8');
const write = (path: string, text: string) => writeFileSync(join(folder, path), text);
const SLUGS = ['panel-00001', 'panel-00002', 'panel-00003'];
const file = (slug: string) => `panels/${slug}/index.md`;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'kept-work-'));
  generateContent(folder, SLUGS.length, 1, { newestDay: '2026-11-20' });
});
afterAll(() => rmSync(folder, { recursive: true }));

const kept = { files: keptFiles(), work: { panels: keptPanels(), comparisons: keptComparisons() } };

/** The ledger as a development server has it, from what it had before. */
function again(): Ledger {
  const found = readContent({ folder, today: TODAY, drafts: true, kept: kept.files });
  if (!found.content) throw new Error(JSON.stringify(found.problems));
  return buildLedger(found.content, { today: TODAY, drafts: true, kept: kept.work });
}

function afresh(): Ledger {
  const found = readContent({ folder, today: TODAY, drafts: true });
  if (!found.content) throw new Error(JSON.stringify(found.problems));
  return buildLedger(found.content, { today: TODAY, drafts: true });
}

/** Panels whose figures are the very same objects as before. */
const keptOf = (before: Ledger, now: Ledger) =>
  [...now.panels].filter(([slug, it]) => before.panels.get(slug)?.figures === it.figures).map(([slug]) => slug);

describe('what is kept from one reading to the next is what would be worked out again', () => {
  const edits: Array<[name: string, edit: () => void, kept: number]> = [
    ['nothing has changed', () => {}, 3],
    ['a verdict', () => replace(file('panel-00002'), /^verdict: .*$/m, 'verdict: Another one.'), 2],
    ['a note', () => write(file('panel-00001'), `${read(file('panel-00001'))}\nMore.\n`), 2],
    ['a price', () => replace(file('panel-00003'), /paid: \d+/, 'paid: 123'), 2],
    ['a reading of the field', () => replace(file('panel-00003'), /width: [\d.]+/, 'width: 20'), 2],
    [
      'the room of one session, which all are told of',
      () => replace(file('panel-00001'), /(electric:[\s\S]*?off: )[\d.]+/, '$17'),
      0,
    ],
    ['the guide', () => replace('guide.yaml', /distanceSetting: .*/, 'distanceSetting: 3 mm'), 0],
    ['an instrument', () => replace('instruments/irradiance-meter.yaml', /relative: .*/, 'relative: 7'), 0],
    ['a maker', () => replace('makers/maker-2.yaml', /name: .*/, 'name: Fulmar Works'), 0],
    ['a draft', () => replace(file('panel-00003'), /status: .*/, 'status: draft'), 2],
    ['a panel gone, and its room with it', () => rmSync(join(folder, 'panels/panel-00002'), { recursive: true }), 0],
  ];

  test('however it is edited, one after another', () => {
    let before = again();
    expect(before).toEqual(afresh());
    for (const [name, edit, count] of edits) {
      edit();
      const now = again();
      expect(now, name).toEqual(afresh());
      expect(keptOf(before, now), name).toHaveLength(count);
      before = now;
    }
  });

  test('a problem is found, and gone when it is mended', () => {
    const text = read(file('panel-00001'));
    const problems = () => readContent({ folder, today: TODAY, kept: kept.files }).problems;
    replace(file('panel-00001'), /paid: \d+/, 'paid: lots');
    expect(problems()).toMatchObject([{ found: '"lots"' }]);
    expect(problems()).toMatchObject([{ found: '"lots"' }]);
    write(file('panel-00001'), text);
    expect(problems()).toEqual([]);
  });
});

function replace(path: string, from: RegExp, to: string): void {
  const before = read(path);
  const after = before.replace(from, to);
  expect(after, path).not.toBe(before);
  write(path, after);
}
