/**
 * A guide below a path of its host, with content that means harm in every text: built once, by a copy of the project,
 * while other builds come in its way, and served where nothing lies at the top.
 */
import {
  existsSync,
  globSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Parser } from 'htmlparser2';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { builtPath } from '../../src/build/serve/built-path.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';
import { copyProject } from '../support/copy-project.ts';
import { serveFolder } from '../support/serve-folder.ts';
import { type OpenSite, openServed } from './browser.ts';
import { build } from './build.ts';
import { buildAmongOthers, LEFT, type Met } from './build-among-others.ts';
import { walk } from './page-kinds.ts';

const BASE = '/some/path';
const MARKUP = `<script>window.harm = 1</script>"'><img src=x onerror="window.harm = 1">&amp;`;

let content: ContentFolder;
let project: string;
let top: string;
let folder: string;
let met: Met;
let site: OpenSite;
beforeAll(async () => {
  content = tinyContent();
  content.edit('guide.yaml', 'https://ledger.example', `https://host.example${BASE}`);
  const quoted = JSON.stringify(MARKUP);
  content.edit('guide.yaml', 'title: A guide for the tests', `title: ${quoted}`);
  content.edit('guide.yaml', 'disclosure: Nobody pays for this guide.', `disclosure: ${quoted}`);
  const plover = 'panels/plover/index.md';
  content.edit(plover, 'model: Plover', `model: ${JSON.stringify(`Plover ${MARKUP}`)}\nformerly: [old-plover]`);
  content.edit(plover, 'verdict: A panel for the tests.', `verdict: ${quoted}`);
  content.edit(plover, 'paidBy: The library', `paidBy: ${quoted}`);
  content.edit(plover, 'struck: The rod had slipped.', `struck: ${quoted}`);
  content.edit(plover, 'Notes of the tester.', `As text: \`${MARKUP}\` and \\<script\\>window.harm = 1\\</script\\>.`);
  const maker = 'makers/wrackline.yaml';
  content.write(maker, content.read(maker).replace(/^name: .*$/m, `name: ${JSON.stringify(`Wrackline ${MARKUP}`)}`));
  project = copyProject('sub-path');
  top = mkdtempSync(join(tmpdir(), 'host-'));
  mkdirSync(join(top, 'some'));
  folder = join(project, 'dist');
  met = await buildAmongOthers(project, { LEDGER_CONTENT: content.folder, LEDGER_TODAY: TODAY });
  expect(
    met.ended.map((it) => it.code),
    JSON.stringify(met.ended),
  ).toContain(0);
  symlinkSync(folder, join(top, BASE));
  // As hosts do: their page for what is not there is the guide’s.
  symlinkSync(join(folder, '404.html'), join(top, '404.html'));
  site = await openServed(await serveFolder(top));
});
afterAll(async () => {
  await site?.close();
  content.delete();
  for (const it of [top, project]) rmSync(it, { recursive: true, force: true, maxRetries: 5 });
});

const pages = () => globSync('**/*.html', { cwd: folder });
const textOf = (file: string) => readFileSync(join(folder, file), 'utf8');

const REFUSED =
  /^Another build is at work here \(process \d+\); nothing was built\. Start again when it has ended\.\n$(?![\s\S])/m;
const TRACE = /^\s+at |ERROR|Error:/m;

describe('where builds meet', () => {
  test('after one that was killed: of two that start at once, and one that comes while pages are written, one builds, and the others are refused in one line', () => {
    const [built, refused] = [0, 1].map((code) => met.ended.filter((it) => it.code === code));
    expect(met.isLockLeft).toBe(true);
    // On a very fast machine the first may have ended before another looks: then that one builds.
    expect(built?.length, JSON.stringify(met)).toBeGreaterThanOrEqual(1);
    expect((built?.length ?? 0) + (refused?.length ?? 0), JSON.stringify(met)).toBe(3);
    for (const { said } of refused ?? []) expect(said).toMatch(REFUSED);
    for (const { said } of met.ended) expect(said).not.toMatch(TRACE);
  });

  test('what is built is whole, and nothing of any build’s own is left', () => {
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
    for (const page of ['', 'cautions/', 'compare/', 'panels/plover/', 'panels/plover/methodology/', 'methods/rank/']) {
      expect(files).toContain(`${page}index.html`);
    }
    for (const it of ['data/panels.json', 'pagefind/pagefind.js']) expect(files).toContain(it);
    expect(files.filter((it) => /\.mjs$|^chunks|^\.|manifest_|renderers/.test(it))).toEqual([]);
    expect(files).not.toContain(LEFT);
    expect(textOf('index.html')).toMatch(/<\/html>\s*$/);
    for (const it of ['dist.old', '.build/site', '.build/lock']) expect(existsSync(join(project, it)), it).toBe(false);
  });

  test('an output that can’t be written: one line, no trace, exit 1', async () => {
    writeFileSync(join(project, 'taken'), 'in the way');
    const settings = { LEDGER_CONTENT: content.folder, LEDGER_TODAY: TODAY, LEDGER_DIST: 'taken' };
    const { code, stdout, stderr } = await build(settings, project);
    expect(code).toBe(1);
    expect((stdout + stderr).split('\n').at(-2)).toBe(
      "taken can't be written: a file lies where a folder is needed (ENOTDIR). Nothing was built.",
    );
    expect(stdout + stderr).not.toMatch(TRACE);
    expect(readFileSync(join(project, 'taken'), 'utf8')).toBe('in the way');
  });
});

describe('below a path', () => {
  test('every kind of page opens and works, and nothing is missing', () =>
    walk(site, { base: BASE, slugs: ['plover', 'teasel'], formerly: 'old-plover' }));

  test('every address in the pages lies there, once, and leads to a file', () => {
    const faults = pages().flatMap((page) =>
      [...textOf(page).matchAll(/\s(?:href|src|action|content)="(?:0; url=)?(\/[^"]*)"/g)].flatMap(
        ([, address = '']) => {
          const path = address.replace(/[?#].*$/, '').slice(BASE.length);
          const file = join(folder, decodeURIComponent(path), path.endsWith('/') ? 'index.html' : '');
          return address.startsWith(`${BASE}/`) && existsSync(file) ? [] : [`${page}: ${address}`];
        },
      ),
    );
    expect(pages().length).toBeGreaterThan(40);
    expect(faults).toEqual([]);
  });

  test('what names the guide from outside has the path too', () => {
    const whole = `https://host.example${BASE}/`;
    expect(textOf('index.html')).toContain(`<link rel="canonical" href="${whole}"`);
    expect(textOf('panels/plover/index.html')).toContain(`<link rel="canonical" href="${whole}panels/plover/"`);
    expect(textOf('robots.txt')).toContain(`Sitemap: ${whole}sitemap.xml`);
    const listed = [...textOf('sitemap.xml').matchAll(/<loc>(.*?)<\/loc>/g)].map((it) => it[1] ?? '');
    expect(listed.filter((it) => !it.startsWith(whole))).toEqual([]);
    const data = JSON.parse(textOf('data/panels.json'));
    expect(data.panels[0].address).toBe(`${whole}panels/${data.panels[0].slug}/`);
    expect(JSON.parse(textOf('data/datapackage.json')).id).toBe(`${whole}data/datapackage.json`);
    expect(textOf('_headers')).toContain(`\n${BASE}/_astro/*\n`);
    for (const file of [...pages(), ...globSync('data/**', { cwd: folder }).filter((it) => /\.\w+$/.test(it))]) {
      expect(textOf(file).match(/https:\/\/host\.example(?!\/some\/path)[^\s"<]*/g), file).toBeNull();
    }
  });

  test('the preview finds out where it has to serve it', () => expect(builtPath(folder)).toBe(`${BASE}/`));
});

test('markup in names and sentences is printed as text, wherever it stands', async () => {
  for (const path of [
    '/',
    '/panels/',
    '/panels/plover/',
    '/panels/plover/methodology/',
    '/compare/?with=plover,teasel',
  ]) {
    await using opened = await site.open(`${BASE}${path}`);
    const { page, complaints } = opened;
    await page.waitForLoadState('networkidle');
    expect(await page.evaluate(() => (window as { harm?: number }).harm), path).toBeUndefined();
    expect(await page.locator('img[src=x]').count(), path).toBe(0);
    expect(await page.locator('body').textContent(), path).toContain('<script>window.harm = 1</script>');
    expect(complaints, path).toEqual([]);
  }
  for (const file of pages()) expect(harmIn(textOf(file)), file).toEqual([]);
});

/** What a parser takes for elements of the harmful text: a picture, an event's code, a script that a browser would run. */
function harmIn(html: string): string[] {
  const found: string[] = [];
  let type: string | undefined;
  const parser = new Parser({
    onopentag: (name, { src, onerror, ...others }) => {
      type = name === 'script' ? (others.type ?? 'module') : undefined;
      if (src === 'x' || onerror !== undefined) found.push(`${name} of ${src}`);
    },
    ontext: (text) => {
      // Blocks of data run nothing.
      if (type !== undefined && !/json$/.test(type) && text.includes('window.harm')) found.push(text);
    },
    onclosetag: () => {
      type = undefined;
    },
  });
  parser.end(html);
  return found;
}

test('harm is found where markup is not printed as text', () => {
  expect(harmIn(`<p title="<img src=x onerror='window.harm = 1'>">&lt;img src=x></p>`)).toEqual([]);
  expect(harmIn('<p><img src=x onerror="window.harm = 1"></p>')).toEqual(['img of x']);
  expect(harmIn('<p title=""><script>window.harm = 1</script>"></p>')).toEqual(['window.harm = 1']);
});
