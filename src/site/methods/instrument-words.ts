import type { Calibration, InstrumentKind, InstrumentQuantity } from '../../content/schema/instrument.ts';
import { calibrationDue } from '../../ledger/instruments.ts';
import { showDate, unitSigns } from '../../words/format.ts';
import { statedUncertainty } from '../../words/stated-uncertainty.ts';

/** One line of an instrument's history. */
export interface CalibrationLine {
  date: string;
  due: string;
  uncertainty: string;
  reference: string;
}

/** What an instrument reads, in words. */
export const KIND_WORDS: Readonly<Record<InstrumentKind, string>> = {
  irradiance: 'irradiance',
  spectrum: 'wavelength',
  mains: 'mains power',
  magnetic: 'magnetic field',
  electric: 'electric field',
  radio: 'radio field',
  sound: 'sound level',
  flicker: 'flicker',
  length: 'length',
  temperature: 'temperature',
};

/** From the lowest to the highest reading of its display. */
export const rangeWords = ({ range, unit }: Pick<InstrumentQuantity, 'range' | 'unit'>) =>
  `${range.from} to ${range.to} ${unitSigns(unit)}`;

/** A calibration in words. */
export function calibrationLine(calibration: Calibration, unit: string): CalibrationLine {
  return {
    date: showDate(calibration.date),
    due: showDate(calibrationDue(calibration)),
    uncertainty: statedUncertainty({ ...calibration, unit: unitSigns(unit) }),
    reference: calibration.reference,
  };
}

/** How oblique light is misread, or undefined where the file is silent. */
export function angularWords({ angularResponse: it }: InstrumentQuantity): string | undefined {
  if (!it) return undefined;
  if (it.f2 !== undefined) return `f2 of ${it.f2}\u00a0%`;
  const angles = (it.angles ?? []).map(({ angle, error }) => `${error}\u00a0% at ${angle.value}°`);
  return `${angles.join(', ')} (standard uncertainty)`;
}

/** How each band is misread, or undefined where the file is silent. */
export function spectralWords({ spectralResponse: it }: InstrumentQuantity): string | undefined {
  if (!it) return undefined;
  const band = (name: string, error: number | undefined) =>
    error === undefined ? `${name} not assessed` : `${name} ${error}\u00a0%`;
  return `${band('red', it.red)}, ${band('near-infrared', it.nearInfrared)} (standard uncertainty)`;
}

/** How readings scatter, or undefined where the file is silent. */
export function repeatabilityWords({ repeatability, repeatabilityDecibels }: InstrumentQuantity): string | undefined {
  if (repeatabilityDecibels !== undefined) return `${repeatabilityDecibels}\u00a0dB (standard deviation)`;
  return repeatability === undefined ? undefined : `${repeatability}\u00a0% (standard deviation)`;
}
