import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { type AddressList, addressListText, readAddressList } from '../../../src/site/addresses/address-list.ts';
import { droppedAddresses } from '../../../src/site/addresses/dropped-addresses.ts';
import { guideAddresses } from '../../../src/site/addresses/guide-addresses.ts';
import { withdrawnFiles, withdrawnPages } from '../../../src/site/addresses/withdrawn.ts';
import { calculationHtml } from '../../../src/site/calculation/calculation-html.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
let kept: AddressList;
beforeEach(() => {
  content = tinyContent();
  kept = readAddressList(addressListText(guideAddresses(ledger())), '').list;
});
afterEach(() => content.delete());

const ledger = (drafts = false): Ledger => buildLedger(content.content(), { today: TODAY, drafts });
const dropped = (of = ledger()) => droppedAddresses(kept, of, 'content/addresses.txt');
const dayOf = (slug: string) => ledger().panels.get(slug)?.sessions[0]?.date ?? '';

/** Puts an entry under `withdrawn` in guide.yaml. */
const withdraw = (address: string, more = '') =>
  content.write(
    'guide.yaml',
    `${content.read('guide.yaml')}\nwithdrawn: [{ address: "${address}", date: 2026-11-01, reason: It was a sample.${more} }]\n`,
  );

test('a guide drops nothing of itself, and new panels are no loss', () => {
  expect(kept.get(`/panels/plover/methodology/`)?.sessions.get(dayOf('plover'))?.size).toBeGreaterThan(50);
  expect(dropped()).toEqual([]);
  kept.delete('/panels/plover/');
  expect(dropped()).toEqual([]);
});

describe('a panel whose folder is gone', () => {
  test('is one problem, at its first line, that says what keeps it', () => {
    content.remove('panels/plover');
    const [problem, ...more] = dropped();
    expect(more).toEqual([]);
    expect(problem?.file).toBe('content/addresses.txt');
    expect(problem?.line).toBe(kept.get('/data/compare/plover.json')?.line);
    expect(problem?.found).toBe(
      '/data/compare/plover.json, /panels/plover/, /panels/plover/methodology/, which this build would drop',
    );
    expect(problem?.hint).toMatch(/`formerly: \[plover\]`.*`status: withdrawn`.*address: "\/panels\/plover\/"/);
  });

  test('is kept by the name of before in another, parts and all', () => {
    const text = content.read(PLOVER);
    content.remove('panels/plover');
    content.write('panels/dotterel/index.md', text);
    expect(dropped()[0]?.hint).toMatch(/^panels\/dotterel has the same sessions: .*`formerly: \[plover\]`/);
    content.edit('panels/dotterel/index.md', 'status:', 'formerly: [plover]\nstatus:');
    expect(dropped()).toEqual([]);
  });

  test('is kept by pages that say that it was withdrawn, and by a file', () => {
    content.remove('panels/plover');
    withdraw('/panels/plover/', ', instead: /panels/teasel/');
    expect(dropped()).toEqual([]);
    expect(withdrawnPages(ledger()).map((it) => it.address)).toEqual([
      '/panels/plover/',
      '/panels/plover/methodology/',
      '/panels/plover/files/',
    ]);
    const [file] = withdrawnFiles(ledger());
    expect(file?.path).toBe('data/compare/plover.json');
    expect(JSON.parse(file?.text ?? '')).toMatchObject({ withdrawn: '2026-11-01', reason: 'It was a sample.' });
    expect(JSON.parse(file?.text ?? '').instead).toMatch(/^https:\/\/.*\/panels\/teasel\/$/);
  });
});

test('a panel that is made a draft again is gone for readers, whoever looks', () => {
  content.edit(PLOVER, 'status: published', 'status: draft');
  for (const drafts of [false, true]) expect(dropped(ledger(drafts))[0]?.found).toContain('/panels/plover/');
});

describe('a session whose day is another', () => {
  test('is a loss of all its parts, until it is withdrawn: then they stand on the page still', () => {
    const day = dayOf('plover');
    content.edit(PLOVER, day, '2026-11-02');
    const [problem, ...more] = dropped();
    expect(more).toEqual([]);
    expect(problem?.found).toContain(`the session of ${day} on /panels/plover/methodology/`);
    expect(problem?.wanted).toContain('2026-11-02');
    const address = `/panels/plover/methodology/#session-${day}`;
    expect(problem?.hint).toContain(address);
    withdraw(address);
    expect(dropped()).toEqual([]);
    const now = ledger();
    const panel = now.panels.get('plover');
    const page = panel ? calculationHtml(panel, now.guide) : '';
    for (const id of ['session', 'optical-power', 'led-area']) expect(page).toContain(` id="${id}-${day}"`);
    expect(page).toContain('It was a sample.');
  });
});

describe('a correction', () => {
  const id = 'correction-2026-11-02-plover-2026-10-01-led-area';
  beforeEach(() => kept.get('/changes/')?.parts.add(id));

  test('that is taken out of the list is a loss', () => {
    const [problem, ...more] = dropped();
    expect(more).toEqual([]);
    expect(problem).toMatchObject({
      found: `/changes/#${id}, which this build would drop`,
      hint: expect.stringMatching(/^corrections stay in corrections\.yaml/),
    });
  });

  test('goes with its panel', () => {
    content.remove('panels/plover');
    withdraw('/panels/plover/');
    expect(dropped()).toEqual([]);
  });
});

test('figures of files that a session no longer names are a loss; with the session they are told once', () => {
  const day = dayOf('plover');
  const sessions = new Map([[day, new Set(['warm-up-drop'])]]);
  kept.set('/panels/plover/files/', { parts: new Set(), sessions, line: 9 });
  const now = ledger();
  const plover = now.panels.get('plover');
  if (!plover) throw new Error('the content has no plover');
  const file = { name: 'a.csv' } as (typeof plover.sessions)[number]['files'][number];
  const withFiles = (date: string): Ledger => {
    const read = plover.sessions.map((it) => ({ ...it, date, files: [file] }));
    return { ...now, panels: new Map([...now.panels, ['plover', { ...plover, sessions: read }]]) };
  };
  expect(dropped(withFiles(day))).toMatchObject([
    {
      found: `/panels/plover/files/#warm-up-drop-${day}, which this build would drop`,
      hint: expect.stringContaining('name these again'),
    },
  ]);
  expect(dropped(withFiles('2026-11-02')).map((it) => it.found)).toEqual([
    expect.stringContaining(`the session of ${day} on /panels/plover/methodology/`),
  ]);
});

test('a version of a method, a metric and a page of the program that are gone are named', () => {
  kept.get('/methods/rank/')?.parts.add('version-99');
  kept.get('/panels/plover/methodology/')?.sessions.get(dayOf('plover'))?.add('charm');
  kept.set('/charts/', { parts: new Set(), sessions: new Map(), line: 3 });
  expect(dropped().map((it) => it.found)).toEqual([
    '/charts/, which this build would drop',
    '/methods/rank/#version-99, which this build would drop',
    `/panels/plover/methodology/#charm-${dayOf('plover')}, which this build would drop`,
  ]);
});
