import { globSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { PanelEntry } from '../../../src/ledger/ledger.ts';
import type { Loaded } from '../../../src/ledger/load-ledger.ts';
import { givenTo, madeOfAll, watched, withReads } from '../../../src/site/shared/page-reads.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
let given: Loaded;
beforeAll(() => {
  demo = demoLedger();
  given = watched({ content: demo.content, ledger: demo.ledger });
});

/** What is noted of a page that reads so. */
async function noted(read: (loaded: Loaded) => unknown) {
  const { reads } = await withReads(async () => {
    // Pages wait for one another while they are rendered.
    await new Promise((resolve) => setImmediate(resolve));
    return read(given);
  });
  const [panels, standings] = [reads.panels, reads.standings].map((it) => [...it].toSorted());
  return { panels, standings, all: reads.all, given: [...reads.given] };
}

describe('what a page reads is noted', () => {
  test('panel by panel', async () => {
    const { result } = await withReads(async () => given.ledger.panels.get('ostrel-lill'));
    expect(result).toEqual(demo.ledger.panels.get('ostrel-lill'));
    const read = ({ ledger, content }: Loaded) => [
      ledger.panels.get('ostrel-lill'),
      ledger.panels.has('ostrel-vagg'),
      content.panels.get('quennick-dab'),
    ];
    expect(await noted(read)).toEqual({
      panels: ['ostrel-lill', 'ostrel-vagg', 'quennick-dab'],
      standings: [],
      all: false,
      given: [],
    });
  });

  test.each<[string, (panel: PanelEntry | undefined) => unknown]>([
    ['its rank', (it) => it?.rank],
    ['why it has none', (it) => it?.rankAbsent],
    ['its rank by emitted power', (it) => it?.byEmitted],
    ['what it steps up to', (it) => it?.stepUps],
    ['the frontier', (it) => it?.frontier],
    ['all that there is of it', (it) => ({ ...it })],
  ])('where a panel stands among the others: %s', async (_, read) => {
    expect(await noted(({ ledger }) => read(ledger.panels.get('ostrel-lill')))).toEqual({
      panels: ['ostrel-lill'],
      standings: ['ostrel-lill'],
      all: false,
      given: [],
    });
  });

  test.each<[string, (loaded: Loaded) => unknown]>([
    ['their number', ({ ledger }) => ledger.panels.size],
    ['the names of all', ({ ledger }) => [...ledger.panels.keys()]],
    ['each in turn', ({ ledger }) => [...ledger.panels]],
    ['each by a function', ({ ledger }) => ledger.panels.forEach(() => {})],
    ['all values', ({ ledger }) => [...ledger.panels.values()]],
    ['all files', ({ content }) => [...content.panels.values()]],
    ['size classes', ({ ledger }) => ledger.classes],
    ['size classes by emitted power', ({ ledger }) => ledger.classesByEmitted],
    ['the frontier', ({ ledger }) => ledger.frontier],
    ['what was measured with which instrument', ({ ledger }) => ledger.instruments],
  ])('all of them: %s', async (_, read) => {
    expect(await noted(read)).toMatchObject({ all: true });
  });

  test('not what is every page’s', async () => {
    const read = ({ ledger, content }: Loaded) => [ledger.guide, ledger.today, content.methods, content.guide];
    expect(await noted(read)).toEqual({ panels: [], standings: [], all: false, given: [] });
  });

  test('of each page its own, while several are rendered', async () => {
    const both = await Promise.all(
      ['ostrel-lill', 'ostrel-vagg'].map((slug) => noted(({ ledger }) => ledger.panels.get(slug))),
    );
    expect(both.map((it) => it.panels)).toEqual([['ostrel-lill'], ['ostrel-vagg']]);
  });
});

test('a panel is one object, by its name and in the tables', () => {
  const { panels, classes, classesByEmitted } = given.ledger;
  const shown = [...classes, ...classesByEmitted].flatMap((it) => [
    ...it.groups.flatMap((group) => group.panels),
    ...it.unranked,
  ]);
  expect(shown.length).toBeGreaterThan(panels.size);
  for (const it of shown) expect(panels.get(it.slug)).toBe(it);
});

test('of what is made of all panels, a page rests on what comes of it', async () => {
  const most = madeOfAll('test/most', (panel, { panels }) => `${panel.slug} of ${panels.size}`);
  const own = demo.panel('ostrel-lill');
  const said = `ostrel-lill of ${demo.ledger.panels.size}`;
  expect(await noted(({ ledger }) => expect(most(own, ledger)).toBe(said))).toEqual({
    panels: [],
    standings: [],
    all: false,
    given: ['test/most'],
  });
  expect(givenTo(own, given.ledger, 'test/most')).toEqual({ value: said });
  expect(givenTo(own, given.ledger, 'test/none')).toBeUndefined();
});

/** Code that keeps something of the ledger for the pages after: these would rest on what is not noted of them. */
function keepsPastPage(code: string): boolean {
  return /WeakMap<\s*(?:Ledger|Loaded|Content)\b/.test(code) && !/\bmadeOfAll\(/.test(code);
}

test('what code keeps of a ledger from page to page is made by madeOfAll', () => {
  expect(keepsPastPage('const known = new WeakMap<Ledger, Scale>();')).toBe(true);
  expect(
    keepsPastPage("const known = new WeakMap<Ledger, Scale>();\nexport const it = madeOfAll('scale', make);"),
  ).toBe(false);
  const files = globSync('src/{site,words,layouts,pages}/**/*.{ts,astro}');
  expect(files.length).toBeGreaterThan(200);
  expect(files.filter((file) => keepsPastPage(readFileSync(file, 'utf8')))).toEqual([]);
});
