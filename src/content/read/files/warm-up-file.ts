import { SERIES_ENDINGS, type WarmUpLogEntry } from '../../schema/files/time-series.ts';
import type { FileReader } from './file-kind.ts';
import { recogniseSeries } from './recognise-series.ts';
import { readSeries, type SeriesFile } from './time-series-table.ts';

declare module './file-kind.ts' {
  interface BenchFileData {
    warmUp: SeriesFile;
  }
  interface BenchFileEntry {
    warmUp: WarmUpLogEntry;
  }
}

/** Rows in a warm-up log, at least. */
const FEWEST = 10;

/** The panel's light from cold, against time. */
export const warmUpReader: FileReader<'warmUp'> = {
  kind: 'warmUp',
  called: 'a warm-up log (light against time from cold)',
  places: [{ path: ['warmUpLog'], words: 'the light from cold, the sensor not moved' }],
  endings: SERIES_ENDINGS,
  read: (file, entry) => readSeries(file, entry, { fewest: FEWEST, isOfLight: false, lowest: 0 }),
  recognise: (head) => recogniseSeries(head, 'warmUp'),
};
