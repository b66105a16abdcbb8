import { addMonths } from 'date-fns/addMonths';
import { formatISO } from 'date-fns/formatISO';
import { parseISO } from 'date-fns/parseISO';
import type { Content } from '../content/read/content.ts';
import {
  type Calibration,
  INSTRUMENT_KINDS,
  type InstrumentQuantity,
  quantityId,
  quantityOf,
} from '../content/schema/instrument.ts';
import { instrumentUnit } from '../content/schema/instrument-units.ts';
import type { Session } from '../content/schema/session.ts';
import type { AngularResponse } from '../measure/instrument/angular-response.ts';
import type { Instrument } from '../measure/instrument/instrument.ts';
import type { Statement } from '../measure/statement.ts';
import { dayRead } from './day-read.ts';
import type { UsedInstrument } from './ledger.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    /** No calibration counts for a session. */
    'calibrated-later': { first: string };
  }
}

/** Calibrations of an instrument's quantity, newest first. */
export function calibrationsOf(instrument: InstrumentQuantity): Calibration[] {
  return instrument.calibrations.toSorted((a, b) => b.date.localeCompare(a.date));
}

/** The calibration that counts on a day: the newest one of that day or before; undefined before the first. */
export function calibrationOn(instrument: InstrumentQuantity, day: string): Calibration | undefined {
  return calibrationsOf(instrument).find((it) => it.date <= day);
}

/**
 * What an instrument file says of one quantity, as the calculation sees it on a day: standard uncertainties, canonical units, fractions. A day
 * before the first calibration gives an instrument that says so, and whose readings have no known uncertainty.
 *
 * @param id of the quantity: see `quantityId`
 * @param day of the session
 */
export function instrumentOf(id: string, instrument: InstrumentQuantity, day: string): Instrument {
  const calibration = calibrationOn(instrument, day);
  const known = made.get(instrument) ?? new Map<string, Instrument>();
  made.set(instrument, known);
  const name = `${id}@${calibration?.date ?? ''}`;
  const found = known.get(name) ?? makeInstrument(id, instrument, calibration);
  known.set(name, found);
  return found;
}

/** One object for all readings of an instrument under one calibration: a thousand panels are read with the same few. */
const made = new WeakMap<InstrumentQuantity, Map<string, Instrument>>();

function makeInstrument(id: string, instrument: InstrumentQuantity, calibration: Calibration | undefined): Instrument {
  const { factor, offset = 0 } = instrumentUnit(instrument) ?? { factor: Number.NaN };
  const { spectralResponse, angularResponse, repeatability, repeatabilityDecibels, range } = instrument;
  const { responsivity, bandwidth, powerError } = instrument;
  return {
    id,
    name: instrument.name.charAt(0).toLowerCase() + instrument.name.slice(1),
    response: instrument.response,
    ...calibrated(instrument, calibration, factor),
    resolution: instrument.resolution * factor,
    range: { from: range.from * factor + offset, to: range.to * factor + offset },
    ...(spectralResponse && { spectralResponse: fractions(spectralResponse) }),
    ...(angularResponse && { angularResponse: angularOf(angularResponse) }),
    ...(responsivity && { responsivity: responsivityOf(responsivity) }),
    ...(bandwidth !== undefined && { bandwidth: bandwidth.value }),
    ...(powerError !== undefined && { powerError: powerError / 100 }),
    ...(repeatability !== undefined && { repeatability: repeatability / 100 }),
    ...(repeatabilityDecibels !== undefined && { repeatabilityDecibels }),
  };
}

function calibrated(instrument: InstrumentQuantity, calibration: Calibration | undefined, factor: number) {
  if (!calibration) {
    const first = calibrationsOf(instrument).at(-1);
    if (!first) throw new Error(`${instrument.name}: an instrument without a calibration was let through`);
    const absent: Statement = { code: 'calibrated-later', first: first.date };
    return {
      calibrationAbsent: absent,
      calibrationDate: '',
      calibrationRelative: 0,
      calibrationAbsolute: 0,
      calibrationStated: { relative: 0, absolute: 0, unit: instrument.unit, coverageFactor: 1 },
    };
  }
  const { date, relative, absolute, coverageFactor } = calibration;
  return {
    calibrationDate: date,
    calibrationRelative: relative / 100 / coverageFactor,
    calibrationAbsolute: (absolute * factor) / coverageFactor,
    calibrationStated: { relative, absolute, unit: instrument.unit, coverageFactor },
  };
}

function fractions({ red, nearInfrared }: NonNullable<InstrumentQuantity['spectralResponse']>) {
  return {
    ...(red !== undefined && { red: red / 100 }),
    ...(nearInfrared !== undefined && { nearInfrared: nearInfrared / 100 }),
  };
}

function responsivityOf({ calibratedAt, relative, points }: NonNullable<InstrumentQuantity['responsivity']>) {
  return {
    calibratedAt: calibratedAt.value,
    ...(relative !== undefined && { error: relative / 100 }),
    points: points.map(({ wavelength, response }) => ({ wavelength: wavelength.value, response })),
  };
}

function angularOf({ f2, angles = [] }: NonNullable<InstrumentQuantity['angularResponse']>): AngularResponse {
  if (f2 !== undefined) return { kind: 'f2', f2: f2 / 100 };
  const points = angles.map(({ angle, error }) => ({ angle: angle.value, error: error / 100 }));
  return { kind: 'angles', points: points.toSorted((a, b) => a.angle - b.angle) };
}

/**
 * The instruments behind a session's figures, each with the calibration that counts for its readings: that of the day on
 * which they were taken.
 *
 * @param own the session as it stands in the file
 * @param used the same with what it carries over in its place
 */
export function usedInstruments(own: Session, used: Session, instruments: Content['instruments']): UsedInstrument[] {
  return INSTRUMENT_KINDS.flatMap((kind): UsedInstrument[] => {
    const instrument = instruments.get(used.instruments[kind] ?? '');
    if (!instrument) return [];
    const { id, data } = instrument;
    const quantity = quantityOf(data, kind);
    if (!quantity) return [];
    const readOn = dayRead(own, kind);
    const calibration = calibrationOn(quantity, readOn);
    return [
      {
        kind,
        id,
        quantityId: quantityId(id, data, kind),
        name: quantity.name,
        readOn,
        calibration: calibration && { ...calibration, due: calibrationDue(calibration) },
        unit: quantity.unit,
      },
    ];
  });
}

/** The last day on which a calibration holds. */
export function calibrationDue(calibration: Calibration): string {
  const { date, validMonths } = calibration;
  const known = dues.get(calibration);
  if (known !== undefined) return known;
  const due = formatISO(addMonths(parseISO(date), validMonths), { representation: 'date' });
  dues.set(calibration, due);
  return due;
}

/** Asked for by every session: a thousand panels are read under the same few calibrations. */
const dues = new WeakMap<Calibration, string>();
