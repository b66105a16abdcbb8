/** The tester's commands, run as the tester runs them. */
import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { problemList } from '../../src/ledger/problem-list.ts';
import { readContent } from '../../src/ledger/read-content.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

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

/** Starting the program takes seconds on a busy machine. */
const PATIENCE = 60_000;

let good: ContentFolder;
let bad: ContentFolder;
beforeAll(() => {
  good = tinyContent();
  bad = tinyContent();
  bad.lay('bad-content');
});
afterAll(() => {
  good.delete();
  bad.delete();
});

describe.concurrent('check', () => {
  test('lists every problem on the error channel, where much is wrong', { timeout: PATIENCE }, async () => {
    const { code, out, error } = await run(['check', bad.folder]);
    expect([code, out]).toEqual([1, '']);
    const { problems } = readContent({ folder: bad.folder, today: TODAY, shownAs: bad.folder });
    expect(error.trim()).toBe(problemList(problems));
    expect(error).toContain(`${bad.folder}/panels/plover/index.md:`);
    expect(error.trim()).toMatch(/\d+ problems in 1\d files; nothing was built\.$/);
  });

  test('takes the folder that the environment names', { timeout: PATIENCE }, async () => {
    const { code, out, error } = await run(['check'], { LEDGER_CONTENT: good.folder });
    expect([code, error]).toEqual([0, '']);
    expect(out.trim()).toMatch(/^No problems in .*: 2 panels, 2 makers, 6 instruments, \d+ methods\.$/);
    expect(out).toContain(good.folder);
  });

  test('says that a folder is not there', { timeout: PATIENCE }, async () => {
    const folder = join(good.folder, 'nowhere');
    const { code, error } = await run(['check', folder]);
    expect(code).toBe(1);
    expect(error).toBe(
      `${folder}\n  found   no such folder\n  wanted  the content folder with guide.yaml in it\n\n1 problem in 1 file; nothing was built.\n`,
    );
  });

  test('refuses a day that is none, in a sentence and without a trace', { timeout: PATIENCE }, async () => {
    const { code, out, error } = await run(['check', good.folder], { LEDGER_TODAY: '2026-02-30' });
    expect([code, out]).toEqual([1, '']);
    expect(error).toContain('LEDGER_TODAY is "2026-02-30"; wanted a day as YYYY-MM-DD');
    expect(error).not.toMatch(/^\s+at /m);
  });
});

describe.concurrent('build', () => {
  test('of a folder in which something is wrong writes nothing and lists it', { timeout: PATIENCE }, async () => {
    const { code, error } = await run(['build'], { LEDGER_CONTENT: bad.folder }, bad.folder);
    expect(code).toBe(1);
    expect(error).toMatch(/\d+ problems in 1\d files; nothing was built\.\n$/);
    expect(error).not.toMatch(/^\s+at /m);
    expect(existsSync(join(bad.folder, 'dist'))).toBe(false);
    // The places are those of the folder that was read.
    expect(error).toContain(`${bad.folder}/panels/plover/index.md:`);
  });
});
