import type { Bound, Figure, Unit } from './figure.ts';
import { obliqueError } from './instrument/angular-response.ts';
import {
  angularLine,
  calibrationLines,
  isCalibrated,
  type Meter,
  meterAbsence,
  missingAngular,
  missingRepeatability,
  repeatabilityLine,
  resolutionLine,
} from './instrument/instrument.ts';
import { type BandShares, missingSpectral, SHARES_UNKNOWN, spectralLines } from './instrument/spectral-response.ts';
import { type DistanceSetting, distanceLine, litField } from './irradiance/distance-setting.ts';
import { methodReference } from './method-versions.ts';
import { makeFigure } from './uncertainty.ts';

/** One value read off a meter. */
export interface MeterReading {
  metric: string;
  methodId: string;
  unit: Unit;
  /** In the unit. */
  value: number;
  bound?: Bound;
  /** `<panel>/<date>`. */
  session: string;
  /** Path of the reading in the panel's file. */
  path: string;
  meter: Meter | undefined;
  /** Given for light: distance setting, oblique light and the sensor's response to each band then count. */
  distance?: DistanceSetting;
  /** How much of the light lies in each band; all of it in either where it is left out. */
  bands?: BandShares;
  notes?: string[];
  /** Why there is no meter, where it is not the session's omission. */
  noMeter?: string;
}

/** A reading as a figure: calibration, resolution and repeatability of its meter make its uncertainty. */
export function readingFigure(reading: MeterReading): Figure {
  const { metric, meter, session, value, distance, bands = SHARES_UNKNOWN } = reading;
  const identity = {
    id: `${session}/${metric}`,
    metric,
    unit: reading.unit,
    basis: 'measured' as const,
    method: methodReference(reading.methodId),
    inputs: [reading.path],
    ...(reading.bound && { bound: reading.bound }),
    ...(reading.notes && { notes: reading.notes }),
  };
  if (reading.bound) {
    return makeFigure(identity, value, { absent: `the reading is a bound: ${reading.bound} the meter's reach` });
  }
  if (!isCalibrated(meter)) {
    return makeFigure(identity, value, { absent: (!meter && reading.noMeter) || meterAbsence(meter) });
  }
  const oblique = (light: DistanceSetting) =>
    meter.angularResponse ? obliqueError(meter.angularResponse, litField(light)) * value : 0;
  return makeFigure(identity, value, {
    budget: [
      ...calibrationLines(meter, value),
      ...(distance
        ? [
            ...spectralLines(meter, value, bands),
            ...distanceLine(distance, session, value),
            ...angularLine(meter, session, oblique(distance)),
          ]
        : []),
      ...resolutionLine(meter, identity.id),
      ...repeatabilityLine(meter, identity.id, value),
    ],
    unassessed: [
      ...(distance ? [...missingSpectral(meter, bands), ...missingAngular(meter)] : []),
      ...missingRepeatability(meter),
    ],
  });
}
