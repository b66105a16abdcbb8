import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { parse } from 'yaml';
import { correctCommand } from '../../../src/cli/correct/correct.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { runCommand } from '../run-command.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
beforeAll(() => {
  content = tinyContent();
  const git = (...args: string[]) => execFileSync('git', ['-C', content.folder, ...args]);
  git('init', '--quiet');
  git('add', '--all');
  git('-c', 'user.name=Tester', '-c', 'user.email=tester@bench.example', 'commit', '--quiet', '--message', 'First');
});
afterAll(() => content.delete());

const correct = (args: string[], answers?: string[]) => runCommand(correctCommand, args, content.folder, answers);
const written = () => parse(content.read('corrections.yaml')).corrections;

test('where nothing has moved nothing is written', async () => {
  const { code, error } = await correct(['--why', 'x', '--yes']);
  expect(code).toBe(1);
  expect(error).toContain('no figure has moved');
  expect(existsSync(join(content.folder, 'corrections.yaml'))).toBe(false);
});

test('writes what was, what is and what moved with it; a price is left aside', async () => {
  content.edit(PLOVER, 'combined: 100.0', 'combined: 120.0');
  content.edit(PLOVER, 'paid: 200', 'paid: 190');
  const { code, out, asked } = await correct([], ['Mistyped from the sheet.', 'y']);
  expect({ code, asked }).toEqual({
    code: 0,
    asked: ['How did it come about, for readers:', 'Add it to corrections.yaml? [y/N]'],
  });
  expect(out).toContain('Added to corrections.yaml');
  const [entry, ...others] = written();
  expect(others).toEqual([]);
  expect(entry).toMatchObject({
    panel: 'plover',
    session: '2026-10-01',
    metric: 'mains-draw-combined',
    from: { value: 100 },
    to: { value: 120 },
    why: 'Mistyped from the sheet.',
  });
  const also = entry.alsoMoved.map((it: { metric: string }) => it.metric);
  expect(also).toContain('efficiency-combined');
  expect(also.filter((it: string) => /price|cost/.test(it))).toEqual([]);
  expect(content.problems()).toEqual([]);
});

test('adds to the list that is there, and refuses a second one of the day', async () => {
  content.edit('corrections.yaml', '# Every correction,', '# Ours. Every correction,');
  const later = ['--why', 'Again.', '--yes', '--date', '2026-11-02'];
  expect((await correct(later)).code).toBe(0);
  expect(written().map((it: { date: string }) => it.date)).toEqual(['2026-11-25', '2026-11-02']);
  expect(content.read('corrections.yaml')).toContain('# Ours. Every');
  const { code, error } = await correct(later);
  expect(code).toBe(1);
  expect(error).toContain('one correction a day');
  expect(written()).toHaveLength(2);
});

test('names what has not moved, and wants a reason', async () => {
  expect((await correct(['--why', 'x', '--panel', 'plove', '--yes'])).error).toContain('did you mean plover?');
  const silent = await correct(['--yes']);
  expect(silent.code).toBe(1);
  expect(silent.error).toContain('--why');
  const { out, code } = await correct(['--why', 'x', '--metric', 'efficiency-combined', '--dry-run', '--json']);
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ written: false, corrections: [{ metric: 'efficiency-combined' }] });
});
