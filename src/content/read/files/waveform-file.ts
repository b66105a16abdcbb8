import { FEWEST_SAMPLES } from '../../../measure/waveform/flicker-waveform.ts';
import { SERIES_ENDINGS, type WaveformEntry } from '../../schema/files/time-series.ts';
import type { FileReader } from './file-kind.ts';
import { recogniseSeries } from './recognise-series.ts';
import { readSeries, type SeriesFile } from './time-series-table.ts';

declare module './file-kind.ts' {
  interface BenchFileData {
    waveform: SeriesFile;
  }
  interface BenchFileEntry {
    waveform: WaveformEntry;
  }
}

/** A record of flicker, one for each mode. */
export const waveformReader: FileReader<'waveform'> = {
  kind: 'waveform',
  called: 'a flicker waveform (light against time)',
  places: [
    { path: ['waveforms', 'red'], words: 'flicker, red alone' },
    { path: ['waveforms', 'nearInfrared'], words: 'flicker, near-infrared alone' },
    { path: ['waveforms', 'combined'], words: 'flicker, both channels' },
  ],
  endings: SERIES_ENDINGS,
  // Below zero it may go: the measure says whether darkness lies where the file has it.
  read: (file, entry) => readSeries(file, entry, { fewest: FEWEST_SAMPLES, isOfLight: false }),
  recognise: (head) => recogniseSeries(head, 'waveform'),
};
