import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Loaded, loadLedger } from '../../../src/ledger/load-ledger.ts';
import { changesOf } from '../../../src/site/changes/changes-of.ts';
import { publishedSide, usualAgainst } from '../../../src/site/changes/published-side.ts';
import { panelsJson } from '../../../src/site/export/panels-json.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

let content: ContentFolder;
let loaded: Loaded;
/** A built guide, as far as it is looked at. */
let site: string;
beforeAll(() => {
  process.env.LEDGER_TODAY = TODAY;
  content = tinyContent();
  const git = (...args: string[]) => execFileSync('git', ['-C', content.folder, ...args]);
  git('init', '--quiet');
  git('add', '--all');
  git('-c', 'user.name=Tester', '-c', 'user.email=tester@bench.example', 'commit', '--quiet', '--message', 'First');
  git('tag', 'first');
  content.edit('panels/plover/index.md', 'paid: 200', 'paid: 190');
  loaded = loadLedger({ folder: content.folder });
  site = mkdtempSync(join(tmpdir(), 'built-guide-'));
  for (const page of ['', 'panels/plover', 'panels/gone', 'data']) mkdirSync(join(site, page), { recursive: true });
  for (const page of ['', 'panels/plover', 'panels/gone']) writeFileSync(join(site, page, 'index.html'), '');
  writeFileSync(join(site, 'data/panels.json'), [...panelsJson(loaded.ledger)].join(''));
});
afterAll(() => {
  delete process.env.LEDGER_TODAY;
  content.delete();
  rmSync(site, { recursive: true });
});

const side = (against: string) => publishedSide(against, { folder: content.folder, loaded });
const refusal = async (against: string) => {
  try {
    await side(against);
  } catch (error) {
    return (error as Error).message;
  }
  return '';
};

describe('a revision of the content', () => {
  test('is worked out from what was committed, and nothing of it is left behind', async () => {
    const before = readdirSync(tmpdir()).filter((it) => it.startsWith('panel-ledger-content-'));
    const { changes, against } = await changesOf('first', { folder: content.folder, loaded });
    expect(against).toBe(`${content.folder} in the revision "first"`);
    expect(changes.prices).toMatchObject([{ slug: 'plover', was: { paid: 200 }, now: { paid: 190 } }]);
    expect(changes.figures.map((it) => it.metric)).toContain('price-per-watt');
    expect(new Set(changes.figures.map((it) => it.slug))).toEqual(new Set(['plover']));
    expect(readdirSync(tmpdir()).filter((it) => it.startsWith('panel-ledger-content-'))).toEqual(before);
  });

  test('that is none, or has problems by today’s rules, is refused', async () => {
    expect(await refusal('no-such')).toBe(`the repository of ${content.folder} knows no revision "no-such".`);
    expect(await refusal('--output=x')).toContain('knows no revision');
    expect(existsSync('x')).toBe(false);
    const alone = tinyContent();
    try {
      const given = { folder: alone.folder, loaded };
      await expect(publishedSide('HEAD', given)).rejects.toThrow(`${alone.folder} lies in no git repository.`);
    } finally {
      alone.delete();
    }
  });
});

describe('a built guide', () => {
  test('tells all of its pages; its data file alone those of panels and methods', async () => {
    const { state, name } = await side(site);
    expect(name).toBe(join(site, 'data/panels.json'));
    expect([...state.pages].toSorted()).toEqual(['/', '/panels/gone/', '/panels/plover/']);
    const { state: file } = await side(join(site, 'data/panels.json'));
    expect(file.pages).toContain('/methods/optical-power/');
    expect(file.knowsAllPages).toBe(false);
    const { changes } = await changesOf(site, { folder: content.folder, loaded });
    expect(changes).toMatchObject({ gonePages: [{ address: '/panels/gone/' }], figures: [], ranks: [] });
  });

  test('is what is compared with, where there is one', () => {
    expect(usualAgainst(site)).toBe(site);
    expect(usualAgainst(join(site, 'nowhere'))).toBe('HEAD');
  });

  test('without data is none', async () => {
    expect(await refusal(join(site, 'panels'))).toBe(
      `${join(site, 'panels')} is no built guide: it has no data/panels.json.`,
    );
  });

  test('at an address: its top or its data file, and refusals in words', async () => {
    const file = [...panelsJson(loaded.ledger)].join('');
    const server = createServer((request, response) => {
      response.statusCode = request.url === '/guide/data/panels.json' ? 200 : 404;
      response.end(file);
    }).listen(0);
    const { port } = server.address() as AddressInfo;
    try {
      for (const address of ['guide', 'guide/', 'guide/data/panels.json']) {
        const { state } = await side(`http://localhost:${port}/${address}`);
        expect(state.panels.has('plover')).toBe(true);
      }
      expect(await refusal(`http://localhost:${port}/other/`)).toBe(
        `http://localhost:${port}/other/data/panels.json answers with 404 Not Found.`,
      );
    } finally {
      server.close();
    }
    expect(await refusal(`http://localhost:${port}/`)).toMatch(/can't be fetched: /);
  });
});
