/**
 * Writes a log of 100 MB, reads it and works out a sweep of it, and prints how long that took and how much memory the process
 * has had at most:
 *
 *     npx node tests/bench/log-memory.ts [megabytes]
 */
import { closeSync, mkdtempSync, openSync, rmSync, statSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sweepReader } from '../../src/content/read/files/sweep-file.ts';
import { sweep } from '../../src/measure/log/sweep.ts';

const MEGA = 1e6;
const wanted = Number(process.argv[2] ?? 100) * MEGA;
const folder = mkdtempSync(join(tmpdir(), 'log-memory-'));
const path = join(folder, 'sweep.csv');
try {
  const file = openSync(path, 'w');
  writeSync(file, 'Time (s),Irradiance (mW/cm2)\n');
  let bytes = 0;
  for (let i = 0; bytes < wanted; ) {
    let text = '';
    for (let k = 0; k < 20_000; k++, i++)
      text += `${(i / 100).toFixed(2)},${(50 + 30 * Math.sin(i / 3e4)).toFixed(3)}\n`;
    bytes += writeSync(file, text);
  }
  closeSync(file);
  const before = performance.now();
  const read = sweepReader.read({ path, name: 'sweep.csv', bytes: statSync(path).size }, { file: 'sweep.csv' });
  if ('fault' in read) throw new Error(JSON.stringify(read.fault));
  const afterReading = performance.now();
  const peak = () => `${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MiB at most`;
  const rows = read.data.series.times.length;
  console.log(
    `${(statSync(path).size / MEGA).toFixed(0)} MB, ${rows} rows: read in ${((afterReading - before) / 1e3).toFixed(1)} s, ${peak()}`,
  );
  const { hovers, maximum } = sweep(read.data.series);
  console.log(
    `worked out in ${((performance.now() - afterReading) / 1e3).toFixed(1)} s, ${peak()}: ${hovers.length} hovers, highest ${maximum}`,
  );
} finally {
  rmSync(folder, { recursive: true });
}
