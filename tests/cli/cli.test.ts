/** The tester's commands, run as the tester runs them. */
import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { ledgerProgram } from '../../src/cli/program.ts';
import { problemList } from '../../src/content/read/problem-list.ts';
import { readContent } from '../../src/content/read/read-content.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';
import { restoreEnvironment } from './run-command.ts';

const top = fileURLToPath(new URL('../..', import.meta.url));

interface Ended {
  code: number;
  out: string;
  error: string;
}

/** Runs a command of the program to its end, with the day fixed. */
function run(args: string[], environment: Record<string, string> = {}, cwd = top): Promise<Ended> {
  return new Promise((resolve) => {
    const env = { ...process.env, LEDGER_TODAY: TODAY, ASTRO_TELEMETRY_DISABLED: '1', NO_COLOR: '1', ...environment };
    execFile(process.execPath, [join(top, 'src/cli/main.ts'), ...args], { cwd, env }, (error, out, err) => {
      resolve({ code: error ? Number(error.code) : 0, out, error: err });
    });
  });
}

/** `check` in this process, as it is run by the program: what it says, and with which code it would end. */
async function check(args: string[], environment: Record<string, string> = {}): Promise<Ended> {
  const ended = { code: 0, out: '', error: '' };
  const say = (channel: 'out' | 'error') => (text: unknown) => {
    ended[channel] += `${text}\n`;
  };
  const spies = [
    vi.spyOn(console, 'log').mockImplementation(say('out')),
    vi.spyOn(console, 'error').mockImplementation(say('error')),
  ];
  const before = { ...process.env };
  Object.assign(process.env, { LEDGER_TODAY: TODAY, ...environment });
  process.exitCode = 0;
  try {
    await (await ledgerProgram()).parseAsync(['check', ...args], { from: 'user' });
    ended.code = Number(process.exitCode);
  } finally {
    process.exitCode = 0;
    restoreEnvironment(before);
    for (const it of spies) it.mockRestore();
  }
  return ended;
}

/** Starting the program takes seconds on a busy machine. */
const PATIENCE = 60_000;

let good: ContentFolder;
let bad: ContentFolder;
/** Without a problem, but with a field that can't be. */
let odd: ContentFolder;
/** One panel, of which there is nothing to say. */
let sound: ContentFolder;
beforeAll(() => {
  good = tinyContent();
  bad = tinyContent();
  bad.lay('bad-content');
  sound = tinyContent();
  sound.remove('panels/plover');
  sound.edit('panels/teasel/index.md', 'sessions:', 'sessions: []\nnone:');
  sound.write('panels/teasel/index.md', `${sound.read('panels/teasel/index.md').split('\nnone:')[0]}\n---\n`);
  odd = tinyContent();
  odd.edit('panels/plover/index.md', 'width: 20 cm', 'width: 200');
});
afterAll(() => {
  good.delete();
  bad.delete();
  odd.delete();
  sound.delete();
});

describe.concurrent('check, run as the tester runs it', () => {
  test('refuses a day that is none, in a sentence and without a trace', { timeout: PATIENCE }, async () => {
    const { code, out, error } = await run(['check', good.folder], { LEDGER_TODAY: '2026-02-30' });
    expect([code, out]).toEqual([1, '']);
    expect(error).toContain('LEDGER_TODAY is "2026-02-30"; wanted a day as YYYY-MM-DD');
    expect(error).not.toMatch(/^\s+at /m);
  });
});

// One after another: they listen to the same console.
describe('check', () => {
  test('lists every problem on the error channel, where much is wrong', async () => {
    const { code, out, error } = await check([bad.folder]);
    expect([code, out]).toEqual([1, '']);
    const { problems } = readContent({ folder: bad.folder, today: TODAY, shownAs: bad.folder });
    expect(error.trim()).toBe(problemList(problems));
    expect(error).toContain(`${bad.folder}/panels/plover/index.md:`);
    expect(error.trim()).toMatch(/\d+ problems in 1\d files; nothing was built\.$/);
  });

  test('takes the folder that the environment names', async () => {
    const { code, out, error } = await check([], { LEDGER_CONTENT: good.folder });
    expect([code, error]).toEqual([0, '']);
    // The fixture's flicker was read with a meter that has no file.
    expect(out).toMatch(/^note {2}.*panels\/plover\/index\.md:\d+/);
    expect(out).toMatch(
      /\n0 problems, \d+ warnings?: \d+ notes? \(.*: 2 panels, 2 makers, 6 instruments, \d+ methods\)\.\n$/,
    );
    expect(out).toContain(good.folder);
  });

  test('says so where there is nothing to say', async () => {
    const { code, out, error } = await check([sound.folder]);
    expect([code, error]).toEqual([0, '']);
    expect(out).toMatch(/^No problems in .*, and nothing odd: 1 panel, 2 makers, 6 instruments, \d+ methods\.\n$/);
    expect(JSON.parse((await check(['--json', sound.folder])).out)).toEqual([]);
  });

  test('lists what is impossible first, on the output channel, and ends with 2', async () => {
    const { code, out, error } = await check([odd.folder]);
    expect([code, error]).toEqual([2, '']);
    const line = odd.lineOf('panels/plover/index.md', 'field:');
    expect(out).toMatch(
      new RegExp(`^impossible {2}${odd.folder}/panels/plover/index\\.md:${line} {2}field\n {2}odd {6}The LED field`),
    );
    expect(out).toMatch(/\n0 problems, \d+ warnings: \d+ impossible(, \d+ doubtful)?, \d+ notes? \(.*\)\.\n$/);
    expect(out).not.toContain('No problems');
  });

  test('as JSON: one array, the same in number, order and exit code', async () => {
    const { code, out, error } = await check(['--json', odd.folder]);
    expect([code, error]).toEqual([2, '']);
    const found = JSON.parse(out) as Array<Record<string, unknown>>;
    expect(found[0]).toMatchObject({
      severity: 'impossible',
      file: `${odd.folder}/panels/plover/index.md`,
      line: odd.lineOf('panels/plover/index.md', 'field:'),
      field: 'field',
      check: 'field-within-housing',
      wanted: null,
      figures: ['led-area', 'field-width', 'field-height'],
    });
    const problems = await check(['--json', bad.folder]);
    expect([problems.code, problems.error]).toEqual([1, '']);
    const all = JSON.parse(problems.out) as Array<Record<string, unknown>>;
    expect(all).toHaveLength(readContent({ folder: bad.folder, today: TODAY, shownAs: bad.folder }).problems.length);
    for (const it of all) expect(it).toMatchObject({ severity: 'problem', found: expect.any(String), check: null });
  });

  test('says that a folder is not there', async () => {
    const folder = join(good.folder, 'nowhere');
    const { code, error } = await check([folder]);
    expect(code).toBe(1);
    expect(error).toBe(
      `${folder}\n  found   no such folder\n  wanted  the content folder with guide.yaml in it\n\n1 problem in 1 file; nothing was built.\n`,
    );
  });
});

// Of a folder with problems it is told in tests/built/builds.test.ts.
describe.concurrent('build', () => {
  test('of a folder in which something is impossible builds nothing if it is strict', {
    timeout: PATIENCE,
  }, async () => {
    const { code, out, error } = await run(['build', '--strict'], { LEDGER_CONTENT: odd.folder }, odd.folder);
    expect([code, out]).toEqual([2, '']);
    expect(error).toMatch(/^impossible {2}/);
    expect(error).toMatch(/; nothing was built\.\n$/);
    expect(existsSync(join(odd.folder, 'dist'))).toBe(false);
  });
});
