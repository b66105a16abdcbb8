/**
 * A process that reads one file of the bench and works out what it says, and prints as JSON how much memory that took:
 *
 *     node tests/bench/read-log.ts KIND FILE
 */
import { statSync } from 'node:fs';
import type { AnyFileReader } from '../../src/content/read/files/file-kind.ts';
import { FILE_READERS } from '../../src/content/read/files/readers.ts';
import type { SeriesFile } from '../../src/content/read/files/time-series-table.ts';
import { sweep } from '../../src/measure/log/sweep.ts';
import { warmUp } from '../../src/measure/log/warm-up.ts';
import { flickerWaveform } from '../../src/measure/waveform/flicker-waveform.ts';

/** What a log's series is worked out to. */
const WORK: Readonly<Record<string, (file: SeriesFile) => unknown>> = {
  sweep: ({ series }) => sweep(series),
  warmUp: ({ series }) => warmUp(series),
  waveform: ({ series }) => flickerWaveform(series),
};

const [kind = '', path = ''] = process.argv.slice(2);
const peak = () => process.resourceUsage().maxRSS * 1024;
const reader = FILE_READERS.find((it) => it.kind === kind) as AnyFileReader;
const file = { path, name: path, bytes: statSync(path).size };
const atStart = peak();
const start = performance.now();
const read = (reader.read as (...args: unknown[]) => ReturnType<AnyFileReader['read']>)(file, { file: path });
const fault = 'fault' in read ? read.fault.found : undefined;
const afterReading = peak();
if ('data' in read) WORK[kind]?.(read.data as SeriesFile);
console.log(
  JSON.stringify({ atStart, afterReading, peak: peak(), seconds: (performance.now() - start) / 1000, fault }),
);
