import { mkdtempSync, readFileSync, rmSync, truncateSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { GrowingNumbers } from '../../../../src/content/read/files/growing-numbers.ts';
import { readKept, writeKept } from '../../../../src/content/read/files/kept-reading.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kept-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const grown = () => {
  const list = new GrowingNumbers(1e6);
  for (let i = 0; i < 20_000; i++) list.push(Math.sin(i));
  return list.done();
};

test('what a file was read to comes back the same, long lists and short ones', () => {
  const times = grown();
  const data = {
    data: {
      ...{
        series: { times, values: times.subarray(5, 19_000) },
        again: times,
        short: Float32Array.of(1.5, Number.NaN),
      },
      ...{ pixels: new Uint8Array(70_000).fill(7), bytes: Buffer.from('as it is'), empty: new Float64Array() },
    },
    notes: [{ code: 'log-unit', unit: 'W/m²' }],
  };
  const path = join(folder, 'reading');
  writeKept(path, data);
  expect(readKept(path)).toEqual(data);
  // The long lists stand behind the rest: what V8 has written holds none of them.
  const length = readFileSync(path).readUInt32LE();
  expect(length).toBeLessThan(1000);
});

test('what is cut short, or no such file, is an error', () => {
  const path = join(folder, 'reading');
  writeKept(path, { times: grown() });
  truncateSync(path, 100_000);
  expect(() => readKept(path)).toThrow('cut short');
  truncateSync(path, 2);
  expect(() => readKept(path)).toThrow('cut short');
  expect(() => readKept(join(folder, 'none'))).toThrow('ENOENT');
});
