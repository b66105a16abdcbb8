import type { Statement } from '../statement.ts';
import type { Instrument } from './instrument.ts';
import type { ModeLight } from './spectral-response.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** What the readings were multiplied by. */
    'corrected-for-spectrum': { factor: number };
    /** A spectrum was taken, and its meter's readings stand as they were read. */
    'not-corrected-for-spectrum': { reason: Statement };
  }
}

/** A meter as its readings stand once they are multiplied by the factor: its steps, its offset and its range grow alike. */
export function correctedMeter<Meter extends Instrument | undefined>(
  meter: Meter,
  light: ModeLight | undefined,
): Meter {
  const factor = light?.mismatch?.value;
  if (!meter || factor === undefined) return meter;
  const { range } = meter;
  return {
    ...meter,
    calibrationAbsolute: meter.calibrationAbsolute * factor,
    resolution: meter.resolution * factor,
    ...(range && { range: { from: range.from * factor, to: range.to * factor } }),
  };
}

/** What readings of some light are multiplied by: 1 where nothing is corrected. */
export function correctionOf(light: ModeLight | undefined): number {
  return light?.mismatch?.value ?? 1;
}

/** Id of the factor among the inputs of what is made of corrected readings; none where nothing is corrected. */
export function correctionInput(light: ModeLight | undefined): string[] {
  return light?.mismatch ? [light.mismatch.id] : [];
}

/** What is told beside a reading of light whose spectrum was taken. */
export function correctionNotes(light: ModeLight | undefined): Statement[] {
  if (light?.mismatch) return [{ code: 'corrected-for-spectrum', factor: light.mismatch.value }];
  return light?.uncorrected ? [{ code: 'not-corrected-for-spectrum', reason: light.uncorrected }] : [];
}
