/** Builds of the demonstration in other places and shells, and builds that fail. One at a time: they share a lock. */
import { existsSync } from 'node:fs';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { DEMO_FOLDER, DEMO_SITE } from '../support/demo-folder.ts';
import { build, differences, fingerprints } from './build.ts';
import { panelFiles, panelsJson } from './site.ts';

const first = fingerprints(DEMO_SITE);

// On the disk of the project, as every site that is built here.
let site: string;
beforeEach(async () => {
  site = join(await mkdtemp(join(dirname(DEMO_SITE), 'again-')), 'site');
});
afterEach(() => rm(dirname(site), { recursive: true }));

test('two builds of the same content for the same day give the same bytes, whatever the shell is set up for', async () => {
  expect(Object.keys(first).length).toBeGreaterThan(50);
  expect(differences(first, { ...first, 'index.html': 'other', 'new.html': 'new' })).toEqual([
    'index.html',
    'new.html',
  ]);
  const { code, stderr } = await build({
    LEDGER_CONTENT: DEMO_FOLDER,
    LEDGER_DIST: site,
    LEDGER_TODAY: panelsJson().built_for,
    // Nothing is taken from the first: all of it is rendered once more.
    LEDGER_FRESH: '1',
    // For developing, in another language and time zone.
    ...{ NODE_ENV: 'development', DEV: '1', PROD: '', TZ: 'Pacific/Auckland', LC_ALL: 'de_DE.UTF-8' },
  });
  expect(code).toBe(0);
  // It says nothing but what is odd in the content.
  expect(stderr.trim().split('\n').at(-1)).toMatch(/^$|^0 problems, \d+ warnings?: /);
  expect(differences(first, fingerprints(site))).toEqual([]);
});

describe('a build that fails leaves the last good site as it was', () => {
  let content: string;
  beforeEach(async () => {
    await cp(DEMO_SITE, site, { recursive: true });
    content = await mkdtemp(join(tmpdir(), 'panel-ledger-content-'));
    await cp(DEMO_FOLDER, content, { recursive: true });
  });
  afterEach(() => rm(content, { recursive: true }));

  /** Changes a file of the content that is to fail. */
  async function change(file: string, edit: (text: string) => string): Promise<void> {
    const path = join(content, file);
    const before = await readFile(path, 'utf8');
    const after = edit(before);
    expect(after, `${file} was to be changed`).not.toBe(before);
    await writeFile(path, after);
  }

  async function failingBuild(): Promise<string> {
    const { code, stdout, stderr } = await build({ LEDGER_CONTENT: content, LEDGER_DIST: site });
    expect(code).toBe(1);
    expect(differences(first, fingerprints(site))).toEqual([]);
    expect(existsSync(`${site}.old`)).toBe(false);
    return stdout + stderr;
  }

  test('with faults in two files: all are named, with file and line', async () => {
    const slug = panelFiles('published')[0]?.slug;
    const panel = `panels/${slug}/index.md`;
    await change(panel, (text) => text.replace(/combined: [\d.]+/, 'combined: 41 furlongs'));
    await change('guide.yaml', (text) => text.replace('referenceDistance: 6 in', 'referenceDistance: 6 kg'));
    const said = await failingBuild();
    const line =
      (await readFile(join(content, panel), 'utf8')).split('\n').findIndex((it) => it.includes('furlongs')) + 1;
    expect(said).toContain(`${panel}:${line}`);
    expect(said).toContain('furlongs');
    expect(said).toMatch(/guide\.yaml:\d+/);
    expect(said).toContain('2 problems');
    // Problems of the content are told as such, not as a fault of the program.
    expect(said).not.toMatch(/^\s+at .*\.ts:\d+/m);
  });

  test('with a fault that only rendering finds', async () => {
    await change('panels/kelpwright-gannet/index.mdx', (text) => `${text}\n\n<NoSuchComponent />\n`);
    expect(await failingBuild()).toMatch(/NoSuchComponent/);
  });
});
