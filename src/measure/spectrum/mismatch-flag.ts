import type { Flag } from '../figure.ts';
import type { Instrument } from '../instrument/instrument.ts';
import { bandComponents, type ModeLight } from '../instrument/spectral-response.ts';
import type { MetricId } from '../metrics.ts';
import type { Mode } from '../modes.ts';
import { combinedUncertainty, coverageFactor } from '../uncertainty.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** The correction, and the most that the errors stated for the bands allow with 95 %: fractions of the reading. */
    'mismatch-beyond-stated': { instrument: string; mode: Mode; moved: number; stated: number };
    'raise-spectral-response': object;
  }
}

/**
 * A correction that is larger than what the instrument's own file says of its errors in the bands, at 95 %: one of the two
 * is wrong, and panels without a spectrum carry the smaller one in their intervals.
 *
 * @param field where the session names the spectrum
 */
export function mismatchBeyondStated(
  mode: Mode,
  light: ModeLight,
  meter: Instrument | undefined,
  field: readonly PropertyKey[],
): Flag[] {
  const { mismatch, red, nearInfrared } = light;
  if (!mismatch || !meter) return [];
  const lit = [
    red > 0 && meter.spectralResponse?.red === undefined,
    nearInfrared > 0 && meter.spectralResponse?.nearInfrared === undefined,
  ];
  if (lit.some((it) => it)) return [];
  const u = combinedUncertainty(bandComponents(meter, 1, { red, nearInfrared }).map((it) => it.contribution));
  const stated = coverageFactor(Number.POSITIVE_INFINITY) * u;
  const moved = mismatch.value - 1;
  if (Math.abs(moved) <= stated) return [];
  const concerns: MetricId[] = [`mismatch-factor-${mode}`, `peak-irradiance-${mode}`];
  return [
    {
      check: 'mismatch-beyond-stated',
      severity: 'note',
      finding: { code: 'mismatch-beyond-stated', instrument: meter.name, mode, moved, stated },
      hint: { code: 'raise-spectral-response' },
      concerns,
      at: ['session', ...field],
      isNotHandedOn: true,
    },
  ];
}
