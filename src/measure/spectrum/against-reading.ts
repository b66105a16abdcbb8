import type { Figure, Flag } from '../figure.ts';
import { jointUncertainty } from '../file-against-typed.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Irradiance by the spectrum and by the meter, mW/cm²; the 95 % uncertainty of their difference. */
    'spectrum-against-reading': { spectrum: number; read: number; joint: number };
    'same-place-for-both': object;
  }
}

/**
 * Holds the irradiance that a spectrum sums up to against what the irradiance meter read in the same mode: odd where they
 * differ by more than the 95 % uncertainty of their difference. The distance is one error that both have.
 *
 * @param read the meter's reading, times its mismatch factor where that is known
 * @param field where the session names the file
 */
export function spectrumAgainstReading(
  spectrum: Figure | undefined,
  read: Figure | undefined,
  field: readonly PropertyKey[],
): Flag[] {
  if (!spectrum || !read || spectrum.bound || read.bound) return [];
  const joint = jointUncertainty(read, spectrum);
  if (joint === undefined || Math.abs(spectrum.value - read.value) <= joint) return [];
  return [
    {
      check: 'spectrum-against-reading',
      severity: 'doubt',
      finding: { code: 'spectrum-against-reading', spectrum: spectrum.value, read: read.value, joint },
      hint: { code: 'same-place-for-both' },
      concerns: [spectrum.metric, read.metric],
      at: ['session', ...field],
      isNotHandedOn: true,
    },
  ];
}
