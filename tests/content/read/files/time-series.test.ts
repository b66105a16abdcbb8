import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FileFault } from '../../../../src/content/read/files/file-kind.ts';
import { sweepReader } from '../../../../src/content/read/files/sweep-file.ts';
import type { SeriesEntry, SeriesFile } from '../../../../src/content/read/files/time-series-table.ts';
import { warmUpReader } from '../../../../src/content/read/files/warm-up-file.ts';
import { waveformReader } from '../../../../src/content/read/files/waveform-file.ts';
import { RUNS } from '../../../measure/make.ts';
import { DEMO_FOLDER } from '../../../support/demo-folder.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'series-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function read(bytes: string | Uint8Array, entry: SeriesEntry = {}, reader = sweepReader) {
  const path = join(folder, 'log.csv');
  writeFileSync(path, bytes);
  return reader.read({ path, name: 'log.csv', bytes: statSync(path).size }, { file: 'log.csv', ...entry } as never);
}

const dataOf = (it: ReturnType<typeof read>): SeriesFile => {
  if ('fault' in it) throw new Error(JSON.stringify(it.fault));
  return it.data;
};
const faultOf = (it: ReturnType<typeof read>): FileFault => {
  if ('fault' in it) return it.fault;
  throw new Error('no fault');
};
const codes = (it: ReturnType<typeof read>) => ('fault' in it ? [] : it.notes.map(({ code }) => code));

const rows = (count: number, row: (i: number) => string) => Array.from({ length: count }, (_, i) => row(i)).join('\n');
const table = (head: string, row: (i: number) => string, count = 12) => `${head}\n${rows(count, row)}\n`;

describe('a log', () => {
  test.each([
    ['commas', table('Time (s),Irradiance (mW/cm2)', (i) => `${i / 5},${40 + i}`)],
    [
      'semicolons, decimal commas, W/m²',
      table('Zeit [s];E [W/m²]', (i) => `${String(i / 5).replace('.', ',')};${400 + 10 * i}`),
    ],
    ['tabs, ms, uW/cm2', table('Time (ms)\tE (uW/cm2)', (i) => `${200 * i}\t${1000 * (40 + i)}`)],
    ['minutes', table('Elapsed (min),E (mW/cm2)', (i) => `${i / 300},${40 + i}`)],
    ['a counter beside', table('No.,Time (s),E (mW/cm2)', (i) => `${i + 1},${i / 5},${40 + i}`)],
    [
      'UTF-16',
      new Uint8Array(Buffer.from(`\ufeff${table('Time (s),E (mW/cm2)', (i) => `${i / 5},${40 + i}`)}`, 'utf16le')),
    ],
  ])('with %s is the same', (_, bytes) => {
    const { series, isIrradiance } = dataOf(read(bytes));
    expect(isIrradiance).toBe(true);
    expect([...series.times].map((it) => Number(it.toFixed(9)))).toEqual(
      Array.from({ length: 12 }, (_, i) => Number((i / 5).toFixed(9))),
    );
    expect([...series.values].map((it) => Number(it.toFixed(6)))).toEqual(Array.from({ length: 12 }, (_, i) => 40 + i));
  });

  test('with a clock of whole seconds has its rows spread over each second, and says so', () => {
    const clock = (i: number) => `23:59:${String(57 + Math.floor(i / 4)).padStart(2, '0')}`;
    const it = read(
      table('Clock,E (mW/cm2)', (i) => `${i < 12 ? clock(i) : `00:00:0${Math.floor((i - 12) / 4)}`},${40 + i}`, 20),
    );
    expect([...dataOf(it).series.times]).toEqual(Array.from({ length: 20 }, (_, i) => i / 4));
    expect(codes(it)).toContain('log-times-spread');
  });

  test('without times takes the rate of the session', () => {
    const bytes = table('E (mW/cm2)', (i) => `${40 + i}`);
    expect([...dataOf(read(bytes, { rate: { value: 10 } })).series.times.slice(0, 3)]).toEqual([0, 0.1, 0.2]);
    expect(faultOf(read(bytes)).wanted).toContain('rate');
  });

  test('has its column and unit as the session says', () => {
    const bytes = table('Time (s),Red,White', (i) => `${i},${i},${40 + i}`);
    expect(faultOf(read(bytes))).toMatchObject({ hint: expect.stringContaining('column:') });
    expect(dataOf(read(bytes, { column: 'white', unit: 'W/m2' })).series.values[0]).toBe(4);
    expect(dataOf(read(bytes, { column: '3', unit: 'mW/cm2' })).series.values[0]).toBe(40);
    expect(faultOf(read(bytes, { column: 'Whits', unit: 'mW/cm2' })).hint).toContain('White');
  });

  test('of a warm-up or of flicker may be in any unit, and says that ratios alone are used', () => {
    const bytes = table('Time (s),Photodiode (V)', (i) => `${i},${1 + i / 100}`, 80);
    for (const reader of [warmUpReader, waveformReader]) {
      const it = read(bytes, {}, reader as never);
      expect(dataOf(it)).toMatchObject({ isIrradiance: false, unit: 'V' });
      expect(codes(it)).toContain('log-relative');
    }
    expect(faultOf(read(bytes)).found).toContain('V');
  });
});

describe('what is wrong with a log', () => {
  const head = 'Time (s),E (mW/cm2)';
  const good = (i: number) => `${i / 5},${40 + i}`;
  test.each([
    ['empty', '', 'an empty file', undefined],
    ['a head alone', `${head}\n`, 'no row of numbers', undefined],
    ['one row', `${head}\n0,41\n`, 'one row of readings', undefined],
    ['too few rows', table(head, good, 5), '5 rows of readings', undefined],
    [
      'times that fall',
      table(head, (i) => (i === 6 ? '0.1,44' : good(i))),
      'an earlier time than in the row before',
      8,
    ],
    ['a time twice', table(head, (i) => (i === 6 ? '1,44' : good(i))), 'the same time as in the row before', 8],
    ['NaN', table(head, (i) => (i === 6 ? '1.2,NaN' : good(i))), '“NaN” in column 2', 8],
    ['a lost cell', table(head, (i) => (i === 6 ? '1.2' : good(i))), 'a row without a value in column 2', 8],
    ['negative light', table(head, (i) => (i === 6 ? '1.2,-7' : good(i))), 'a reading of -7', 8],
    [
      'two units',
      table('Time (s),E,Unit', (i) => `${good(i)},${i < 6 ? 'mW/cm2' : 'W/m2'}`),
      'rows in “mW/cm2” and “W/m2”',
      undefined,
    ],
    ['no unit', table('Time (s),E', good), 'readings without a unit', undefined],
    ['a unit of something else', table('Time (s),E (lux)', good), 'readings in “lux”', undefined],
    [
      'a workbook',
      new Uint8Array([0x50, 0x4b, 3, 4, 0, 0, 0, 1]),
      'a workbook or archive, whatever its name says',
      undefined,
    ],
  ])('%s', (_, bytes, found, line) => {
    expect(faultOf(read(bytes))).toMatchObject({ found, ...(line !== undefined && { line }) });
  });

  test('light below nothing at all is refused in a warm-up log, and taken in a record of flicker', () => {
    const bytes = table('Time (s),V', (i) => `${i / 1000},${i === 3 ? -0.5 : 1}`, 80);
    expect(faultOf(read(bytes, {}, warmUpReader as never)).line).toBe(5);
    expect(dataOf(read(bytes, {}, waveformReader as never)).series.values[3]).toBe(-0.5);
  });
});

test('whatever bytes a log has, there are data or a fault', () => {
  const real = readFileSync(join(DEMO_FOLDER, 'panels/ruddlestone-r150/grid-run.csv')).subarray(0, 600);
  const change = fc.tuple(fc.nat(real.length - 1), fc.nat(255));
  fc.assert(
    fc.property(fc.array(change, { maxLength: 12 }), fc.nat(real.length), (changes, end) => {
      const bytes = Uint8Array.from(real);
      for (const [i, byte] of changes) bytes[i] = byte;
      const it = read(bytes.subarray(0, end));
      if ('fault' in it) expect(it.fault.found.length).toBeGreaterThan(0);
      else {
        expect(it.data.series.times.length).toBe(it.data.series.values.length);
        expect(it.data.series.values.every(Number.isFinite)).toBe(true);
      }
    }),
    { ...RUNS, numRuns: 60 },
  );
});

test.each([
  ['sweep-both.csv', sweepReader, 0.9],
  ['warm-up.csv', warmUpReader, 0.9],
  ['light-both.tsv', waveformReader, 0.8],
] as const)('%s of the demonstration is recognised', (name, reader, confidence) => {
  const path = join(DEMO_FOLDER, 'panels/ruddlestone-r150', name);
  const bytes = new Uint8Array(readFileSync(path));
  const all = [sweepReader, warmUpReader, waveformReader].map(
    (it) => [it.kind, it.recognise({ path, name, bytes, size: bytes.length })?.confidence ?? 0] as const,
  );
  const [best] = all.toSorted((a, b) => b[1] - a[1]);
  expect(best?.[0]).toBe(reader.kind);
  expect(best?.[1]).toBeGreaterThanOrEqual(confidence);
});
