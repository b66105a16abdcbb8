import type { QuantityName } from '../../../src/content/schema/units.ts';
import type { CheckValue } from '../../references/check-value.ts';

/** One value in one accepted unit. */
export interface Conversion {
  quantity: QuantityName;
  /** As it is typed. */
  unit: string;
  value: number;
}

const SI = 'SI prefixes, SI Brochure (from memory)';
const YARD =
  'international yard and pound agreement of 1959; NIST SP 811, B.8, gives the same factors, the pound rounded (from memory)';
const CGS = '1 G = 1e-4 T, NIST SP 811, B.8 (from memory); prefixes';
const FAHRENHEIT = 't/°C = (t/°F − 32) / 1.8, NIST SP 811, B.8 (from memory)';
const NAME = 'another spelling of the same unit';
const RADIAN = '1 rad = 180/π degrees, by definition';
const LEVEL = 'a level is taken as A-weighted, which its field says';

type Row = readonly [QuantityName, string, number, number, string];

/**
 * Exact conversions of one value a unit, worked out by hand from the definitions. 2.5 and the like instead of 1
 * where a unit is its own canonical unit, so that a lost number shows.
 */
const ROWS: readonly Row[] = [
  ['length', 'cm', 15.24, 15.24, SI],
  ['length', 'mm', 25, 2.5, SI],
  ['length', 'm', 0.3, 30, SI],
  ['length', 'in', 6, 15.24, `1 in = 2.54 cm exactly, ${YARD}`],
  ['length', 'inch', 1, 2.54, `1 in = 2.54 cm exactly, ${YARD}`],
  ['length', 'inches', 12, 30.48, `1 in = 2.54 cm exactly, ${YARD}`],
  ['length', '"', 0.5, 1.27, `1 in = 2.54 cm exactly, ${YARD}`],
  ['length', 'ft', 1, 30.48, `1 ft = 12 in = 30.48 cm exactly, ${YARD}`],
  ['wavelength', 'nm', 660, 660, SI],
  ['wavelength', 'um', 0.85, 850, SI],
  ['irradiance', 'mW/cm2', 41, 41, SI],
  ['irradiance', 'W/m2', 1, 0.1, `1 W/m2 = 1000 mW / 10000 cm2 = 0.1 mW/cm2, ${SI}`],
  ['irradiance', 'uW/cm2', 41000, 41, SI],
  ['irradiance', 'W/cm2', 0.041, 41, SI],
  ['power', 'W', 92.1, 92.1, SI],
  ['power', 'mW', 200, 0.2, SI],
  ['power', 'kW', 0.9, 900, SI],
  ['time', 's', 90, 90, SI],
  ['time', 'sec', 90, 90, NAME],
  ['time', 'min', 45, 2700, '1 min = 60 s, SI Brochure, table 8 (from memory)'],
  ['time', 'h', 1.5, 5400, '1 h = 3600 s, SI Brochure, table 8 (from memory)'],
  ['time', 'ms', 250, 0.25, SI],
  ['frequency', 'Hz', 100, 100, SI],
  ['frequency', 'kHz', 65, 65000, SI],
  ['frequency', 'MHz', 2.4, 2400000, SI],
  ['frequency', 'GHz', 2.4, 2400000000, SI],
  ['magnetic', 'uT', 0.31, 0.31, SI],
  ['magnetic', 'nT', 20, 0.02, SI],
  ['magnetic', 'mT', 0.2, 200, SI],
  ['magnetic', 'T', 0.0001, 100, SI],
  ['magnetic', 'mG', 3, 0.3, CGS],
  ['magnetic', 'G', 1, 100, CGS],
  ['electric', 'V/m', 36, 36, SI],
  ['electric', 'kV/m', 5, 5000, SI],
  ['electric', 'mV/m', 500, 0.5, SI],
  ['radio', 'mW/m2', 0.005, 0.005, SI],
  ['radio', 'uW/m2', 5, 0.005, SI],
  ['radio', 'W/m2', 10, 10000, SI],
  ['radio', 'uW/cm2', 1, 10, `1 uW/cm2 = 10000 uW/m2 = 10 mW/m2, ${SI}`],
  ['radio', 'mW/cm2', 1, 10000, `1 mW/cm2 = 10000 mW/m2, ${SI}`],
  ['sound', 'dB(A)', 44, 44, LEVEL],
  ['sound', 'dBA', 44, 44, LEVEL],
  ['sound', 'dB', 44, 44, LEVEL],
  ['percent', '%', 38.8, 38.8, NAME],
  ['percent', 'percent', 38.8, 38.8, NAME],
  ['angle', 'deg', 60, 60, NAME],
  ['angle', '°', 60, 60, NAME],
  ['angle', 'degrees', 60, 60, NAME],
  ['angle', 'rad', 1, 57.29577951308232, RADIAN],
  ['temperature', 'C', 20.5, 20.5, NAME],
  ['temperature', '°C', 20.5, 20.5, NAME],
  ['temperature', 'degC', 20.5, 20.5, NAME],
  ['temperature', 'F', 68, 20, FAHRENHEIT],
  ['temperature', 'F', 32, 0, FAHRENHEIT],
  ['temperature', 'F', 98.6, 37, FAHRENHEIT],
  ['temperature', 'F', -40, -40, FAHRENHEIT],
  ['temperature', '°F', 212, 100, FAHRENHEIT],
  ['mass', 'kg', 4.1, 4.1, SI],
  ['mass', 'g', 480, 0.48, SI],
  ['mass', 'lb', 1, 0.45359237, `1 lb = 0.45359237 kg exactly, ${YARD}`],
  ['mass', 'oz', 1, 0.028349523125, `1 oz = 1 lb / 16 exactly, ${YARD}`],
];

export const CONVERSIONS: readonly CheckValue<Conversion>[] = ROWS.map(([quantity, unit, value, expected, source]) => ({
  label: `${value} ${unit} of ${quantity}`,
  arguments: { quantity, unit, value },
  expected,
  tolerance: 1e-12 * Math.max(1, Math.abs(expected)),
  because: 'the definitions are exact; only binary fractions are not',
  source,
  verified: 'memory',
}));
