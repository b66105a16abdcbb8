/** Builds of the demonstration in other places and shells, and builds that fail. One at a time: they share a lock. */
import { existsSync, readFileSync } from 'node:fs';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { copyProject } from '../support/copy-project.ts';
import { DEMO_FOLDER, DEMO_SITE } from '../support/demo-folder.ts';
import { build, differences, fingerprints } from './build.ts';
import { panelFiles, panelsJson } from './site.ts';

const first = fingerprints(DEMO_SITE);

describe('two builds of the same content for the same day', () => {
  /** What tells of a place, a person or a machine, and could stay behind in what is written. */
  const traces = { HOME: '/nonexistent/quaggy-home', USER: 'quaggy-user', HOSTNAME: 'quaggy-host' };
  let project: string;
  let content: string;
  beforeEach(async () => {
    project = copyProject('elsewhere');
    content = await mkdtemp(join(tmpdir(), 'content-elsewhere-'));
    await cp(DEMO_FOLDER, content, { recursive: true });
  });
  afterEach(() => Promise.all([project, content].map((it) => rm(it, { recursive: true, maxRetries: 5 }))));

  test('give the same bytes, wherever, in whatever order files are read, and whatever the shell is set up for', async () => {
    expect(Object.keys(first).length).toBeGreaterThan(50);
    expect(differences(first, { ...first, 'index.html': 'other', 'new.html': 'new' })).toEqual([
      'index.html',
      'new.html',
    ]);
    const { code, stderr } = await build(
      {
        LEDGER_CONTENT: content,
        LEDGER_TODAY: panelsJson().built_for,
        // For developing, in another language and time zone, by somebody else on another machine.
        ...{
          NODE_ENV: 'development',
          DEV: '1',
          PROD: '',
          TZ: 'Pacific/Auckland',
          LC_ALL: 'tr_TR.UTF-8',
          LANG: 'de_DE',
        },
        ...{ ...traces, LOGNAME: traces.USER },
        NODE_OPTIONS: `--import=${fileURLToPath(new URL('../support/shuffled-folders.ts', import.meta.url))}`,
      },
      project,
    );
    expect(code, stderr).toBe(0);
    // It says nothing but what is odd in the content.
    expect(stderr.trim().split('\n').at(-1)).toMatch(/^$|^0 problems, \d+ warnings?: /);
    const again = join(project, 'dist');
    expect(differences(first, fingerprints(again))).toEqual([]);
    // A machine of few letters is found by chance.
    const machine = hostname().length < 6 ? [] : [hostname()];
    for (const trace of [...Object.values(traces), project, content, process.cwd(), DEMO_FOLDER, ...machine]) {
      expect(filesWith(again, trace), trace).toEqual([]);
    }
    expect(filesWith(again, panelsJson().built_for).length).toBeGreaterThan(0);
  });
});

/** Files of a folder that hold a text, in whatever form they are packed; those that are compressed are unpacked. */
function filesWith(folder: string, text: string): string[] {
  return Object.keys(fingerprints(folder)).filter((it) => {
    const bytes = readFileSync(join(folder, it));
    const isPacked = bytes[0] === 0x1f && bytes[1] === 0x8b;
    return (isPacked ? gunzipSync(bytes) : bytes).includes(text);
  });
}

describe('a build that fails leaves the last good site as it was', () => {
  let content: string;
  // On the disk of the project, as every site that is built here.
  let site: string;
  beforeEach(async () => {
    site = join(await mkdtemp(join(dirname(DEMO_SITE), 'again-')), 'site');
    await cp(DEMO_SITE, site, { recursive: true });
    content = await mkdtemp(join(tmpdir(), 'panel-ledger-content-'));
    await cp(DEMO_FOLDER, content, { recursive: true });
  });
  afterEach(() => Promise.all([content, dirname(site)].map((it) => rm(it, { recursive: true }))));

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
