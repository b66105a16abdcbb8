import { type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import { type Instrument, instrumentAbsence, isCalibrated, NO_INSTRUMENT } from '../instrument/instrument.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { linearFigure, makeFigure } from '../uncertainty.ts';
import { meanResponse, mismatchFactor, responseAt } from './mismatch.ts';
import { mismatchBudget } from './mismatch-budget.ts';
import type { SpectrumReading } from './reading.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** The broadband meter's file says nothing of how it answers to each wavelength, or not over all of the light. */
    'responsivity-not-stated': object;
    'responsivity-too-short': { instrument: string };
    'mode-without-spectrum': object;
  }
}

/** Significant digits of factors, which lie near one. */
const DIGITS = 5;

/**
 * Spectral mismatch correction factor of the meter for the light of a mode, by which its readings of that light are
 * multiplied: see `mismatchFactor`. A gap says why they stand as they were read: nothing is stated of the meter, the
 * light goes on where nothing is stated or beyond the spectrum, or one end of the spectrum can't be held against the
 * other.
 *
 * @param meter the broadband meter, as it was calibrated on the day
 */
export function mismatchFigure(reading: SpectrumReading, meter: Instrument | undefined): FigureOrGap {
  const { analysis, session, mode, path, instrument } = reading;
  const metric = `mismatch-factor-${mode}` as const;
  const response = meter?.responsivity;
  const why = refused(reading, meter);
  if (why || !meter || !response) return gap(metric, why ?? { code: 'responsivity-not-stated' });
  if (!isCalibrated(instrument)) return gap(metric, instrumentAbsence(instrument));
  const factor = mismatchFactor(analysis.spectrum, response.points, response.calibratedAt);
  if (factor === undefined) return gap(metric, { code: 'responsivity-too-short', instrument: meter.name });
  const at = number(responseAt(response.points, response.calibratedAt) ?? Number.NaN, DIGITS);
  const seen = number(meanResponse(analysis.spectrum, response.points) ?? Number.NaN, DIGITS);
  return makeFigure(
    {
      ...identityOf(metric, session),
      basis: 'derived',
      inputs: [path],
      calculation: `F = s(${number(response.calibratedAt)} nm) ÷ mean s = ${at} ÷ ${seen} = ${number(factor, DIGITS)}`,
    },
    factor,
    mismatchBudget(reading, meter, response, factor),
  );
}

function refused({ analysis, scale }: SpectrumReading, meter: Instrument | undefined): Statement | undefined {
  if (!meter) return NO_INSTRUMENT;
  if (!meter.responsivity) return { code: 'responsivity-not-stated' };
  if (analysis.faults.flat) return { code: 'spectrum-full' };
  if (scale === 'counts') return { code: 'spectrum-raw-counts' };
  const [cut] = analysis.faults.cut;
  if (cut) return { code: 'spectrum-cut-off', at: cut.at };
  return analysis.total > 0 && analysis.peaks.length > 0 ? undefined : { code: 'spectrum-without-light' };
}

/** What a channel alone reads, and the factor for its light. */
export interface ChannelRead {
  /** As the meter showed it, mW/cm². */
  read: number | undefined;
  factor: FigureOrGap | undefined;
}

/**
 * The factor with both channels on from those of each alone, where no spectrum was taken with both: their readings, each
 * times its factor, over the readings. Holds as far as the channels shine with both on in the proportion of each alone.
 *
 * @returns a gap with the reason where a channel has no factor or was not read
 */
export function mixedFactor(session: string, channels: readonly [ChannelRead, ChannelRead]): FigureOrGap {
  const metric = 'mismatch-factor-combined';
  const all = channels.reduce((sum, it) => sum + (it.read ?? 0), 0);
  const terms: Array<{ figure: Figure; sensitivity: number }> = [];
  for (const { read, factor } of channels) {
    if (!read || !isFigure(factor)) {
      return gap(metric, factor && !isFigure(factor) ? factor.reason : { code: 'mode-without-spectrum' });
    }
    terms.push({ figure: factor, sensitivity: read / all });
  }
  const parts = channels.map((it) => `${number(it.read ?? 0)} × ${number(isFigure(it.factor) ? it.factor.value : 1)}`);
  const value = terms.reduce((sum, it) => sum + it.sensitivity * it.figure.value, 0);
  const calculation = `F = (${parts.join(' + ')}) ÷ ${number(all)} = ${number(value, DIGITS)}`;
  return linearFigure({ ...identityOf(metric, session), basis: 'derived', calculation }, terms);
}
