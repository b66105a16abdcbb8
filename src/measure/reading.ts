import { type DistanceSetting, distanceLine } from './distance-setting.ts';
import type { Bound, Figure, Unit } from './figure.ts';
import {
  angularLine,
  calibrationLines,
  type Meter,
  missingAngular,
  missingRepeatability,
  NO_METER,
  repeatabilityLine,
  resolutionLine,
} from './meter.ts';
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
  /** Given for light: distance setting and oblique light then count. */
  distance?: DistanceSetting;
  notes?: string[];
  /** Why there is no meter, where it is not the session's omission. */
  noMeter?: string;
}

/** A reading as a figure: calibration, resolution and repeatability of its meter make its uncertainty. */
export function readingFigure(reading: MeterReading): Figure {
  const { metric, meter, session, value, distance } = reading;
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
  if (!meter) return makeFigure(identity, value, { absent: reading.noMeter ?? NO_METER });
  return makeFigure(identity, value, {
    budget: [
      ...calibrationLines(meter, value),
      ...(distance ? [...distanceLine(distance, session, value), ...angularLine(meter, session, value)] : []),
      ...resolutionLine(meter, identity.id),
      ...repeatabilityLine(meter, identity.id, value),
    ],
    unassessed: [...(distance ? missingAngular(meter) : []), ...missingRepeatability(meter)],
  });
}
