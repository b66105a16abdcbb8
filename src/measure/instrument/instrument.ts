import type { BudgetComponent, ErrorSource, Unassessed } from '../figure.ts';
import { isCode, type Statement } from '../statement.ts';
import { rectangular, typeB } from '../uncertainty.ts';
import type { AngularResponse } from './angular-response.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Why a reading has no uncertainty. */
    'instrument-not-named': object;
    /** Errors of an instrument, and how they were come by. */
    calibration: { instrument: string };
    'calibration-as-stated': { date: string; stated: StatedUncertainty };
    offset: { instrument: string };
    'offset-as-stated': { date: string };
    resolution: { instrument: string };
    'half-step': object;
    'half-step-averaged': object;
    'half-step-each': object;
    'angular-response': object;
    'angular-as-stated': { response: AngularResponse };
    repeatability: object;
    /** As fraction of the reading, or in decibels. */
    'repeatability-as-stated': { relative: number } | { decibels: number };
    /** Where an instrument's file is silent. */
    'scatter-not-known': { instrument: string };
    'cosine-response': object;
    'not-stated-for': { instrument: string };
  }
}

/** What a calibration promises, as it was stated: in percent, in the unit of the display, at a coverage factor. */
export interface StatedUncertainty {
  /** % of the reading */
  relative: number;
  /** In `unit`. */
  absolute: number;
  unit: string;
  coverageFactor: number;
}

/**
 * What the calculation needs to know of an instrument. Relative values are fractions of the reading, absolute ones
 * are in the canonical unit of what it reads; all are standard uncertainties (k = 1).
 */
export interface Instrument {
  id: string;
  name: string;
  /** What it responds to, in its file's words. */
  response?: string;
  /** Why no calibration counts for the readings; they then have no known uncertainty. */
  calibrationAbsent?: Statement;
  /** Day of the calibration that counts: a new one is a new error. Empty where there is none. */
  calibrationDate: string;
  calibrationRelative: number;
  calibrationAbsolute: number;
  /** How the two were stated. */
  calibrationStated: StatedUncertainty;
  /** Resolution: the smallest step of the display. */
  resolution: number;
  /** Lowest and highest value that the display shows. */
  range?: { from: number; to: number };
  /** Errors of the sensor in each band, beyond the calibration; an irradiance instrument's. */
  spectralResponse?: { red?: number; nearInfrared?: number };
  angularResponse?: AngularResponse;
  /** How a broadband meter answers to each wavelength, and what it was calibrated at, nm. */
  responsivity?: {
    points: readonly { wavelength: number; response: number }[];
    calibratedAt: number;
    /** Standard uncertainty of each response against that at `calibratedAt`, as fraction. */
    error?: number;
  };
  /** Width of a spectrometer's slit function at half its height, nm. */
  bandwidth?: number;
  /** Standard uncertainty of a spectrometer's spectral irradiance, as fraction; without one it is not calibrated in power. */
  powerError?: number;
  repeatability?: number;
  /** The same in dB; a sound instrument's. */
  repeatabilityDecibels?: number;
}

/** Why a reading has no uncertainty. */
export const NO_INSTRUMENT: Statement = { code: 'instrument-not-named' };

/** Whether the uncertainty of readings is known: their instrument is named, and one of its calibrations counts for them. */
export function isCalibrated(instrument: Instrument | undefined): instrument is Instrument {
  return instrument !== undefined && instrument.calibrationAbsent === undefined;
}

/** Why it is not. */
export function instrumentAbsence(instrument: Instrument | undefined): Statement {
  return instrument?.calibrationAbsent ?? NO_INSTRUMENT;
}

/** Errors of the calibration: one for all that the instrument reads until the next one. */
export function calibrationComponents(instrument: Instrument, value: number): BudgetComponent[] {
  const { relative, absolute } = calibrationSources(instrument);
  const components: BudgetComponent[] = [];
  if (relative) components.push({ source: relative, contribution: instrument.calibrationRelative * value });
  if (absolute) components.push({ source: absolute, contribution: instrument.calibrationAbsolute });
  return components;
}

/** The two errors of a calibration, where they are not nought. */
interface CalibrationSources {
  relative: ErrorSource | undefined;
  absolute: ErrorSource | undefined;
}

/** One object each for all readings of an instrument. */
const sourcesOf = new WeakMap<Instrument, CalibrationSources>();

function calibrationSources(instrument: Instrument): CalibrationSources {
  const known = sourcesOf.get(instrument);
  if (known) return known;
  const { id, name, calibrationDate: date, calibrationStated: stated } = instrument;
  const made = {
    relative:
      instrument.calibrationRelative > 0
        ? typeB({
            key: `${id}@${date}/calibration`,
            what: { code: 'calibration', instrument: name },
            distribution: 'normal',
            evaluation: { code: 'calibration-as-stated', date, stated },
          })
        : undefined,
    absolute:
      instrument.calibrationAbsolute > 0
        ? typeB({
            key: `${id}@${date}/offset`,
            what: { code: 'offset', instrument: name },
            distribution: 'normal',
            evaluation: { code: 'offset-as-stated', date },
          })
        : undefined,
  };
  sourcesOf.set(instrument, made);
  return made;
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
      source: typeB({
        key: `${key}/resolution`,
        what: { code: 'resolution', instrument: instrument.name },
        distribution: 'rectangular',
        evaluation: { code: share === 1 ? 'half-step' : 'half-step-averaged' },
      }),
      contribution: rectangular(instrument.resolution / 2) * share,
    },
  ];
}

/**
 * Oblique light near a panel. The angular error is the instrument's own, and another calibration does not change it, but
 * how much of it shows, and at which angles, depends on the panel: it is one error of the instrument before that panel,
 * in all of its sessions. Between panels nothing of it is taken to be shared, which is the cautious end for their order.
 *
 * @param session `<panel>/<date>`
 * @param error that the oblique light makes of the value, in its unit: see `obliqueError`
 */
export function angularComponents(instrument: Instrument, session: string, error: number): BudgetComponent[] {
  const { angularResponse } = instrument;
  if (angularResponse === undefined) return [];
  return [
    {
      source: typeB({
        key: `${session.split('/')[0]}/${instrument.id}/angular`,
        what: { code: 'angular-response' },
        distribution: 'normal',
        evaluation: { code: 'angular-as-stated', response: angularResponse },
      }),
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
  return [
    {
      source: typeB({
        key: `${key}/repeatability`,
        what: REPEATABILITY,
        distribution: 'normal',
        evaluation: {
          code: 'repeatability-as-stated',
          ...(repeatabilityDecibels === undefined
            ? { relative: repeatability ?? 0 }
            : { decibels: repeatabilityDecibels }),
        },
      }),
      contribution: scatter * share,
    },
  ];
}

/** What budgets call the scatter of readings; a difference looks for it. */
export const REPEATABILITY: Statement = { code: 'repeatability' };

/** The scatter of readings, where no budget holds it; undefined where one does. */
export function unassessedScatter(unassessed: readonly Unassessed[]): Unassessed | undefined {
  return unassessed.find(({ what }) => isCode(what, 'repeatability'));
}

/** Told where an instrument's file is silent, so that the omission shows. */
export function missingRepeatability(instrument: Instrument): Unassessed[] {
  return instrument.repeatability === undefined && instrument.repeatabilityDecibels === undefined
    ? [{ what: REPEATABILITY, reason: { code: 'scatter-not-known', instrument: instrument.name } }]
    : [];
}

/** Told where the angular response is not known. */
export function missingAngular(instrument: Instrument): Unassessed[] {
  return instrument.angularResponse === undefined
    ? [{ what: { code: 'cosine-response' }, reason: { code: 'not-stated-for', instrument: instrument.name } }]
    : [];
}
