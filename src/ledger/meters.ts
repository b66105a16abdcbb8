import { addMonths } from 'date-fns/addMonths';
import { formatISO } from 'date-fns/formatISO';
import { parseISO } from 'date-fns/parseISO';
import type { Meter } from '../measure/meter.ts';
import type { Instrument, InstrumentKind } from '../schema/instrument.ts';
import { normaliseUnit, QUANTITIES, type QuantityName } from '../schema/units.ts';

/** The quantity that each kind of instrument shows on its display. */
export const METER_QUANTITY: Record<InstrumentKind, QuantityName> = {
  irradiance: 'irradiance',
  spectrum: 'wavelength',
  mains: 'power',
  magnetic: 'magnetic',
  electric: 'electric',
  radio: 'radio',
  sound: 'sound',
  flicker: 'percent',
  length: 'length',
  temperature: 'temperature',
};

/** Factor from an instrument's display unit to the canonical one; undefined for a unit of something else. */
export function instrumentUnit(instrument: Instrument): { factor: number } | undefined {
  const { units } = QUANTITIES[METER_QUANTITY[instrument.measures]] as { units: Record<string, { factor: number }> };
  const unit = normaliseUnit(instrument.unit);
  return Object.hasOwn(units, unit) ? units[unit] : undefined;
}

/** An instrument file as the calculation sees it: standard uncertainties, canonical units, fractions. */
export function meterOf(id: string, instrument: Instrument): Meter {
  const factor = instrumentUnit(instrument)?.factor ?? Number.NaN;
  const { relative, absolute, coverageFactor, date } = instrument.calibration;
  const stated = [relative > 0 && `${relative} %`, absolute > 0 && `${absolute} ${instrument.unit}`].filter(Boolean);
  return {
    id,
    name: instrument.name.charAt(0).toLowerCase() + instrument.name.slice(1),
    response: instrument.response,
    calibrationDate: date,
    calibrationRelative: relative / 100 / coverageFactor,
    calibrationAbsolute: (absolute * factor) / coverageFactor,
    calibrationStated: `${stated.join(' and ')} at k = ${coverageFactor}`,
    resolution: instrument.resolution * factor,
    ...(instrument.angularResponse !== undefined && { angularResponse: instrument.angularResponse / 100 }),
    ...(instrument.repeatability !== undefined && { repeatability: instrument.repeatability / 100 }),
  };
}

/** The last day on which an instrument's calibration holds. */
export function calibrationDue(instrument: Instrument): string {
  const { date, validMonths } = instrument.calibration;
  return formatISO(addMonths(parseISO(date), validMonths), { representation: 'date' });
}
