/** Several commands that edit one file at once lose nothing of one another's work. */
import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type FileChange, readText } from '../../../src/cli/files/changes.ts';
import { ChangedMeanwhile, writeSafely } from '../../../src/cli/files/write-safely.ts';
import { editContent } from '../../../src/content/edit/edit-content.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';
const MAIN = fileURLToPath(new URL('../../../src/cli/main.ts', import.meta.url));

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const price = (before: string, date: string): FileChange => ({
  path: PLOVER,
  before,
  after: editContent(before, PLOVER, [{ do: 'insert', list: ['prices'], item: { date, paid: 199, currency: 'GBP' } }]),
});

test('commands in processes of their own, started together, all land', { timeout: 60_000 }, async () => {
  const days = ['2026-11-10', '2026-11-11', '2026-11-12'];
  const env = { ...process.env, LEDGER_TODAY: TODAY, LEDGER_CONTENT: content.folder };
  const ended = await Promise.all(
    days.map(
      (day, i) =>
        new Promise<string>((resolve) => {
          const args = [MAIN, 'reprice', 'plover', '--paid', `19${i}`, '--date', day, '--yes', '--accept', 'older'];
          execFile(process.execPath, args, { env }, (error, _out, said) => resolve(error ? said : ''));
        }),
    ),
  );
  expect(ended).toEqual(['', '', '']);
  const { prices } = content.content().panels.get('plover')?.data ?? { prices: [] };
  expect(
    prices
      .filter((it) => days.includes(it.date))
      .map((it) => it.paid)
      .toSorted(),
  ).toEqual([190, 191, 192]);
  expect(existsSync(join(content.folder, '.edits'))).toBe(false);
});

test('of two that have read the same text, the second is told, and nothing of the first is lost', async () => {
  const before = readText(content.folder, PLOVER);
  const both = await Promise.allSettled(
    ['2026-11-10', '2026-11-11'].map((date) => writeSafely(content.folder, { files: [price(before, date)] }, TODAY)),
  );
  expect(both.map((it) => it.status).toSorted()).toEqual(['fulfilled', 'rejected']);
  expect(both.find((it) => it.status === 'rejected')?.reason).toBeInstanceOf(ChangedMeanwhile);
  const lands = both.findIndex((it) => it.status === 'fulfilled');
  expect(readText(content.folder, PLOVER)).toBe(price(before, ['2026-11-10', '2026-11-11'][lands] ?? '').after);
});
