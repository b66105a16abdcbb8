import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sectionText } from '../../../src/cli/text/lay-out.ts';
import { loadLedger } from '../../../src/ledger/load-ledger.ts';
import { staleItems } from '../../../src/site/stale/stale-items.ts';
import { staleLead, staleSections } from '../../../src/site/stale/stale-words.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';

let content: ContentFolder;
beforeAll(() => {
  content = tinyContent();
  // Its two panels are of July and November 2026, its meters of January 2026 and good for a year.
  content.edit('panels/plover/index.md', 'claims:\n', 'claims:\n  date: 2026-07-01\n');
});
afterAll(() => {
  delete process.env.LEDGER_TODAY;
  content.delete();
});

function staleOn(day: string) {
  process.env.LEDGER_TODAY = day;
  return staleItems(loadLedger({ folder: content.folder }));
}
const kindsOn = (day: string) => staleOn(day).map((it) => `${it.kind} ${it.state} ${it.name}`);

describe('what has gone stale', () => {
  test('a price, the day after its ninetieth, at its line', () => {
    const kinds = (day: string) => kindsOn(day).filter((it) => it.startsWith('price') && it.includes('Plover'));
    expect(kinds('2027-01-30')).toEqual([]);
    expect(kinds('2027-01-31')).toEqual(['price past Wrackline Plover']);
    const item = staleOn('2027-01-31').find((it) => it.name.includes('Plover'));
    expect(item).toMatchObject({
      day: '2026-11-01',
      file: `${content.folder}/panels/plover/index.md`,
      line: content.lineOf('panels/plover/index.md', '- date: 2026-11-01'),
      field: 'prices[1]',
      todo: 'look the price up: npm run ledger -- reprice plover',
    });
  });

  test('a panel last read two years ago, a tariff and claims of a year ago', () => {
    const panel = content.content().panels.get('plover')?.data;
    const newest =
      panel?.sessions
        .map((it) => it.date)
        .toSorted()
        .at(-1) ?? '';
    const later = `${Number(newest.slice(0, 4)) + 2}${newest.slice(4)}`;
    expect(kindsOn(later)).toContain('session past Wrackline Plover');
    const before = new Date(Date.parse(later) - 86_400_000).toISOString().slice(0, 10);
    expect(kindsOn(before).filter((it) => it.startsWith('session'))).not.toContain('session past Wrackline Plover');
    expect(kindsOn('2027-07-01')).toContain('claims past Wrackline Plover');
    expect(kindsOn('2027-06-30')).not.toContain('claims past Wrackline Plover');
  });

  test('a calibration is due from the sixtieth day before it runs out', () => {
    const meters = [...content.content().instruments.values()].map((it) => it.data.name);
    const of = (day: string) => staleOn(day).filter((it) => it.kind === 'calibration' && meters.includes(it.name));
    const [first] = of('2030-01-01');
    const due = first?.day ?? '';
    const at = (days: number) => new Date(Date.parse(due) + days * 86_400_000).toISOString().slice(0, 10);
    const own = (day: string) => of(day).find((it) => it.name === first?.name);
    expect(own(at(-61))).toBeUndefined();
    expect(own(at(-60))).toMatchObject({ state: 'soon', text: expect.stringContaining('runs out in 60 days') });
    expect(own(at(-1))).toMatchObject({ text: expect.stringContaining('runs out in 1 day,') });
    expect(own(at(0))).toMatchObject({ state: 'soon', text: expect.stringContaining('runs out today') });
    expect(own(at(1))).toMatchObject({ state: 'past', text: expect.stringContaining('ran out on') });
  });

  test('drafts and withdrawn panels are nobody’s to keep fresh', () => {
    const text = content.read('panels/plover/index.md');
    content.edit('panels/plover/index.md', 'status: published', 'status: draft');
    expect(kindsOn('2029-01-01').filter((it) => it.includes('Plover'))).toEqual([]);
    content.write('panels/plover/index.md', text);
  });
});

test('in words, within 80 columns, with what to do; the count first', () => {
  const items = staleOn('2029-01-02');
  expect(staleLead(items)).toBe(`${items.length} things gone stale.`);
  expect(staleLead([])).toBe('Nothing has gone stale.');
  const text = sectionText(staleSections(items)).replaceAll(content.folder, 'content');
  expect(text.split('\n').filter((it) => it.length > 80)).toEqual([]);
  expect(text).toContain('    → look the price up: npm run ledger -- reprice plover');
  expect(text.match(/→/g)).toHaveLength(items.length);
});
