import { type AnyReadFile, filesOf, type ReadFile } from '../../content/read/files/file-kind.ts';
import type { Guide } from '../../content/schema/guide.ts';
import { MODE_KEYS, type ModeKey } from '../../content/schema/session.ts';
import type { BandShares } from '../../measure/instrument/spectral-response.ts';
import type { DistanceSetting } from '../../measure/irradiance/distance-setting.ts';
import { sameDistance } from '../../measure/irradiance/same-distance.ts';
import { analysed, partSum, type SpectrumAnalysis } from '../../measure/spectrum/analysis.ts';
import { type BandEdges, bandShares } from '../../measure/spectrum/bands.ts';
import { INFRARED_BAND } from '../../measure/spectrum/infrared-sum.ts';
import type { SpectrumReading } from '../../measure/spectrum/reading.ts';
import { type InstrumentFinder, MODE_IDS } from '../reading-figures.ts';

/** A spectrum of a session with its file. */
export interface TakenSpectrum {
  file: ReadFile<'spectrum'>;
  key: ModeKey;
  reading: SpectrumReading;
  /** It was taken from where the session's light was read. */
  isHere: boolean;
}

/** What spectra were taken with. */
export interface SpectraContext {
  /** `<panel>/<date>` */
  id: string;
  guide: Guide;
  instrumentFor: InstrumentFinder;
  distance: DistanceSetting;
}

/** The spectra of a session with what they were taken with, in the order of the modes. */
export function spectrumReadings(files: readonly AnyReadFile[], context: SpectraContext): TakenSpectrum[] {
  return inModes(files).map(({ file, key }): TakenSpectrum => {
    const at = file.entry.distance?.value ?? context.distance.distance;
    return {
      file,
      key,
      isHere: sameDistance(at, context.distance.distance),
      reading: {
        session: context.id,
        mode: MODE_IDS[key],
        path: `${context.id}/spectra.${key}`,
        scale: file.data().scale,
        analysis: analysisOf(file),
        instrument: context.instrumentFor('spectrum'),
        distance: { ...context.distance, distance: at },
        edges: bandEdges(context.guide),
      },
    };
  });
}

function inModes(files: readonly AnyReadFile[]): Array<{ file: ReadFile<'spectrum'>; key: ModeKey }> {
  const byMode = new Map(filesOf(files, 'spectrum').map((it) => [it.field[1], it]));
  return MODE_KEYS.flatMap((key) => {
    const file = byMode.get(key);
    return file ? [{ file, key }] : [];
  });
}

/** Edges of the guide's bands, nm. */
export function bandEdges({ spectrumBands: { red, nearInfrared } }: Guide): BandEdges {
  const span = (it: typeof red) => ({ from: it.from.value, to: it.to.value });
  return { red: span(red), nearInfrared: span(nearInfrared) };
}

const analyses = new WeakMap<object, SpectrumAnalysis>();

/** What is found in a file's spectrum, worked out once. */
export function analysisOf(file: ReadFile<'spectrum'>): SpectrumAnalysis {
  const known = analyses.get(file) ?? analysed(file.data().spectrum);
  analyses.set(file, known);
  return known;
}

/** Share of the light with near-infrared alone on that lies in the band of the infrared limit; undefined where no spectrum tells it. */
export function infraredShare(files: readonly AnyReadFile[]): number | undefined {
  const file = inModes(files).find((it) => it.key === 'nearInfrared')?.file;
  if (!file || file.data().scale === 'counts') return undefined;
  const analysis = analysisOf(file);
  const { cut, flat } = analysis.faults;
  if (cut.length > 0 || flat || !(analysis.total > 0)) return undefined;
  return Math.min(1, Math.max(0, partSum(analysis, INFRARED_BAND).value / analysis.total));
}

/**
 * How the light of each mode is shared out between the two bands, by its spectrum; modes without one that can tell are left
 * out. What lies in neither is counted in with both in their proportion, since a meter's error is stated for the two.
 */
export function bandsOfSpectra(files: readonly AnyReadFile[], guide: Guide): Partial<Record<ModeKey, BandShares>> {
  return Object.fromEntries(
    inModes(files).flatMap(({ file, key }) => {
      const analysis = analysisOf(file);
      const { cut, flat } = analysis.faults;
      if (file.data().scale === 'counts' || cut.length > 0 || flat) return [];
      const shares = bandShares(analysis, bandEdges(guide));
      const [red = 0, nearInfrared = 0] = [shares?.red.value, shares?.['near-infrared'].value];
      const both = red + nearInfrared;
      return both > 0 ? [[key, { red: red / both, nearInfrared: nearInfrared / both }]] : [];
    }),
  );
}
