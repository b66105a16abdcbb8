/** What pages are kept under: where the code, or what the content has besides panels, changes, none is kept. */
import { execFileSync } from 'node:child_process';
import { appendFileSync, cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { keptPages } from '../../src/build/kept-pages.ts';
import { picturedPages } from '../../src/build/pictured-pages.ts';
import { loadLedger } from '../../src/ledger/load-ledger.ts';
import { stampsOf } from '../../src/ledger/panel-stamps.ts';
import { watched } from '../../src/site/shared/page-reads.ts';
import { copyProject } from '../support/copy-project.ts';
import { DEMO_FOLDER, layDemo } from '../support/demo-folder.ts';

let root: string;
const at = (path: string) => join(root, path);
beforeAll(() => {
  layDemo();
  root = copyProject('kept-pages');
  cpSync(DEMO_FOLDER, at('content'), { recursive: true });
});
afterAll(() => rmSync(root, { recursive: true, force: true, maxRetries: 5 }));

function edit(path: string, change: (text: string) => string): void {
  const before = readFileSync(at(path), 'utf8');
  const after = change(before);
  expect(after, path).not.toBe(before);
  writeFileSync(at(path), after);
}

// What comes of these names in a whole build is in tests/built/builds.test.ts.
test.each<[string, () => void]>([
  [
    'a text of the tester’s own',
    () => {
      mkdirSync(at('content/methods'), { recursive: true });
      cpSync(at('src/texts/methods/optical-power.mdx'), at('content/methods/optical-power.mdx'));
    },
  ],
  [
    'an instrument',
    () => {
      const file = 'content/instruments/three-axis-coil.yaml';
      edit(file, (it) => it.replace(/^name: .*$/m, 'name: Another name'));
    },
  ],
  ['the guide', () => edit('content/guide.yaml', (it) => it.replace(/^title: .*$/m, 'title: Another title'))],
])('%s changes what stands for the shared content', (_, change) => {
  const shared = () => {
    const { content, ledger } = loadLedger({ folder: at('content'), watch: true });
    return stampsOf({ content, ledger }, at('content')).shared;
  };
  const before = shared();
  expect(shared()).toBe(before);
  change();
  expect(shared()).not.toBe(before);
});

test('a component, a style and a library change what stands for the code', () => {
  const stamp = () =>
    execFileSync(
      process.execPath,
      [
        '--input-type=module',
        '--eval',
        `import { sourceStamp } from ${JSON.stringify(pathToFileURL(at('src/build/source-stamp.ts')).href)};
        console.log(sourceStamp());`,
      ],
      { cwd: root, encoding: 'utf8' },
    ).trim();
  const stamps = [stamp()];
  expect(stamp()).toBe(stamps[0]);
  for (const path of ['src/site/panel/components/PanelFlags.astro', 'src/styles/base.css', 'package.json']) {
    appendFileSync(at(path), '\n');
    stamps.push(stamp());
  }
  expect(new Set(stamps).size).toBe(4);
});

test('a page is kept while what it has read stays as it is, and not by a build that is to keep nothing', async () => {
  const cache = at('.build/kept');
  const page = '/panels/quennick-dab/';
  const all = [page, '/panels/kelpwright-gannet/', '/plan/'];
  const load = () => loadLedger({ folder: at('content'), watch: true });
  const build = async (isFresh = false) => {
    const pages = keptPages(cache);
    pages.open(load(), isFresh);
    const calls: string[] = [];
    for (const it of all) {
      const kept = pages.keptFile(it);
      const make = async () => {
        calls.push(it);
        watched(load()).ledger.panels.get(it.split('/')[2] ?? '');
        return Buffer.from(`<p>${it}</p>`);
      };
      expect(String(kept ? readFileSync(kept) : (await pages.made(it, make)).bytes)).toBe(`<p>${it}</p>`);
    }
    pages.close();
    return calls;
  };
  expect(await build()).toEqual(all);
  // The tools' pages go through all panels, and are never kept.
  expect(await build()).toEqual(['/plan/']);
  edit('content/panels/quennick-dab/index.md', (it) => it.replace(/(paid: )(\d+)/, '$1$2.5'));
  expect(await build()).toEqual([page, '/plan/']);
  // Pictures in a text are made while its page is rendered.
  cpSync(at('content/panels/ostrel-lill/on-the-desk.png'), at('content/panels/kelpwright-gannet/seen.png'));
  edit('content/panels/kelpwright-gannet/index.mdx', (it) => `${it}\n![The panel on a desk](./seen.png)\n`);
  expect(picturedPages(load())).toEqual(new Set(['/panels/kelpwright-gannet/']));
  for (const _ of [1, 2]) expect(await build()).toEqual(['/panels/kelpwright-gannet/', '/plan/']);
  expect(await build(true)).toEqual(all);
});

test('a page that reads where its panel stands goes when another one’s price moves it; one that does not is kept', async () => {
  const cache = at('.build/kept-standings');
  const load = () => loadLedger({ folder: at('content'), watch: true });
  const ranks = () => new Map([...load().ledger.panels].map(([slug, { rank }]) => [slug, rank?.place]));
  const dab = 'content/panels/quennick-dab/index.md';
  const text = readFileSync(at(dab), 'utf8');
  const cheap = () => edit(dab, (it) => it.replace(/(paid: )(\d[\d.]*)/, '$13'));
  const before = ranks();
  cheap();
  const moved = [...ranks()].find(([slug, place]) => slug !== 'quennick-dab' && place !== before.get(slug))?.[0];
  expect(moved).toBeDefined();
  writeFileSync(at(dab), text);

  const all = [`/panels/${moved}/`, `/panels/${moved}/methodology/`];
  const build = async () => {
    const pages = keptPages(cache);
    pages.open(load(), false);
    const { ledger } = watched(load());
    const made: string[] = [];
    for (const page of all) {
      if (pages.keptFile(page)) continue;
      made.push(page);
      await pages.made(page, async () => {
        const panel = ledger.panels.get(moved ?? '');
        return Buffer.from(page === all[0] ? `Place ${panel?.rank?.place}` : `Made by ${panel?.maker.name}`);
      });
    }
    pages.close();
    return made;
  };
  expect(await build()).toEqual(all);
  expect(await build()).toEqual([]);
  cheap();
  expect(await build()).toEqual([all[0]]);
});
