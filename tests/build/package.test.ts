/**
 * The product as a package among others, in a guide's folder: check and build really work there, and what they keep lies
 * with the guide. Packed as npm would, its dependencies linked from this checkout.
 */
import { execFile, execFileSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
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
import { afterAll, beforeAll, expect, test } from 'vitest';
import { productFolder } from '../../src/content/read/product-folder.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

let guide: string;
let content: ContentFolder;
const product = () => join(guide, 'node_modules/panel-ledger');

beforeAll(() => {
  guide = mkdtempSync(join(tmpdir(), 'guide-'));
  mkdirSync(join(guide, 'node_modules'));
  const packed = execFileSync('npm', ['pack', '--silent', '--ignore-scripts', '--pack-destination', guide], {
    cwd: productFolder(),
    encoding: 'utf8',
  }).trim();
  execFileSync('tar', ['xzf', packed], { cwd: guide });
  cpSync(join(guide, 'package'), product(), { recursive: true });
  for (const name of readdirSync(join(productFolder(), 'node_modules'))) {
    if (name.startsWith('.') || name === 'panel-ledger') continue;
    symlinkSync(join(productFolder(), 'node_modules', name), join(guide, 'node_modules', name));
  }
  content = tinyContent();
  content.write(
    'guide.yaml',
    `# yaml-language-server: $schema=../.astro/collections/guide.schema.json\n${content.read('guide.yaml').replace(/^# yaml-l.*\n/, '')}`,
  );
  cpSync(content.folder, join(guide, 'content'), { recursive: true });
});
afterAll(() => {
  rmSync(guide, { recursive: true, force: true });
  content?.delete();
});

/** As `npx panel-ledger …` starts it, on whatever Node the machine has. */
function run(...args: string[]): Promise<{ code: number; said: string }> {
  const { LEDGER_CONTENT, LEDGER_DIST, ...environment } = process.env;
  return new Promise((resolve) => {
    const env = {
      ...environment,
      NODE_ENV: '',
      VITEST: '',
      LEDGER_TODAY: TODAY,
      ASTRO_TELEMETRY_DISABLED: '1',
      NO_COLOR: '1',
    };
    const command = [join(product(), 'src/cli/bin/panel-ledger.mjs'), ...args];
    execFile('node', command, { cwd: guide, env }, (error, out, err) => {
      resolve({ code: error ? Number(error.code) : 0, said: `${out}${err}` });
    });
  });
}

test('check and build work in the guide’s folder, and leave the package as it was', async () => {
  const before = readdirSync(product()).toSorted();
  const checked = await run('check');
  expect([checked.code, checked.said]).toEqual([0, expect.stringContaining('content: 2 panels')]);
  expect(existsSync(join(guide, '.astro/collections/panels.schema.json'))).toBe(true);
  const built = await run('build');
  expect([built.code, built.said]).toEqual([0, expect.stringMatching(/^Built for .*: 2 panels, /)]);
  for (const page of ['index.html', 'methods/sound/index.html', 'cautions/index.html', 'data/panels.json', 'icon.svg'])
    expect(existsSync(join(guide, 'dist', page)), page).toBe(true);
  expect(readFileSync(join(guide, 'dist/methods/rank/index.html'), 'utf8')).toContain('A page for the tests');
  expect(existsSync(join(guide, '.build/kept'))).toBe(true);
  expect(readdirSync(product()).toSorted()).toEqual(before);
  expect(before).not.toContain('tests');
});

test('its threads read its code among packages: one draws a card', () => {
  const script = `
    const { drawInThreads } = await import(${JSON.stringify(join(product(), 'src/build/cards/card-threads.ts'))});
    const { keptCards } = await import(${JSON.stringify(join(product(), 'src/build/cards/kept-cards.ts'))});
    const layout = { width: 200, height: 100, margin: 5, sides: 'beside', name: 9, text: 6, small: 6 };
    const panel = { name: 'A', from: '', figures: [], remarks: [], address: 'https://a.example/', description: '' };
    await drawInThreads([[{ mark: 'a', card: { address: '/a.png', view: { of: 'panel', panel }, layout, pixels: 20 } }]], 'drawn').finish();
    console.log([...keptCards('drawn').keys()].join());`;
  writeFileSync(join(guide, 'draw.mjs'), script);
  const node = ['--import', join(product(), 'src/cli/bin/strip-types.mjs'), 'draw.mjs'];
  expect(execFileSync(process.execPath, node, { cwd: guide, encoding: 'utf8' }).trim()).toBe('a');
});

test('a command that does not exist gets the nearest one, and its exit code', async () => {
  const { code, said } = await run('biuld');
  expect([code, said]).toEqual([1, expect.stringContaining('Did you mean build?')]);
});
