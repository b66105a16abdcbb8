import type { BudgetComponent, Unassessed } from '../figure.ts';
import { angularComponents, calibrationComponents, type Instrument, missingAngular } from '../instrument/instrument.ts';
import { type ModeLight, missingSpectral, spectralComponents } from '../instrument/spectral-response.ts';
import { type DistanceSetting, distanceComponents } from './distance-setting.ts';

/** How light was read. */
export interface LightReading {
  instrument: Instrument;
  /** `<panel>/<date>` */
  session: string;
  distance: DistanceSetting;
  bands: ModeLight;
}

/**
 * Errors that all readings of light in a session share, as they show at a value.
 *
 * @param oblique error of oblique light as it was found, in the value's unit
 */
export function lightComponents(
  { instrument, session, distance, bands }: LightReading,
  value: number,
  oblique: number,
): BudgetComponent[] {
  return [
    ...calibrationComponents(instrument, value),
    ...spectralComponents(instrument, value, bands),
    ...distanceComponents(distance, session, value),
    ...angularComponents(instrument, session, oblique),
  ];
}

/** Which of them the instrument's file says nothing of. */
export function missingOfLight(instrument: Instrument, bands: ModeLight): Unassessed[] {
  return [...missingSpectral(instrument, bands), ...missingAngular(instrument)];
}
