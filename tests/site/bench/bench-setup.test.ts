import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import { benchPanelFile, benchSetup } from '../../../src/site/bench/bench-setup.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

const READER = { code: 'code', isTester: false };
const TESTER = { code: 'code', isTester: true };
const PLOVER = 'panels/plover/index.md';
const DRAFT = '\n  - { date: 2026-11-20, methodVersion: 1, draft: true, notes: not for readers }   # nor this';

let folder: ContentFolder;
beforeAll(() => {
  folder = tinyContent();
  folder.edit(PLOVER, '\n---\n\nNotes', `${DRAFT}\n---\n\nNotes`);
});
afterAll(() => folder.delete());

const loaded = () => {
  const content = folder.content();
  return { content, ledger: buildLedger(content, { today: TODAY }) };
};

test('readers get what is published, and no draft, comment or place on the tester’s machine', () => {
  const all = loaded();
  const [setup, file] = [benchSetup(all, READER), benchPanelFile(all, 'plover', READER)];
  const text = JSON.stringify([setup, file]);
  for (const it of ['not for readers', 'nor this', folder.folder]) expect(text).not.toContain(it);
  expect(setup.panels.find((it) => it.slug === 'plover')).toEqual({
    slug: 'plover',
    name: 'Wrackline Plover',
    maker: 'wrackline',
    model: 'Plover',
    formerly: [],
    status: 'published',
    file: 'content/panels/plover/index.md',
    field: { width: '20 cm', height: '30 cm' },
    sessions: ['2026-10-01'],
    address: '/data/bench/plover.json',
  });
  expect(file).toMatchObject({ id: 'plover', data: { sessions: [{ date: '2026-10-01', peak: { red: 28.4 } }] } });
  expect(setup.instruments.map((it) => it.file)).toContain('content/instruments/thermopile.yaml');
});

test('on the tester’s own server a panel’s file is there byte by byte', () => {
  expect(benchPanelFile(loaded(), 'plover', TESTER).text).toBe(folder.read(PLOVER));
});

test('the version goes with the code and the content, and with nothing else', () => {
  const { version } = benchSetup(loaded(), READER);
  const all = loaded();
  expect(benchSetup({ ...all, ledger: { ...all.ledger, today: '2026-11-26' } }, READER).version).toBe(version);
  expect(benchSetup(all, { ...READER, code: 'other' }).version).not.toBe(version);
  folder.edit('guide.yaml', folder.read('guide.yaml').match(/^title: .*$/m)?.[0] ?? '', 'title: Another title');
  expect(benchSetup(loaded(), READER).version).not.toBe(version);
});
