import type { AnyReadFile } from '../../content/read/files/file-kind.ts';
import { MODE_KEYS, type ModeKey, type Session } from '../../content/schema/session.ts';
import { type FigureOrGap, isFigure } from '../../measure/figure.ts';
import type { ModeLight } from '../../measure/instrument/spectral-response.ts';
import { mismatchFigure, mixedFactor } from '../../measure/spectrum/mismatch-figure.ts';
import { bandsOf } from '../reading-figures.ts';
import { bandsOfSpectra, type SpectraContext, spectrumReadings } from './spectra-readings.ts';

/** What the light of each mode of a session is taken to be, and how it is known. */
export interface SessionModes {
  bands: Readonly<Record<ModeKey, ModeLight>>;
  /** Of each mode whose spectrum was taken, and of both channels where both of theirs were: the meter's factor. */
  factors: ReadonlyMap<ModeKey, FigureOrGap>;
}

/**
 * How the light of each mode is shared out, by its spectrum or else by the channels' readings, and what the irradiance
 * meter's readings of it are multiplied by. The factor needs the spectrum's shape alone, so it may have been taken from
 * another distance.
 */
export function modesOf(files: readonly AnyReadFile[], context: SpectraContext & { session: Session }): SessionModes {
  const { id, session, guide, instrumentFor } = context;
  const meter = instrumentFor('irradiance');
  const factors = new Map<ModeKey, FigureOrGap>(
    spectrumReadings(files, context).map(({ key, reading }) => [key, mismatchFigure(reading, meter)]),
  );
  if (!factors.has('combined') && factors.size > 0) {
    const channel = (key: 'red' | 'nearInfrared') => ({ read: session.peak?.[key]?.value, factor: factors.get(key) });
    factors.set('combined', mixedFactor(id, [channel('red'), channel('nearInfrared')]));
  }
  const shares: Record<ModeKey, ModeLight> = { ...bandsOf(session), ...bandsOfSpectra(files, guide) };
  const light = (mode: ModeKey): ModeLight => {
    const factor = factors.get(mode);
    if (!factor) return factors.size > 0 ? { ...shares[mode], uncorrected: WITHOUT_SPECTRUM } : shares[mode];
    return { ...shares[mode], ...(isFigure(factor) ? { mismatch: factor } : { uncorrected: factor.reason }) };
  };
  const [red, nearInfrared, combined] = MODE_KEYS.map(light) as [ModeLight, ModeLight, ModeLight];
  return { bands: { red, nearInfrared, combined }, factors };
}

const WITHOUT_SPECTRUM = { code: 'mode-without-spectrum' } as const;
