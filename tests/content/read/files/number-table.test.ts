import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readNumberTable } from '../../../../src/content/read/files/number-table.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'number-table-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Reads a table of which every column of values is needed. */
function read(bytes: string | Uint8Array) {
  const path = join(folder, 'table.csv');
  writeFileSync(path, bytes);
  const rows: number[][] = [];
  const result = readNumberTable(path, ({ columns }) => ({
    needed: columns.flatMap((it, i) => (it.form === 'text' ? [] : [i])),
    take: (values) => {
      rows.push([...values]);
      return undefined;
    },
  }));
  if ('fault' in result) return { fault: result.fault, rows };
  const { head, notes } = result;
  return { rows, head, notes: notes.map((it) => it.code), names: head.columns.map((it) => `${it.name}|${it.unit}`) };
}

const ROWS = [
  [380.5, 0.0012],
  [381, 0.0013],
];

describe('however a table is written, its numbers are the same', () => {
  test.each([
    ['commas', '380.5,0.0012\n381,0.0013\n'],
    ['semicolons and decimal commas', '380,5;0,0012\n381;0,0013\n'],
    ['tabs and decimal commas', '380,5\t0,0012\n381,0\t0,0013\n'],
    ['blanks in columns', '  380.5   1.2e-3\n  381.0   1.3E-3\n'],
    ['commas and blanks, in quotes', '"380.5", "0.0012"\n"381", "0.0013"\n'],
    ['carriage returns', '380.5;0.0012\r\n381;0.0013\r\n'],
    ['carriage returns alone, no end of line at the end', '380.5;0.0012\r381;0.0013'],
    ['a byte-order mark', '\ufeff380.5;0.0012\n381;0.0013\n'],
    ['comments and blank lines', '# made on the bench\n\n380.5;0.0012\n# half way\n381;0.0013\n\n'],
    ['a separator at the end of each row', '380.5;0.0012;\n381;0.0013;\n'],
    ['words behind the last row', '380.5;0.0012\n381;0.0013\n>>>> end <<<<\n'],
  ])('%s', (_, text) => {
    expect(read(text).rows).toEqual(ROWS);
  });

  test.each(['utf16le', 'utf16be', 'latin1'] as const)('letters in %s, which is told', (encoding) => {
    const text = 'Wellenlänge [nm];Stärke [µW/cm²/nm]\r\n380,5;0,0012\r\n381;0,0013\r\n';
    const bytes = Buffer.from(text, encoding === 'latin1' ? 'latin1' : 'utf16le');
    const found = read(encoding === 'utf16be' ? bytes.swap16() : bytes);
    expect(found.rows).toEqual(ROWS);
    expect(found.notes).toEqual(['table-decimal-commas', 'table-encoding']);
    expect(found.names).toEqual(['Wellenlänge|nm', 'Stärke|µW/cm²/nm']);
  });
});

describe('the head', () => {
  test.each([
    ['Wavelength (nm),Irradiance (W/m2/nm)\n', ['Wavelength|nm', 'Irradiance|W/m2/nm']],
    ['Wavelength / nm,Irradiance in W/m2/nm\n', ['Wavelength|nm', 'Irradiance|W/m2/nm']],
    ['Wavelength,Irradiance\nnm,W/m2/nm\n', ['Wavelength|nm', 'Irradiance|W/m2/nm']],
    ['Meter: invented\nDate: 2026-11-02\nt,E\n', ['t|', 'E|']],
    ['', ['|', '|']],
  ])('%j', (head, names) => {
    expect(read(`${head}380.5,0.0012\n381,0.0013\n`).names).toEqual(names);
  });

  test('a count that stands before the rows is no row', () => {
    expect(read('2\n380.5 0.0012\n381 0.0013\n').rows).toEqual(ROWS);
  });
});

describe('times', () => {
  test('clocks, days and both become seconds', () => {
    expect(read('12:00:01;41.2\n12:00:02,5;41.3\n').rows).toEqual([
      [43201, 41.2],
      [43202.5, 41.3],
    ]);
    expect(read('11:59:59 PM,1\n12:00:01 AM,2\n').rows.map(([t]) => t)).toEqual([86399, 1]);
    const [[day]] = read('2026-11-20T12:00:01Z;1\n2026-11-20T12:00:02Z;2\n').rows as [[number]];
    expect(day).toBe(Date.UTC(2026, 10, 20, 12, 0, 1) / 1000);
    expect(read('20.11.2026 12:00:01;1\n20.11.2026 12:00:02;2\n').rows[0]?.[0]).toBe(day);
  });

  test('a day whose parts could stand in another order is no day', () => {
    expect(read('11/10/2026;1;2\n11/11/2026;2;3\n').head?.columns[0]?.form).toBe('text');
  });
});

describe('what is no table is refused at its line', () => {
  test.each([
    ['nothing', '', undefined, 'an empty file'],
    ['blank lines', '\n \n', undefined, 'an empty file'],
    ['a head alone', 'Wavelength;Irradiance\n', undefined, 'no row of numbers'],
    ['NaN', '1;2\n2;NaN\n', 2, '“NaN” in column 2'],
    ['NaN in the last row, which is no foot', '1;2\n2;3\nNaN;NaN\n', 3, '“NaN” in column 1'],
    ['an overload', '1;2\n2;OL\n3;4\n', 2, '“OL” in column 2'],
    ['a lost cell', '1;2\n2\n3;4\n', 2, 'a row without a value in column 2'],
    ['a cell too many', '1;2\n2;3\n3;4;5\n', 3, '3 cells'],
    ['a first row that is short', '1;2\n2;3;4\n3;4;5\n', 1, '2 numbers'],
    ['points and commas by turns', '1.5;2\n2,5;3\n3.5;4\n', 2, '“2,5” in column 1'],
    ['a second head', 't;E\n1;2\n2;3\nt;E\n1;2\n', 4, '“t;E”'],
    ['commas that part numbers or stand in them', '0,125\n0,126\n', undefined, 'commas of which'],
    ['the same in two columns', '400,5,0,0012\n401,5,0,0013\n', undefined, 'commas of which'],
    ['a workbook', 'PK\u0003\u0004\u0000\u0000', undefined, 'a workbook or archive'],
    ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3, 0, 0]), undefined, 'bytes that are no text'],
    ['a hexadecimal number', '1;2\n2;0x10\n', 2, '“0x10” in column 2'],
  ])('%s', (_, text, line, found) => {
    const { fault } = read(text as string);
    expect(fault?.found).toContain(found);
    expect(fault?.line).toBe(line);
    expect(fault?.wanted).toBeTruthy();
  });
});

test('one column of numbers is a table too, with its decimal commas where a head or a zero tells', () => {
  expect(read('0.5\n0.25\n').rows).toEqual([[0.5], [0.25]]);
  expect(read('U\n0,125\n0,126\n').rows).toEqual([[0.125], [0.126]]);
});

test('rows over the edges of what is read at once are whole', () => {
  const count = 90_000;
  const lines = Array.from({ length: count }, (_, i) => `${i / 8};µ ${i}`);
  const { rows } = read(`t;note\r\n${lines.join('\r\n')}\r\n`);
  expect(rows.length).toBe(count);
  expect(rows.every(([t], i) => t === i / 8)).toBe(true);
});

test('whatever the bytes, there is a table or a fault', () => {
  const base = Buffer.from('t [s];E\n0,5;1,25\n1,0;1,5\n1,5;1,75\n');
  const change = fc.tuple(fc.nat(base.length - 1), fc.integer({ min: 0, max: 255 }));
  fc.assert(
    fc.property(fc.array(change, { maxLength: 6 }), fc.nat(base.length), (changes, cut) => {
      const bytes = Buffer.from(base);
      for (const [at, byte] of changes) bytes[at] = byte;
      const { rows, fault, head } = read(bytes.subarray(0, cut));
      expect(fault === undefined).toBe(head !== undefined);
      if (head) for (const row of rows) expect(row.length).toBe(head.columns.length);
    }),
    { numRuns: 300 },
  );
});
