import { SERIES_ENDINGS, type SweepEntry } from '../../schema/files/time-series.ts';
import type { FileReader } from './file-kind.ts';
import { recogniseSeries } from './recognise-series.ts';
import { readSeries, type SeriesFile } from './time-series-table.ts';

declare module './file-kind.ts' {
  interface BenchFileData {
    sweep: SeriesFile;
  }
  interface BenchFileEntry {
    sweep: SweepEntry;
  }
}

/** Rows in a sweep, at least. */
const FEWEST = 10;

/** Irradiance against time while the sensor is moved over the face, or set from point to point. */
export const sweepReader: FileReader<'sweep'> = {
  kind: 'sweep',
  called: 'a sweep (irradiance against time)',
  places: [{ path: ['sweeps', '*'], words: 'a sweep over the face, or a grid in one go' }],
  endings: SERIES_ENDINGS,
  read: (file, entry) => readSeries(file, entry, { fewest: FEWEST, isOfLight: true, lowest: -0.02 }),
  recognise: (head) => recogniseSeries(head, 'sweep'),
};
