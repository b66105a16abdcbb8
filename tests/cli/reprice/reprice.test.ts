/** Re-pricing as a tester does it: from a file or flags, with slips, on a terminal and without one. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PRICE_SLIPS } from '../../../src/cli/reprice/price-slips.ts';
import { repriceCommand } from '../../../src/cli/reprice/reprice.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { runCommand } from '../run-command.ts';

const PLOVER = 'panels/plover/index.md';
const TEASEL = 'panels/teasel/index.md';
let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const run = (args: string[], answers?: string[]) => runCommand(repriceCommand, args, content.folder, answers);
/** A file of prices, outside of the content. */
function sheet(text: string): string {
  const file = join(content.folder, '.prices.csv');
  writeFileSync(file, text);
  return file;
}
/** The lines that were put into a file at one place; all others are as they were. */
function added(path: string, before: string): string[] {
  const old = before.split('\n');
  const now = content.read(path).split('\n');
  const start = old.findIndex((line, i) => now[i] !== line);
  const put = now.slice(start, start + now.length - old.length);
  expect(now.toSpliced(start, put.length)).toEqual(old);
  return put.map((it) => it.trim());
}

describe('from a file', () => {
  test.each([
    ['commas, columns in another order', 'date,paid,panel\n2026-11-20,195,plover\n2026-11-20,"410,50",Teasel\n'],
    ['semicolons and decimal commas', 'panel;paid;date\r\nplover;195;2026-11-20\r\n;;\r\nteasel;410,50;2026-11-20\r\n'],
    [
      'tabs, names in capitals, a byte order mark, what npm says',
      '\ufeff\n> panel-ledger@0.1.0 ledger\n> node\n\nPANEL\tPaid\tDATE\nPlover\t195.00\t2026-11-20\nteasel\t410.5\t2026-11-20',
    ],
  ])('%s', async (_name, text) => {
    const [plover, teasel] = [content.read(PLOVER), content.read(TEASEL)];
    const { code, out, error } = await run([sheet(text), '--yes']);
    expect([error, code]).toEqual(['', 0]);
    expect(out).toContain('2 prices, all of 20 Nov 2026:');
    expect(out).toMatch(/Wrote 2 prices to 2 files\.\nNext: npm run check, then npm run build\.\n$/);
    expect(added(PLOVER, plover)).toEqual([
      '- date: 2026-11-20',
      'paid: 195',
      'currency: GBP',
      'link: https://wrackline.example/plover',
    ]);
    expect(added(TEASEL, teasel).join()).toContain('410.50');
    expect(content.problems()).toEqual([]);
  });

  test('every problem of every row at once, with line, field and what to write; nothing is written', async () => {
    const before = content.read(PLOVER);
    const file = sheet(
      [
        'panel,date,list,paid,currency,code,link,note',
        'plover,22.11.2026,1.190,€195,EUR,SPRING,shop.example/plover,x',
        'teasel,2027-01-01,,195,DKK,no,,y',
        ',2026-11-20,,abc,EUR,no,,',
        'plover,2026-11-20,,195,EUR,no,,a,b',
      ].join('\n'),
    );
    const { code, out, error } = await run([file, '--yes']);
    expect([code, out]).toEqual([1, '']);
    expect(error.replaceAll(file, 'prices.csv')).toMatchInlineSnapshot(`
      "prices.csv:2  date
        found   "22.11.2026"
        wanted  a day as YYYY-MM-DD
        hint    write 2026-11-22

      prices.csv:2  list
        found   "1.190"
        wanted  a price without a sign between thousands, and with two decimals at most
        hint    write 1190, or 1.19 if that is the price

      prices.csv:2  paid
        found   "€195"
        wanted  an amount: a number above 0, at most 10,000,000, without a currency’s sign
        hint    write the number alone, as 195; the currency has a column of its own

      prices.csv:2  code
        found   "SPRING"
        wanted  no, needed (a code that earns you nothing), or earns (one that you earn by)
        hint    the code itself goes into the note, if readers shall have it

      prices.csv:2  link
        found   "shop.example/plover"
        wanted  a web address that starts with https://
        hint    write https://shop.example/plover

      prices.csv:3  currency
        found   "DKK"
        wanted  a currency that the guide can convert: EUR, GBP
        hint    add a rate for DKK to guide.yaml

      prices.csv:3  date
        found   "2027-01-01"
        wanted  a day that is not in the future (today is 2026-11-25)

      prices.csv:4  paid
        found   "abc"
        wanted  an amount: a number above 0, at most 10,000,000, without a currency’s sign

      prices.csv:4  panel
        found   nothing
        wanted  the name of a panel, as its folder has it

      prices.csv:5
        found   9 fields
        wanted  8 fields, as the first line has
        hint    a price or a note with a comma in it needs quotes: "849,50"

      10 problems in 1 file; nothing was written.
      "
    `);
    expect(content.read(PLOVER)).toBe(before);
  });

  test.each([
    ['', 'a first line with the columns'],
    ['panel,date\nplover,2026-11-20\n', 'a column "paid", a column "list", or both'],
    ['panle,paid\nplover,1\n', 'did you mean "panel"?'],
    ['panel,paid,paid\nplover,1,2\n', 'one column of each name'],
    ['panel,paid\n', 'a row for each price'],
    ['panel,paid,note\nplover,195,"open\nteasel,1,\n', 'a quotation mark that is not closed'],
    ['panel,paid,date\nplover,195,2026-11-20\nPLOVER,190,2026-11-20\n', 'one row for a panel and a day'],
  ])('%j is refused', async (text, wanted) => {
    const { code, error } = await run([sheet(text), '--yes']);
    expect(code).toBe(1);
    expect(error).toContain(wanted);
    expect(error).toMatch(/nothing was written\.\n$/);
  });

  test('a file that is not there, and one that is not in UTF-8, are one line', async () => {
    expect((await run(['nowhere.csv'])).error).toBe(
      "nowhere.csv can't be read: there is no such file. Nothing was changed.\n",
    );
    expect((await run([tmpdir()])).error).toBe(`${tmpdir()} can't be read: it is a folder. Nothing was changed.\n`);
    const file = sheet('');
    writeFileSync(file, Buffer.from('panel,note\nplover,gr\xfcn\n', 'latin1'));
    expect((await run([file])).error).toContain('is not in UTF-8');
  });
});

describe('on a terminal', () => {
  test('slips are asked about one by one, unchanged prices once, and then whether to write', async () => {
    const [plover, teasel] = [content.read(PLOVER), content.read(TEASEL)];
    const file = join(content.folder, '.sheet.csv');
    vi.spyOn(console, 'log').mockImplementationOnce(() => {});
    await run(['--template', file]);
    writeFileSync(
      file,
      readFileSync(file, 'utf8').replace(/^plover,.*$/m, (it) => it.replace(',200,', ',2000,')),
    );
    const no = await run([file], ['n']);
    expect([no.code, no.asked.length]).toEqual([1, 1]);
    const { code, out, asked } = await run([file], ['l', 'y', 'y']);
    expect(asked).toEqual([
      'Write it all the same? (y = yes, l = leave out, n = stop)',
      'Were these looked up again, and stand? (y = yes, l = leave out, n = stop)',
      'Write 1 price to 1 file? [y/N]',
    ]);
    expect(code).toBe(0);
    expect(out).toContain('Left out: 1 row.');
    expect(content.read(PLOVER)).toBe(plover);
    expect(added(TEASEL, teasel).length).toBeGreaterThan(0);
  });

  test('no, and an end of the input, write nothing', async () => {
    const before = content.read(PLOVER);
    for (const answer of ['n', '', 'maybe']) {
      const { code, error } = await run(['plover', '--paid', '195'], [answer]);
      expect([code, error]).toEqual([1, 'Nothing was written.\n']);
    }
    expect(content.read(PLOVER)).toBe(before);
  });

  test('without a terminal, and without --yes, the table is shown and nothing is written', async () => {
    const before = content.read(PLOVER);
    const { code, out, error } = await run(['plover', '--paid', '195']);
    expect(code).toBe(1);
    expect(out).toContain('Wrackline Plover');
    expect(error).toContain('To write it, add --yes.');
    expect(content.read(PLOVER)).toBe(before);
  });
});

describe('by flags', () => {
  test('currency, code and link go over from the newest price, amounts do not', async () => {
    const before = content.read(PLOVER);
    const { out } = await run(['plover', '--paid', '195', '--yes']);
    expect(added(PLOVER, before).slice(0, 2)).toEqual(['- date: 2026-11-25', 'paid: 195']);
    expect(content.content().panels.get('plover')?.data.prices.at(-1)).toMatchObject({
      currency: 'GBP',
      link: 'https://wrackline.example/plover',
    });
    expect(out).toContain('no list price, since none was given for that day');
    expect(out.split('\n').filter((it) => it.length > 80)).toEqual([]);
  });

  test('--confirm writes the newest amounts for another day, of several panels at once', async () => {
    const { code } = await run(['plover', 'teasel', '--confirm', '--yes']);
    expect(code).toBe(0);
    const { panels } = content.content();
    for (const [, { data }] of panels) {
      const [old, now] = data.prices.toSorted((a, b) => a.date.localeCompare(b.date)).slice(-2);
      expect({ ...now, note: undefined }).toEqual({ ...old, date: '2026-11-25', note: undefined });
    }
  });

  test.each([
    [['plover'], '--confirm where nothing has changed'],
    [['plover', '--confirm', '--paid', '1'], 'Take one of the two'],
    [['plover', 'teasel', '--paid', '1'], 'are of one panel'],
    [[], 'Which prices?'],
    [['plover', '--paid', '1.190'], '--paid'],
    [['plover', '--paid', '195', '--date', '22/11/2026'], 'wanted a day as YYYY-MM-DD; write 2026-11-22'],
  ])('%j is refused', async (args, wanted) => {
    const { code, error } = await run([...args, '--yes']);
    expect(code).toBe(1);
    expect(error).toContain(wanted);
  });
});

test('the template holds all panels with their prices, and given back as it is it confirms them', async () => {
  const file = join(content.folder, '.sheet.csv');
  const said = vi.spyOn(console, 'log').mockImplementation(() => {});
  expect((await run(['--template', file, '--separator', 'semicolon'])).code).toBe(0);
  expect(said.mock.calls.flat().join()).toContain('Next: put in the new prices');
  said.mockRestore();
  expect(readFileSync(file, 'utf8')).toContain(
    'plover;2026-11-25;250;200;GBP;no;https://wrackline.example/plover;no;\n',
  );
  expect((await run(['--template', file])).error).toContain('is there already');
  const { code, out } = await run([file, '--yes', '--accept', 'unchanged']);
  expect(code).toBe(0);
  expect(out).toContain('2 prices, all of 25 Nov 2026');
  // Once more: they are there already.
  const again = await run([file]);
  expect(again.code).toBe(0);
  expect(again.out).toContain('is in the file already');
  expect(again.out).toContain('There is nothing to write.');
  expect(content.problems()).toEqual([]);
});

test('--dry-run writes nothing, and --json says what would be written', async () => {
  const before = content.read(PLOVER);
  expect((await run(['plover', '--paid', '190', '--dry-run'])).code).toBe(0);
  const { code, out } = await run(['plover', '--paid', '190', '--dry-run', '--json']);
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject([
    { panel: 'plover', change: -5, replaced: false, written: false, before: { paid: 200 }, after: { paid: 190 } },
  ]);
  expect(content.read(PLOVER)).toBe(before);
});

test('a fault elsewhere keeps nobody from a price, and a price that the check refuses is not written', async () => {
  content.edit(TEASEL, 'model:', 'modle:');
  expect((await run(['plover', '--paid', '195', '--yes'])).code).toBe(0);
  const before = content.read(TEASEL);
  content.write(TEASEL, before.replace('prices:', 'prices: &x'));
  expect((await run(['teasel', '--paid', '-3', '--yes'])).code).toBe(1);
  expect(existsSync(join(content.folder, '.edits'))).toBe(false);
});

test('help has an example, the slips and the exit codes, in 80 columns', async () => {
  const { out } = await run(['--help']);
  for (const text of ['Examples:', 'Exit code:', ...Object.keys(PRICE_SLIPS)]) expect(out).toContain(text);
  expect(out.split('\n').filter((it) => it.length > 80)).toEqual([]);
});
