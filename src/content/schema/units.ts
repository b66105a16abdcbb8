import { CM_PER_INCH } from '../../measure/unit-factors.ts';
import { ownField } from './block.ts';

/**
 * The quantities that content may state, each with one canonical unit and the spellings that are read.
 * A spelling is matched after `normaliseUnit`, so `µT`, `uT` and `μT`, or `mW/cm²` and `mW/cm^2`, are one.
 */
export interface QuantityKind {
  /** In words, as error messages name it: "an irradiance". */
  name: string;
  /** Canonical unit, as figures carry it. */
  canonical: string;
  /** A spelling of the canonical unit that is plain to type. */
  typed: string;
  /** Factor from each accepted unit to the canonical one; `offset` is added after the factor (temperatures). */
  units: Readonly<Record<string, { factor: number; offset?: number }>>;
}

const by = (factors: Record<string, number>): QuantityKind['units'] =>
  Object.fromEntries(Object.entries(factors).map(([unit, factor]) => [unit, { factor }]));

export const QUANTITIES = {
  length: {
    name: 'a length',
    canonical: 'cm',
    typed: 'cm',
    units: by({
      cm: 1,
      mm: 0.1,
      m: 100,
      in: CM_PER_INCH,
      inch: CM_PER_INCH,
      inches: CM_PER_INCH,
      '"': CM_PER_INCH,
      ft: 12 * CM_PER_INCH,
    }),
  },
  wavelength: { name: 'a wavelength', canonical: 'nm', typed: 'nm', units: by({ nm: 1, um: 1000 }) },
  irradiance: {
    name: 'an irradiance',
    canonical: 'mW/cm²',
    typed: 'mW/cm2',
    units: by({ 'mW/cm2': 1, 'W/m2': 0.1, 'uW/cm2': 0.001, 'W/cm2': 1000 }),
  },
  power: { name: 'a power', canonical: 'W', typed: 'W', units: by({ W: 1, mW: 0.001, kW: 1000 }) },
  time: {
    name: 'a time',
    canonical: 's',
    typed: 's',
    units: by({ s: 1, sec: 1, min: 60, h: 3600, ms: 0.001 }),
  },
  frequency: { name: 'a frequency', canonical: 'Hz', typed: 'Hz', units: by({ Hz: 1, kHz: 1e3, MHz: 1e6, GHz: 1e9 }) },
  magnetic: {
    name: 'a magnetic flux density',
    canonical: 'µT',
    typed: 'uT',
    // 1 mG = 0.1 uT = 100 nT.
    units: by({ uT: 1, nT: 0.001, mT: 1000, T: 1e6, mG: 0.1, G: 100 }),
  },
  electric: {
    name: 'an electric field',
    canonical: 'V/m',
    typed: 'V/m',
    units: by({ 'V/m': 1, 'kV/m': 1000, 'mV/m': 0.001 }),
  },
  radio: {
    name: 'a radio power density',
    canonical: 'mW/m²',
    typed: 'mW/m2',
    units: by({ 'mW/m2': 1, 'uW/m2': 0.001, 'W/m2': 1000, 'uW/cm2': 10, 'mW/cm2': 10000 }),
  },
  sound: { name: 'a sound level', canonical: 'dB(A)', typed: 'dB(A)', units: by({ 'dB(A)': 1, dBA: 1, dB: 1 }) },
  percent: { name: 'a percentage', canonical: '%', typed: '%', units: by({ '%': 1, percent: 1 }) },
  angle: {
    name: 'an angle',
    canonical: '°',
    typed: 'deg',
    units: by({ deg: 1, '°': 1, degrees: 1, rad: 180 / Math.PI }),
  },
  temperature: {
    name: 'a temperature',
    canonical: '°C',
    typed: 'C',
    units: {
      C: { factor: 1 },
      '°C': { factor: 1 },
      degC: { factor: 1 },
      F: { factor: 5 / 9, offset: -160 / 9 },
      '°F': { factor: 5 / 9, offset: -160 / 9 },
    },
  },
  mass: {
    name: 'a mass',
    canonical: 'kg',
    typed: 'kg',
    units: by({ kg: 1, g: 0.001, lb: 0.45359237, oz: 0.028349523125 }),
  },
} as const satisfies Record<string, QuantityKind>;

export type QuantityName = keyof typeof QUANTITIES;
const QUANTITY_NAMES = Object.keys(QUANTITIES) as QuantityName[];

/** Words for units, as people write them out; capitals and a plural's s do not count. */
export const UNIT_WORDS: Readonly<Record<string, string>> = {
  ...{ centimetre: 'cm', centimeter: 'cm', millimetre: 'mm', millimeter: 'mm', metre: 'm', meter: 'm' },
  ...{ inch: 'in', inches: 'in', foot: 'ft', feet: 'ft', nanometre: 'nm', nanometer: 'nm' },
  ...{ second: 's', minute: 'min', hour: 'h', hr: 'h', min: 'min', sec: 's', millisecond: 'ms' },
  ...{ watt: 'W', kilowatt: 'kW', milliwatt: 'mW', hertz: 'Hz', kilohertz: 'kHz', megahertz: 'MHz' },
  ...{ microtesla: 'uT', nanotesla: 'nT', milligauss: 'mG', gauss: 'G', decibel: 'dB', percent: '%', pct: '%' },
  ...{ degree: 'deg', kilogram: 'kg', kilo: 'kg', gram: 'g', pound: 'lb', lb: 'lb', ounce: 'oz', celsius: 'C' },
};

/** The unit that a word stands for; what is no such word comes back as it is. */
function unitOfWord(word: string): string {
  const lower = word.toLowerCase();
  return ownField(UNIT_WORDS, lower) ?? ownField(UNIT_WORDS, lower.replace(/s$/, '')) ?? word;
}

/** Signs that keyboards give for a plain one: micro signs, superscripts, curly quotes. */
export const UNIT_SIGNS: ReadonlyArray<{ plain: string; pattern: string }> = [
  { plain: 'u', pattern: '[\u00b5\u03bc]' },
  { plain: '2', pattern: '\u00b2|\\^2' },
  { plain: '"', pattern: '[\u201c\u201d\u2033]' },
];

const SIGNS = UNIT_SIGNS.map(({ plain, pattern }) => ({ plain, pattern: new RegExp(pattern, 'g') }));

/** One spelling for the many that keyboards give; spaces do not count. */
export function normaliseUnit(unit: string): string {
  const plain = SIGNS.reduce((text, it) => text.replace(it.pattern, it.plain), unit.trim());
  return plain.replace(/\s+/g, '');
}

/** The accepted unit that a text stands for, words for units included; what is none comes back with plain signs. */
export function acceptedUnit(written: string, units: QuantityKind['units']): string {
  const unit = normaliseUnit(written);
  return [unit, unitOfWord(unit)].find((it) => Object.hasOwn(units, it)) ?? unit;
}

/** The quantity a unit belongs to, other than `but`; used to say what a wrong unit would have measured. */
export function quantityOfUnit(unit: string, but: QuantityName): QuantityName | undefined {
  return QUANTITY_NAMES.find((name) => {
    const { units } = QUANTITIES[name];
    return name !== but && Object.hasOwn(units, acceptedUnit(unit, units));
  });
}
