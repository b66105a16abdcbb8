import { type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import type { Instrument } from '../instrument/instrument.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import { makeFigure, productFigure, propagate, typeB } from '../uncertainty.ts';
import { mismatchFactor } from './mismatch.ts';
import type { SpectrumReading } from './reading.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** The broadband meter's file says nothing of how it answers to each wavelength, or not over all of the light. */
    'responsivity-not-stated': object;
    'responsivity-too-short': { instrument: string };
    'spectral-mismatch': { instrument: string };
    /** How far the factor moves with the spectrum's wavelengths and shares. */
    'spectral-mismatch-moved': { factor: number; wavelength: number };
    'mode-not-read': object;
  }
}

/**
 * The highest broadband reading of a mode, corrected for the meter's spectral mismatch by the light's spectrum: times
 * `mismatchFactor`. Uncertain are what the reading is uncertain of, the meter's stated errors in each band among it, and
 * what the spectrum's own error of wavelength makes of the factor.
 *
 * @param broadband the mode's peak irradiance
 * @param meter by which that was read
 */
export function correctedIrradiance(
  reading: SpectrumReading,
  broadband: FigureOrGap | undefined,
  meter: Instrument | undefined,
): FigureOrGap {
  const { analysis, session, mode, path, scale } = reading;
  const metric = `peak-corrected-${mode}` as const;
  if (!broadband || !isFigure(broadband)) return gap(metric, { code: 'mode-not-read' });
  const response = meter?.responsivity;
  if (!meter || !response) return gap(metric, { code: 'responsivity-not-stated' });
  if (analysis.faults.flat) return gap(metric, { code: 'spectrum-full' });
  if (scale === 'counts') return gap(metric, { code: 'spectrum-raw-counts' });
  const factor = mismatchFactor(analysis.spectrum, response.points, response.calibratedAt);
  if (factor === undefined) return gap(metric, { code: 'responsivity-too-short', instrument: meter.name });
  const shift = reading.instrument?.calibrationAbsolute ?? 0;
  const moved = mismatchFactor(shifted(reading, shift), response.points, response.calibratedAt) ?? factor;
  const identity = {
    ...identityOf(metric, session),
    basis: 'derived' as const,
    calculation: `E = ${number(factor)} × ${number(broadband.value)} mW/cm² = ${number(factor * broadband.value)} mW/cm²`,
  };
  const corrected = productFigure(identity, [{ figure: broadband, power: 1 }], factor);
  const apart = Math.abs(moved - factor);
  if (apart === 0 || corrected.standardUncertainty === null)
    return { ...corrected, inputs: [...corrected.inputs, path] };
  const own: Figure = makeFigure({ ...identity, inputs: [path] }, factor, {
    budget: [
      {
        source: typeB({
          key: `${session}/spectral-mismatch-${mode}`,
          what: { code: 'spectral-mismatch', instrument: meter.name },
          distribution: 'normal',
          evaluation: { code: 'spectral-mismatch-moved', factor, wavelength: shift },
        }),
        contribution: apart,
      },
    ],
  });
  const whole = propagate(identity, factor * broadband.value, [
    { figure: broadband, sensitivity: factor },
    { figure: own, sensitivity: broadband.value },
  ]);
  return { ...whole, inputs: [broadband.id, path] };
}

function shifted({ analysis: { spectrum } }: SpectrumReading, by: number) {
  return { ...spectrum, wavelengths: Float64Array.from(spectrum.wavelengths, (nm) => nm + by) };
}
