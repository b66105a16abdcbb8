import type { BudgetComponent, Unassessed } from '../figure.ts';
import { rectangular } from '../uncertainty.ts';
import type { AngularResponse } from './angular-response.ts';

/**
 * What the calculation needs to know of a meter. Relative values are fractions of the reading, absolute ones
 * are in the canonical unit of what the meter reads; all are standard uncertainties (k = 1).
 */
export interface Instrument {
  id: string;
  name: string;
  /** What it responds to, in its file's words. */
  response?: string;
  /** Why no calibration counts for the readings; they then have no known uncertainty. */
  calibrationAbsent?: string;
  /** Day of the calibration that counts: a new one is a new error. Empty where there is none. */
  calibrationDate: string;
  calibrationRelative: number;
  calibrationAbsolute: number;
  /** How the two were stated: "5 % at k = 2". */
  calibrationStated: string;
  /** Smallest step of the display. */
  resolution: number;
  /** Lowest and highest value that the display shows. */
  range?: { from: number; to: number };
  /** Errors of the sensor in each band, beyond the calibration; an irradiance meter's. */
  spectralResponse?: { red?: number; nearInfrared?: number };
  angularResponse?: AngularResponse;
  repeatability?: number;
  /** The same in dB; a sound meter's. */
  repeatabilityDecibels?: number;
}

/** Why a reading has no uncertainty: said in the figure. */
export const NO_INSTRUMENT = 'the session does not name the meter';

/** Whether the uncertainty of readings is known: their meter is named, and one of its calibrations counts for them. */
export function isCalibrated(instrument: Instrument | undefined): instrument is Instrument {
  return instrument !== undefined && instrument.calibrationAbsent === undefined;
}

/** Why it is not. */
export function instrumentAbsence(instrument: Instrument | undefined): string {
  return instrument?.calibrationAbsent ?? NO_INSTRUMENT;
}

/** Whether a value, in the canonical unit, lies in the range of the display, ends included; a meter without one has no bounds. */
export function isWithinRange(instrument: Pick<Instrument, 'range'>, value: number): boolean {
  return !instrument.range || (value >= instrument.range.from && value <= instrument.range.to);
}

/**
 * Whether a value lies below the first step of the display: then it says no more than "below one step", and is a bound.
 * Not for levels in dB and temperatures, whose nought is a convention.
 */
export function isBelowFirstStep(instrument: Pick<Instrument, 'resolution'>, value: number): boolean {
  return value < instrument.resolution;
}

/** Errors of the calibration: one for all that the meter reads until the next one. */
export function calibrationComponents(instrument: Instrument, value: number): BudgetComponent[] {
  const lines: BudgetComponent[] = [];
  const base = { type: 'B', distribution: 'normal', degreesOfFreedom: Number.POSITIVE_INFINITY } as const;
  if (instrument.calibrationRelative > 0) {
    lines.push({
      source: {
        ...base,
        key: `${instrument.id}@${instrument.calibrationDate}/calibration`,
        what: `Calibration of the ${instrument.name}`,
        evaluation: `calibration of ${instrument.calibrationDate}: ${instrument.calibrationStated}, normal; common to all that it read until the next one`,
      },
      contribution: instrument.calibrationRelative * value,
    });
  }
  if (instrument.calibrationAbsolute > 0) {
    lines.push({
      source: {
        ...base,
        key: `${instrument.id}@${instrument.calibrationDate}/offset`,
        what: `Offset of the ${instrument.name}`,
        evaluation: `stated with the calibration of ${instrument.calibrationDate}, normal; common to all that it read until the next one`,
      },
      contribution: instrument.calibrationAbsolute,
    });
  }
  return lines;
}

/**
 * Rounding to the display's step: rectangular, half a step either way (JCGM 100:2008, F.2.2.1).
 *
 * @param share how much of it reaches the figure: 1 for one reading, 1/sqrt n for a mean of n
 */
export function resolutionComponents(instrument: Instrument, key: string, share = 1): BudgetComponent[] {
  if (instrument.resolution === 0) return [];
  return [
    {
      source: {
        key: `${key}/resolution`,
        what: `Resolution of the ${instrument.name}`,
        type: 'B',
        distribution: 'rectangular',
        degreesOfFreedom: Number.POSITIVE_INFINITY,
        evaluation:
          share === 1
            ? 'half a step either way, rectangular'
            : 'half a step either way a reading, rectangular, averaged over the points',
      },
      contribution: rectangular(instrument.resolution / 2) * share,
    },
  ];
}

/**
 * Oblique light near a panel. The angular error is the meter's own, but how much of it shows depends on the
 * panel and the distance, so it is taken as one error a session and not as one of the meter.
 *
 * @param error that the oblique light makes of the value, in its unit: see `obliqueError`
 */
export function angularComponents(instrument: Instrument, session: string, error: number): BudgetComponent[] {
  const { angularResponse } = instrument;
  if (angularResponse === undefined) return [];
  const stated =
    angularResponse.kind === 'f2'
      ? `f2 of ${percent(angularResponse.f2)}`
      : `errors at ${angularResponse.points.map((it) => `${it.angle}°`).join(', ')}`;
  return [
    {
      source: {
        key: `${session}/angular`,
        what: 'Angular (cosine) response of the meter',
        type: 'B',
        distribution: 'normal',
        degreesOfFreedom: Number.POSITIVE_INFINITY,
        evaluation: `${stated} in the instrument file, at the angles from which an even, wide field lights the meter; normal`,
      },
      contribution: error,
    },
  ];
}

/** Repeatability from the instrument file, where the session has no repeats of its own. */
export function repeatabilityComponents(
  instrument: Instrument,
  key: string,
  value: number,
  share = 1,
): BudgetComponent[] {
  const { repeatability, repeatabilityDecibels } = instrument;
  const scatter = repeatabilityDecibels ?? (repeatability ?? 0) * value;
  if (scatter === 0) return [];
  const stated =
    repeatabilityDecibels === undefined
      ? `${percent(repeatability ?? 0)} of the reading`
      : `${repeatabilityDecibels} dB`;
  return [
    {
      source: {
        key: `${key}/repeatability`,
        what: REPEATABILITY,
        type: 'B',
        distribution: 'normal',
        degreesOfFreedom: Number.POSITIVE_INFINITY,
        evaluation: `${stated}, from the instrument file: no repeats in the session`,
      },
      contribution: scatter * share,
    },
  ];
}

/** What budgets call the scatter of readings; a difference looks for it. */
export const REPEATABILITY = 'Repeatability';

/** Said where a meter's file is silent, so that the omission shows. */
export function missingRepeatability(instrument: Instrument): Unassessed[] {
  return instrument.repeatability === undefined && instrument.repeatabilityDecibels === undefined
    ? [
        {
          what: REPEATABILITY,
          reason: `no repeats were taken, and how readings scatter is not known for the ${instrument.name}`,
        },
      ]
    : [];
}

/** Said where the angular response is not known. */
export function missingAngular(instrument: Instrument): Unassessed[] {
  return instrument.angularResponse === undefined
    ? [{ what: 'Angular (cosine) response', reason: `not stated for the ${instrument.name}` }]
    : [];
}

function percent(fraction: number): string {
  return `${Number((fraction * 100).toPrecision(3))} %`;
}
