/** Real builds of a small guide in a copy of the project: two at once, one after a killed one, one without a place. */
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';
import { copyProject } from '../support/copy-project.ts';

const PATIENCE = 240_000;

let root: string;
let content: ContentFolder;
beforeAll(() => {
  root = copyProject('two-builds');
  content = tinyContent();
});
afterAll(() => {
  rmSync(root, { recursive: true, force: true, maxRetries: 5 });
  content.delete();
});

interface Ended {
  code: number | null;
  said: string;
}

function start(): { child: ChildProcess; ended: Promise<Ended> } {
  const { PATH, HOME, TMPDIR } = process.env;
  const env = {
    ...{ PATH, HOME, TMPDIR },
    ...{ LEDGER_CONTENT: content.folder, LEDGER_TODAY: TODAY, ASTRO_TELEMETRY_DISABLED: '1', NO_COLOR: '1' },
  };
  const child = spawn(process.execPath, ['src/cli/main.ts', 'build'], { cwd: root, env });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
  }
  const ended = new Promise<Ended>((resolve, reject) => {
    child.on('error', reject).on('close', (code) => resolve({ code, said }));
  });
  return { child, ended };
}

const REFUSED =
  /^Another build is at work here \(process \d+\); nothing was built\. Start again when it has ended\.\n$(?![\s\S])/m;
const TRACE = /^\s+at |ERROR|Error:/m;

/** Every page of the guide, and nothing of the build's own. */
function expectWhole(): void {
  const files = readdirSync(join(root, 'dist'), { recursive: true, encoding: 'utf8' });
  for (const page of ['', 'cautions/', 'compare/', 'panels/plover/', 'panels/plover/methodology/', 'methods/rank/']) {
    expect(files).toContain(`${page}index.html`);
  }
  expect(files).toContain('data/panels.json');
  expect(files).toContain('pagefind/pagefind.js');
  expect(files.filter((it) => /\.mjs$|^chunks|^\.|manifest_|renderers/.test(it))).toEqual([]);
  expect(readFileSync(join(root, 'dist/index.html'), 'utf8')).toMatch(/<\/html>\s*$/);
  for (const left of ['dist.old', '.build/site', '.build/lock']) expect(existsSync(join(root, left)), left).toBe(false);
}

// The second one comes while the first starts, the third while it writes.
test('started at once, and 2 s later: one builds whole, the others are refused in one line', {
  timeout: PATIENCE,
}, async () => {
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  const [first, second] = [start(), start()];
  await sleep(2000);
  const third = start();
  const all = [await first.ended, await second.ended, await third.ended];
  const built = all.filter((it) => it.code === 0);
  const refused = all.filter((it) => it.code === 1);
  // On a very fast machine the first may have ended before the third looks: then that one builds too.
  expect(
    [
      [1, 2],
      [2, 1],
    ],
    JSON.stringify(all),
  ).toContainEqual([built.length, refused.length]);
  for (const { said } of refused) expect(said).toMatch(REFUSED);
  for (const { said } of all) expect(said).not.toMatch(TRACE);
  expectWhole();
});

test('after a build that was killed, the next one builds', { timeout: PATIENCE }, async () => {
  const killed = start();
  while (!existsSync(join(root, '.build/site'))) await sleep(20);
  killed.child.kill('SIGKILL');
  await killed.ended;
  expect(existsSync(join(root, '.build/lock'))).toBe(true);
  const { code, said } = await start().ended;
  expect(code).toBe(0);
  expect(said).not.toMatch(TRACE);
  expectWhole();
});

test('an output that cannot be written: one line, no trace, exit 1', { timeout: PATIENCE }, async () => {
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  writeFileSync(join(root, 'dist'), 'in the way');
  const { code, said } = await start().ended;
  expect(code).toBe(1);
  expect(said.split('\n').at(-2)).toBe(
    "dist can't be written: a file lies where a folder is needed (ENOTDIR). Nothing was built.",
  );
  expect(said).not.toMatch(TRACE);
  expect(readFileSync(join(root, 'dist'), 'utf8')).toBe('in the way');
  rmSync(join(root, 'dist'));
});
