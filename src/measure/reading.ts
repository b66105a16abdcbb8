import type { Bound, Figure } from './figure.ts';
import { obliqueError } from './instrument/angular-response.ts';
import { correctedMeter, correctionInput, correctionNotes, correctionOf } from './instrument/corrected-reading.ts';
import {
  calibrationComponents,
  type Instrument,
  instrumentAbsence,
  isCalibrated,
  missingRepeatability,
  repeatabilityComponents,
  resolutionComponents,
} from './instrument/instrument.ts';
import { type ModeLight, SHARES_UNKNOWN } from './instrument/spectral-response.ts';
import { type DistanceSetting, litField } from './irradiance/distance-setting.ts';
import { lightComponents, missingOfLight } from './irradiance/light-errors.ts';
import { identityOf, type ListedMetricId } from './metrics.ts';
import { number } from './numbers.ts';
import type { Statement } from './statement.ts';
import { makeFigure } from './uncertainty.ts';

declare module './statement.ts' {
  interface StatementData {
    /** Below the first step of the display, or past its end. */
    'reading-is-bound': { bound: Bound };
  }
}

/** One value read off an instrument. */
export interface InstrumentReading {
  metric: ListedMetricId;
  /** As it was read, in the metric's unit. */
  value: number;
  bound?: Bound;
  /** `<panel>/<date>`. */
  session: string;
  /** Path of the reading in the panel's file. */
  path: string;
  instrument: Instrument | undefined;
  /** Given for light: distance setting, oblique light and the sensor's response to each band then count. */
  distance?: DistanceSetting;
  /** How the light is shared out, all of it in either band where it is left out, and what its readings are corrected by. */
  bands?: ModeLight;
  notes?: Statement[];
  /** Why there is no instrument, where it is not the session's omission. */
  noInstrument?: Statement;
}

/** A reading as a figure: calibration, resolution and repeatability of its instrument make its uncertainty. */
export function readingFigure(reading: InstrumentReading): Figure {
  const { metric, session, distance, bands = SHARES_UNKNOWN } = reading;
  const instrument = correctedMeter(reading.instrument, bands);
  const factor = correctionOf(bands);
  const value = factor * reading.value;
  const identity = {
    ...identityOf(metric, session),
    basis: 'measured' as const,
    inputs: [reading.path, ...correctionInput(bands)],
    ...(reading.bound && { bound: reading.bound }),
    notes: [...(reading.notes ?? []), ...correctionNotes(bands)],
    ...(bands.mismatch && {
      calculation: `E = F × E_read = ${number(factor)} × ${number(reading.value)} mW/cm² = ${number(value)} mW/cm²`,
    }),
  };
  if (reading.bound) {
    return makeFigure(identity, value, { absent: { code: 'reading-is-bound', bound: reading.bound } });
  }
  if (!isCalibrated(instrument)) {
    return makeFigure(identity, value, {
      absent: (!instrument && reading.noInstrument) || instrumentAbsence(instrument),
    });
  }
  const oblique = (light: DistanceSetting) =>
    instrument.angularResponse ? obliqueError(instrument.angularResponse, litField(light)) * value : 0;
  return makeFigure(identity, value, {
    budget: [
      ...(distance
        ? lightComponents({ instrument, session, distance, bands }, value, oblique(distance))
        : calibrationComponents(instrument, value)),
      ...resolutionComponents(instrument, identity.id),
      ...repeatabilityComponents(instrument, identity.id, value),
    ],
    unassessed: [...(distance ? missingOfLight(instrument, bands) : []), ...missingRepeatability(instrument)],
  });
}
