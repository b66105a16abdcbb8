/** What is often a slip in prices: refused without a word for it, written or left out with one. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { PRICE_SLIPS } from '../../../src/cli/reprice/price-slips.ts';
import { repriceCommand } from '../../../src/cli/reprice/reprice.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { runCommand } from '../run-command.ts';

const PLOVER = 'panels/plover/index.md';
let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const run = (args: string[]) => runCommand(repriceCommand, args, content.folder);
/** A file of prices, outside of the content. */
function sheet(text: string): string {
  const file = join(content.folder, '.prices.csv');
  writeFileSync(file, text);
  return file;
}

describe('slips', () => {
  const cases: Array<[keyof typeof PRICE_SLIPS, row: string, text: string]> = [
    ['unknown-panel', 'plovre,2026-11-20,195,GBP', 'the nearest is Wrackline Plover, plover.'],
    ['factor-ten', 'plover,2026-11-20,19.5,GBP', '£19.50, and £200 on 1 Nov 2026'],
    ['same-day', 'plover,2026-11-01,195,GBP', 'there is a price of 1 Nov 2026 already, £200 paid'],
    ['older', 'plover,2026-10-20,195,EUR', '20 Oct 2026 is before 1 Nov 2026'],
    ['currency', 'plover,2026-11-20,195,EUR', 'in EUR, and before in GBP'],
  ];
  test.each(cases)('%s: refused without a terminal, written when it is accepted', async (id, row, text) => {
    const before = content.read(PLOVER);
    const file = sheet(`panel,date,paid,currency\n${row}\nteasel,2026-11-21,400,EUR\n`);
    const refused = await run([file, '--yes']);
    expect(refused.code).toBe(1);
    expect(refused.error.replaceAll(/\s+/g, ' ')).toContain(text);
    expect(refused.error).toContain(`--accept ${id}`);
    expect(refused.error).toContain(`--skip ${id}`);
    expect(refused.error).toMatch(/Nothing was written\.\n$/);
    expect(content.read(PLOVER)).toBe(before);

    const skipped = await run([file, '--yes', '--skip', id]);
    expect(skipped.out).toContain('Left out: 1 row.');
    expect(content.read(PLOVER)).toBe(before);

    const accepted = await run([file, '--yes', '--accept', `${id},same-day,unchanged`, '--skip', 'same-day']);
    expect([accepted.error, accepted.code]).toEqual(['', 0]);
    if (id !== 'same-day') expect(content.read(PLOVER)).not.toBe(before);
    expect(content.problems()).toEqual([]);
  });

  test('more paid than the list price', async () => {
    const refused = await run(['plover', '--paid', '260', '--list', '250', '--yes']);
    expect(refused.error).toContain('£260 paid is more than the list price of £250.');
    expect(refused.error).not.toContain('--skip');
    expect((await run(['plover', '--paid', '260', '--list', '250', '--yes', '--accept', 'paid-over-list'])).code).toBe(
      0,
    );
  });

  test('a row without an amount can only be left out', async () => {
    const file = sheet('panel,paid,list\nplover,,\nteasel,400,\n');
    const refused = await run([file, '--yes', '--accept', 'unchanged']);
    expect(refused.error).toContain('neither a paid price nor a list price');
    expect(refused.error).not.toContain('--accept');
    expect((await run([file, '--yes', '--skip', 'no-price'])).code).toBe(0);
  });

  test('a misspelt name of a slip gets the nearest', async () => {
    expect((await run(['plover', '--paid', '1', '--accept', 'factor-tan'])).error).toContain(
      'did you mean factor-ten?',
    );
  });

  test('a price of the same day is replaced in place, and what the row does not speak of stays', async () => {
    const before = content.read(PLOVER);
    const { code } = await run([
      'plover',
      '--date',
      '2026-11-01',
      '--paid',
      '189.90',
      '--code',
      'needed',
      '--yes',
      '--accept',
      'same-day',
    ]);
    expect(code).toBe(0);
    expect(content.read(PLOVER)).toBe(
      before.replace(
        '    paid: 200\n    currency: GBP\n',
        '    paid: 189.90\n    currency: GBP\n    discountCode: { needed: true, testerEarns: false }\n',
      ),
    );
  });
});
