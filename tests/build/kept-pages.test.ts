/** Builds after a change, in a copy of the project: what has changed is renewed, and nothing else. */
import { execFile } from 'node:child_process';
import { appendFileSync, cpSync, existsSync, globSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { loadLedger } from '../../src/ledger/load-ledger.ts';
import { stampsOf } from '../../src/ledger/panel-stamps.ts';
import { differences, fingerprints } from '../built/build.ts';
import { TODAY } from '../support/content-folder.ts';
import { copyProject } from '../support/copy-project.ts';
import { DEMO_FOLDER, layDemo } from '../support/demo-folder.ts';

const PATIENCE = 600_000;
/** Put into the pages that were kept: it is there again in those that are taken from there. */
const MARK = '<!-- kept -->';
/** A panel that nothing links to. */
const GONE = 'content/panels/ruddlestone-r60';
/** As many as show it: some ranked with the panel whose price changes, some apart. */
const PANELS = [
  'quennick-dab',
  'fennimarsh-reed',
  'ruddlestone-r60',
  'quennick-sprat',
  'kelpwright-gannet',
  'quennick-tope',
  'ostrel-vagg',
];
const PAGES = 'panels/*/{,methodology/}index.html';

let root: string;
const at = (path: string) => join(root, path);
beforeAll(async () => {
  layDemo();
  root = copyProject('kept-pages');
  cpSync(DEMO_FOLDER, at('content'), { recursive: true });
  for (const panel of globSync('content/panels/*', { cwd: root })) {
    if (!PANELS.includes(panel.split(/[\\/]/).at(-1) ?? '')) rmSync(at(panel), { recursive: true });
  }
  await build();
}, PATIENCE);
afterAll(() => rmSync(root, { recursive: true, force: true, maxRetries: 5 }));

async function build(...options: string[]): Promise<Record<string, string>> {
  const { PATH, HOME, TMPDIR } = process.env;
  const env = { PATH, HOME, TMPDIR, LEDGER_TODAY: TODAY, ASTRO_TELEMETRY_DISABLED: '1' };
  await promisify(execFile)(process.execPath, ['src/cli/main.ts', 'build', ...options], { cwd: root, env });
  return fingerprints(at('dist'));
}

function edit(path: string, change: (text: string) => string): void {
  const before = readFileSync(at(path), 'utf8');
  const after = change(before);
  expect(after, path).not.toBe(before);
  writeFileSync(at(path), after);
}

/** Builds after a change with every kept page marked, and tells which pages were taken from those; their marks go. */
async function keptAfter(
  change: () => void,
): Promise<{ pages: string[]; kept: string[]; built: Record<string, string> }> {
  const copies = globSync(`.build/kept/dist/${PAGES}`, { cwd: root });
  expect(copies.length).toBeGreaterThanOrEqual(2 * globSync('content/panels/*', { cwd: root }).length);
  for (const path of copies) appendFileSync(at(path), MARK);
  change();
  await build();
  const pages = globSync(PAGES, { cwd: at('dist') })
    .map((it) => it.replaceAll('\\', '/'))
    .toSorted();
  const kept = pages.filter((it) => readFileSync(at(`dist/${it}`), 'utf8').includes(MARK));
  for (const path of kept.flatMap((it) => [`dist/${it}`, `.build/kept/dist/${it}`])) {
    edit(path, (text) => text.replaceAll(MARK, ''));
  }
  return { pages, kept, built: fingerprints(at('dist')) };
}

test('a price renews what rests on it; with a panel gone too, all is as a build gives it that keeps nothing', {
  timeout: PATIENCE,
}, async () => {
  const slug = 'quennick-dab';
  const { pages, kept } = await keptAfter(() =>
    edit(`content/panels/${slug}/index.md`, (text) =>
      text.replace(/(paid: )(\d+)/, (_, key, price) => `${key}${Number(price) + 1}`),
    ),
  );
  // Those that lead on from old names are no panels' pages.
  const own = pages.filter((it) => existsSync(at(`content/${it.split('/', 2).join('/')}`)));
  // Nothing on another panel's calculation page rests on this price.
  const others = own.filter((it) => it.includes('/methodology/') && !it.includes(`/${slug}/`));
  expect(kept).toEqual(expect.arrayContaining(others));
  expect(kept.length).toBeGreaterThanOrEqual(own.length / 2);
  expect(kept).not.toContain(`panels/${slug}/index.html`);
  expect(kept).not.toContain(`panels/${slug}/methodology/index.html`);

  const { built } = await keptAfter(() => rmSync(at(GONE), { recursive: true }));
  expect(Object.keys(built).filter((it) => it.startsWith(GONE.replace('content/', '')))).toEqual([]);
  expect(differences(built, await build('--fresh'))).toEqual([]);
});

test('a page’s code renews every page that may rest on it', { timeout: PATIENCE }, async () => {
  const { kept } = await keptAfter(() =>
    edit('src/site/panel/components/PanelFlags.astro', (it) => `${it}\n<p>Another line.</p>\n`),
  );
  expect(kept).toEqual([]);
});

// A page is kept under a name that these stamps are part of: where one of them changes, no page is kept.
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
      const [file = ''] = globSync('content/instruments/*.yaml', { cwd: root }).toSorted();
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
