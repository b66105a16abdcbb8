import type { Contribution, Unassessed } from './figure.ts';
import { rectangular } from './uncertainty.ts';

/**
 * What the calculation needs to know of a meter. Relative values are fractions of the reading, absolute ones
 * are in the canonical unit of what the meter reads; all are standard uncertainties (k = 1).
 */
export interface Meter {
  id: string;
  name: string;
  /** What it responds to, in its file's words. */
  response?: string;
  /** Day of the calibration: a new one is a new error. */
  calibrationDate: string;
  calibrationRelative: number;
  calibrationAbsolute: number;
  /** How the two were stated: "5 % at k = 2". */
  calibrationStated: string;
  /** Smallest step of the display. */
  resolution: number;
  angularResponse?: number;
  repeatability?: number;
}

/** Why a reading has no uncertainty: said in the figure. */
export const NO_METER = 'the session does not name the meter';

/** Errors of the calibration: one for all that the meter reads until the next one. */
export function calibrationLines(meter: Meter, value: number): Contribution[] {
  const lines: Contribution[] = [];
  const base = { type: 'B', distribution: 'normal', degreesOfFreedom: Number.POSITIVE_INFINITY } as const;
  if (meter.calibrationRelative > 0) {
    lines.push({
      ...base,
      key: `${meter.id}@${meter.calibrationDate}/calibration`,
      source: `Calibration of the ${meter.name}`,
      contribution: meter.calibrationRelative * value,
      evaluation: `${meter.calibrationStated}, normal; common to all that it read`,
    });
  }
  if (meter.calibrationAbsolute > 0) {
    lines.push({
      ...base,
      key: `${meter.id}@${meter.calibrationDate}/offset`,
      source: `Offset of the ${meter.name}`,
      contribution: meter.calibrationAbsolute,
      evaluation: 'stated with the calibration, normal; common to all that it read',
    });
  }
  return lines;
}

/**
 * Rounding to the display's step: rectangular, half a step either way (JCGM 100:2008, F.2.2.1).
 *
 * @param share how much of it reaches the figure: 1 for one reading, 1/sqrt n for a mean of n
 */
export function resolutionLine(meter: Meter, key: string, share = 1): Contribution[] {
  if (meter.resolution === 0) return [];
  return [
    {
      key: `${key}/resolution`,
      source: `Resolution of the ${meter.name}`,
      type: 'B',
      contribution: rectangular(meter.resolution / 2) * share,
      distribution: 'rectangular',
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      evaluation:
        share === 1
          ? 'half a step either way, rectangular'
          : 'half a step either way a reading, rectangular, averaged over the points',
    },
  ];
}

/**
 * Oblique light near a panel. The angular error is the meter's own, but how much of it shows depends on the
 * panel and the distance, so it is taken as one error a session and not as one of the meter.
 */
export function angularLine(meter: Meter, session: string, value: number): Contribution[] {
  if (meter.angularResponse === undefined) return [];
  return [
    {
      key: `${session}/angular`,
      source: 'Angular (cosine) response of the meter',
      type: 'B',
      contribution: meter.angularResponse * value,
      distribution: 'normal',
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      evaluation: `${percent(meter.angularResponse)} of the reading, from the instrument file, normal`,
    },
  ];
}

/** Repeatability from the instrument file, where the session has no repeats of its own. */
export function repeatabilityLine(meter: Meter, key: string, value: number, share = 1): Contribution[] {
  if (!meter.repeatability) return [];
  return [
    {
      key: `${key}/repeatability`,
      source: 'Repeatability',
      type: 'B',
      contribution: meter.repeatability * value * share,
      distribution: 'normal',
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      evaluation: `${percent(meter.repeatability)} of the reading, from the instrument file: no repeats in the session`,
    },
  ];
}

/** Said where a meter's file is silent, so that the omission shows. */
export function missingRepeatability(meter: Meter): Unassessed[] {
  return meter.repeatability === undefined
    ? [{ source: 'Repeatability', reason: `no repeats were taken and none is stated for the ${meter.name}` }]
    : [];
}

/** Said where the angular response is not known. */
export function missingAngular(meter: Meter): Unassessed[] {
  return meter.angularResponse === undefined
    ? [{ source: 'Angular (cosine) response', reason: `not stated for the ${meter.name}` }]
    : [];
}

function percent(fraction: number): string {
  return `${Number((fraction * 100).toPrecision(3))} %`;
}
