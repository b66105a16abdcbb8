import { utimesSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { ContentError } from '../../src/content/read/problem-list.ts';
import { contentFolder, loadLedger } from '../../src/ledger/load-ledger.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  vi.stubEnv('LEDGER_TODAY', TODAY);
});
afterEach(() => {
  vi.unstubAllEnvs();
  content.delete();
});

const PLOVER = 'panels/plover/index.md';
const load = (options = {}) => loadLedger({ folder: content.folder, ...options });

describe('loadLedger', () => {
  test('is worked out once, for the day that is set', () => {
    const first = load();
    expect(first.ledger.today).toBe(TODAY);
    expect(first.ledger.panels.size).toBe(2);
    expect(load()).toBe(first);
  });

  test('is worked out anew for another day', () => {
    const first = load();
    vi.stubEnv('LEDGER_TODAY', '2026-11-24');
    expect(load()).not.toBe(first);
    expect(load().ledger.today).toBe('2026-11-24');
  });

  test('leaves drafts out, and takes them in where asked for', () => {
    content.edit(PLOVER, 'status: published', 'status: draft');
    expect([...load().ledger.panels.keys()]).toEqual(['teasel']);
    expect([...load({ drafts: true }).ledger.panels.keys()]).toEqual(['plover', 'teasel']);
    expect([...load().ledger.panels.keys()]).toEqual(['teasel']);
  });

  test('does not look again unless it is told to watch', () => {
    const first = load();
    content.edit(PLOVER, 'model: Plover', 'model: Lapwing');
    expect(load()).toBe(first);
  });

  test('looks again when a file has changed, was added or was taken away', () => {
    const watched = () => load({ watch: true });
    const first = watched();
    expect(watched()).toBe(first);
    content.edit(PLOVER, 'model: Plover', 'model: Lapwing');
    // Written within the same millisecond, perhaps; an editor never is.
    utimesSync(join(content.folder, PLOVER), new Date(), new Date(Date.now() + 5000));
    expect(watched().ledger.panels.get('plover')?.name).toBe('Wrackline Lapwing');
    content.write('panels/whimbrel/index.md', content.read(PLOVER).replace('model: Lapwing', 'model: Whimbrel'));
    expect(watched().ledger.panels.has('whimbrel')).toBe(true);
    content.remove('panels/whimbrel');
    expect(watched().ledger.panels.has('whimbrel')).toBe(false);
  });

  test('throws every problem, and recovers when they are mended', () => {
    content.edit(PLOVER, 'width: 20 cm', 'width: 20 kg');
    content.edit('guide.yaml', 'price: 0.3', 'price: -0.3');
    try {
      load({ watch: true });
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof ContentError)) throw error;
      expect(error.problems.map((it) => it.field)).toEqual(['tariff.price', 'field.width']);
      expect(error.message).toContain('2 problems in 2 files; nothing was built.');
    }
    content.edit(PLOVER, 'width: 20 kg', 'width: 20 cm');
    content.edit('guide.yaml', 'price: -0.3', 'price: 0.3');
    expect(load({ watch: true }).ledger.panels.size).toBe(2);
  });

  test('throws where the day that is set is none', () => {
    vi.stubEnv('LEDGER_TODAY', 'soon');
    expect(() => load()).toThrow('LEDGER_TODAY is "soon"; wanted a day as YYYY-MM-DD');
  });
});

describe('contentFolder', () => {
  test('is content, or what LEDGER_CONTENT says', () => {
    vi.stubEnv('LEDGER_CONTENT', undefined);
    expect(contentFolder()).toBe('content');
    vi.stubEnv('LEDGER_CONTENT', '/papers');
    expect(contentFolder()).toBe('/papers');
  });
});
