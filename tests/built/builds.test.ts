/** Builds of the demonstration in another place and shell, after a change, and builds that fail. */
import { existsSync, globSync, readFileSync, statSync } from 'node:fs';
import { appendFile, cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';
import { copyProject } from '../support/copy-project.ts';
import { DEMO_FOLDER, DEMO_SITE } from '../support/demo-folder.ts';
import { build, differences, fingerprints } from './build.ts';
import { PANEL_FILES, panelsJson } from './site.ts';

const first = fingerprints(DEMO_SITE);

/** What tells of a place, a person or a machine, and could stay behind in what is written. */
const TRACES = { HOME: '/nonexistent/quaggy-home', USER: 'quaggy-user', HOSTNAME: 'quaggy-host' };

const PAGES = 'panels/*/{,methodology/}index.html';
/** Put beside the program that was kept: it is there where that one was taken. */
const KEPT_TOO = 'kept-too.txt';
const MARK = 'kept';

/** A file, whatever it is called: a page that is taken from those that are kept is a link to one of them. */
const fileAt = (path: string) => {
  const { ino, mtimeMs } = statSync(path);
  return `${ino} ${mtimeMs}`;
};

test('after a price, and a panel that is gone, a build renews what rests on them alone, and gives the bytes of one that kept nothing, whatever the shell is set up for', async () => {
  const root = copyProject('builds');
  try {
    const at = (path: string) => join(root, path);
    await cp(DEMO_FOLDER, at('content'), { recursive: true });
    // What the demonstration has is what comes after the change; what comes before has another price and one panel more.
    const slug = 'quennick-dab';
    const demo = await readFile(at(`content/panels/${slug}/index.md`), 'utf8');
    const dearer = demo.replace(/(paid: )(\d+)/, (_, key, price) => `${key}${Number(price) + 1}`);
    expect(dearer).not.toBe(demo);
    await writeFile(at(`content/panels/${slug}/index.md`), dearer);
    const more = await readFile(at('content/panels/ruddlestone-r60/index.md'), 'utf8');
    await mkdir(at('content/panels/one-more'));
    await writeFile(
      at('content/panels/one-more/index.md'),
      more.replace(/^model: .*$/m, 'model: One more').replace(/^formerly: .*\n/m, ''),
    );
    const once = async () => {
      const { code, stderr } = await build(
        {
          LEDGER_TODAY: panelsJson().built_for,
          // For developing, in another language and time zone, by somebody else on another machine, with folders read out
          // of order.
          ...{
            NODE_ENV: 'development',
            DEV: '1',
            PROD: '',
            TZ: 'Pacific/Auckland',
            LC_ALL: 'tr_TR.UTF-8',
            LANG: 'de_DE',
          },
          ...{ ...TRACES, LOGNAME: TRACES.USER },
          NODE_OPTIONS: `--import=${fileURLToPath(new URL('../support/shuffled-folders.ts', import.meta.url))}`,
        },
        root,
      );
      expect(code, stderr).toBe(0);
      // It says nothing but what is odd in the content.
      expect(stderr.trim().split('\n').at(-1)).toMatch(/^$|^0 problems, \d+ warnings?: /);
    };
    await once();
    expect(globSync('dist/panels/one-more/**/index.html', { cwd: root })).toHaveLength(2);
    const copies = new Set(globSync('.build/kept/pages/*', { cwd: root }).map((it) => fileAt(at(it))));
    const linked = globSync(PAGES, { cwd: at('dist') }).filter((it) => copies.has(fileAt(at(`dist/${it}`))));
    expect(linked.length).toBeGreaterThanOrEqual(2 * PANEL_FILES.filter((it) => it.data.status !== 'draft').length);
    const files = new Set(linked.map((it) => fileAt(at(`dist/${it}`))));
    // Somebody has written into a page of the guide: it is the kept one as well, and has to be made anew.
    const spoilt = linked.find((it) => it.endsWith('/methodology/index.html') && !it.includes(slug)) ?? '';
    files.delete(fileAt(at(`dist/${spoilt}`)));
    await appendFile(at(`dist/${spoilt}`), MARK);
    // The program that Astro made is kept as well, with what lies beside the pages: not even a panel less is anything to it.
    await writeFile(join(programOf(root), 'assets', KEPT_TOO), MARK);
    await rm(at('content/panels/one-more'), { recursive: true });
    await writeFile(at(`content/panels/${slug}/index.md`), demo);
    await once();
    expect(readFileSync(at(`dist/${KEPT_TOO}`), 'utf8')).toBe(MARK);
    await rm(at(`dist/${KEPT_TOO}`));
    const pages = globSync(PAGES, { cwd: at('dist') }).toSorted();
    const own = pages.filter((it) => existsSync(at(`content/${it.split('/', 2).join('/')}`)));
    const kept = pages.filter((it) => files.has(fileAt(at(`dist/${it}`))));
    // Nothing on the calculation page of a larger panel rests on this price, or on a smaller panel.
    const larger = new Set(
      panelsJson()
        .panels.filter((it) => ['torso', 'full-length'].includes(it.size_class ?? ''))
        .map((it) => it.slug),
    );
    const others = own.filter(
      (it) => it.includes('/methodology/') && larger.has(it.split('/')[1] ?? '') && it !== spoilt,
    );
    expect(others.length).toBeGreaterThan(4);
    expect(kept.length).toBeLessThan(own.length);
    expect(kept).toEqual(expect.arrayContaining(others));
    expect(kept).not.toContain(`panels/${slug}/index.html`);
    expect(kept).not.toContain(`panels/${slug}/methodology/index.html`);
    expect(Object.keys(first).length).toBeGreaterThan(50);
    expect(differences(first, fingerprints(at('dist')))).toEqual([]);
    // A machine of few letters is found by chance.
    const machine = hostname().length < 6 ? [] : [hostname()];
    for (const trace of [...Object.values(TRACES), root, process.cwd(), DEMO_FOLDER, ...machine]) {
      expect(filesWith(at('dist'), trace), trace).toEqual([]);
    }
    expect(filesWith(at('dist'), panelsJson().built_for).length).toBeGreaterThan(0);
    expect(differences(first, { ...first, 'index.html': 'other', 'new.html': 'new' })).toEqual([
      'index.html',
      'new.html',
    ]);
  } finally {
    await rm(root, { recursive: true, force: true, maxRetries: 5 });
  }
});

/** The folder of the program that was made for a checkout; others' lie beside it, since packages are linked. */
function programOf(root: string): string {
  const programs = join(root, 'node_modules/.cache/panel-ledger/programs');
  const [chunk] = globSync('*/server/chunks/*.mjs', { cwd: programs }).filter((it) =>
    readFileSync(join(programs, it), 'utf8').includes(root),
  );
  if (!chunk) throw new Error(`no program is kept for ${root}`);
  return join(programs, chunk.split('/')[0] ?? '');
}

/** Files of a folder that hold a text, in whatever form they are packed; those that are compressed are unpacked. */
function filesWith(folder: string, text: string): string[] {
  return Object.keys(fingerprints(folder)).filter((it) => {
    const bytes = readFileSync(join(folder, it));
    const isPacked = bytes[0] === 0x1f && bytes[1] === 0x8b;
    return (isPacked ? gunzipSync(bytes) : bytes).includes(text);
  });
}

describe('a build that fails leaves the last good site as it was', () => {
  /** Small: what counts is the site that lies there. */
  let content: ContentFolder;
  // On the disk of the project, as every site that is built here.
  let site: string;
  beforeEach(async () => {
    site = join(await mkdtemp(join(dirname(DEMO_SITE), 'again-')), 'site');
    await cp(DEMO_SITE, site, { recursive: true });
    content = tinyContent();
  });
  afterEach(async () => {
    content.delete();
    await rm(dirname(site), { recursive: true });
  });

  async function failingBuild(): Promise<string> {
    const settings = { LEDGER_CONTENT: content.folder, LEDGER_DIST: site, LEDGER_TODAY: TODAY };
    const { code, stdout, stderr } = await build(settings);
    expect(code).toBe(1);
    expect(differences(first, fingerprints(site))).toEqual([]);
    expect(existsSync(`${site}.old`)).toBe(false);
    return stdout + stderr;
  }

  test('with faults in two files: all are named, with file and line', async () => {
    const panel = 'panels/plover/index.md';
    content.edit(panel, 'combined: 52.5', 'combined: 41 furlongs');
    content.edit('guide.yaml', 'referenceDistance: 6 in', 'referenceDistance: 6 kg');
    const said = await failingBuild();
    // The places are those of the folder that was read.
    expect(said).toContain(`${content.folder}/${panel}:${content.lineOf(panel, 'furlongs')}`);
    expect(said).toContain('furlongs');
    expect(said).toMatch(/guide\.yaml:\d+/);
    expect(said).toMatch(/2 problems in 2 files; nothing was built\.\n/);
    // Problems of the content are told as such, not as a fault of the program.
    expect(said).not.toMatch(/^\s+at .*\.ts:\d+/m);
  });

  test('with a fault that only rendering finds', async () => {
    content.write('panels/plover/index.mdx', `${content.read('panels/plover/index.md')}\n\n<NoSuchComponent />\n`);
    content.remove('panels/plover/index.md');
    expect(await failingBuild()).toMatch(
      /^The page \/panels\/plover\/ can’t be made of .*\/plover\/index\.mdx: .*NoSuchComponent/m,
    );
  });
});
