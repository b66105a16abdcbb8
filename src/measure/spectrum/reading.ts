import type { Instrument } from '../instrument/instrument.ts';
import type { DistanceSetting } from '../irradiance/distance-setting.ts';
import type { Mode } from '../modes.ts';
import type { SpectrumAnalysis } from './analysis.ts';
import type { BandEdges } from './bands.ts';

/** What the values of a spectrum's file are. */
export type SpectrumScale = 'irradiance' | 'relative' | 'counts';

/** A spectrum of one mode with what it was taken with. */
export interface SpectrumReading {
  /** `<panel>/<date>` */
  session: string;
  mode: Mode;
  /** What stands for the file among a figure's inputs. */
  path: string;
  scale: SpectrumScale;
  analysis: SpectrumAnalysis;
  /** The spectrometer; undefined where the session names none. */
  instrument: Instrument | undefined;
  /** From where it was taken. */
  distance: DistanceSetting;
  edges: BandEdges;
}
