/** Readings as they are read back aloud: digit by digit, since fifteen and fifty sound alike in a noisy room. */

/** One of them, and several. */
type Spoken = readonly [one: string, many: string];
const by = (one: string): Spoken => [one, `${one}s`];
const per = (unit: Spoken, of: string): Spoken => [`${unit[0]} per ${of}`, `${unit[1]} per ${of}`];

const SQUARE_CM = 'square centimetre';
const SQUARE_M = 'square metre';

/** Every unit that readings are written in, by its plain spelling; a test holds it against those that are read. */
const UNITS: Readonly<Record<string, Spoken>> = {
  cm: by('centimetre'),
  mm: by('millimetre'),
  m: by('metre'),
  in: ['inch', 'inches'],
  inch: ['inch', 'inches'],
  inches: ['inch', 'inches'],
  '"': ['inch', 'inches'],
  ft: ['foot', 'feet'],
  nm: by('nanometre'),
  um: by('micrometre'),
  'mW/cm2': per(by('milliwatt'), SQUARE_CM),
  'uW/cm2': per(by('microwatt'), SQUARE_CM),
  'W/cm2': per(by('watt'), SQUARE_CM),
  'W/m2': per(by('watt'), SQUARE_M),
  'mW/m2': per(by('milliwatt'), SQUARE_M),
  'uW/m2': per(by('microwatt'), SQUARE_M),
  W: by('watt'),
  mW: by('milliwatt'),
  kW: by('kilowatt'),
  s: by('second'),
  sec: by('second'),
  ms: by('millisecond'),
  min: by('minute'),
  h: by('hour'),
  Hz: ['hertz', 'hertz'],
  kHz: ['kilohertz', 'kilohertz'],
  MHz: ['megahertz', 'megahertz'],
  GHz: ['gigahertz', 'gigahertz'],
  T: ['tesla', 'tesla'],
  mT: ['millitesla', 'millitesla'],
  uT: ['microtesla', 'microtesla'],
  nT: ['nanotesla', 'nanotesla'],
  G: ['gauss', 'gauss'],
  mG: ['milligauss', 'milligauss'],
  'V/m': per(by('volt'), 'metre'),
  'kV/m': per(by('kilovolt'), 'metre'),
  'mV/m': per(by('millivolt'), 'metre'),
  dB: by('decibel'),
  dBA: by('decibel'),
  'dB(A)': by('decibel'),
  '%': ['percent', 'percent'],
  percent: ['percent', 'percent'],
  deg: by('degree'),
  '°': by('degree'),
  degrees: by('degree'),
  rad: by('radian'),
  C: ['degree Celsius', 'degrees Celsius'],
  '°C': ['degree Celsius', 'degrees Celsius'],
  degC: ['degree Celsius', 'degrees Celsius'],
  F: ['degree Fahrenheit', 'degrees Fahrenheit'],
  '°F': ['degree Fahrenheit', 'degrees Fahrenheit'],
  kg: by('kilogram'),
  g: by('gram'),
  lb: by('pound'),
  oz: by('ounce'),
};

const SIGNS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'].map((it, i) => [`${i}`, it]),
  ),
  '.': 'point',
  '-': 'minus',
  '+': 'plus',
  '<': 'less than',
  '>': 'more than',
  '/': 'over',
};

const READING = /^(?<bound>[<>]?)\s*(?<number>[+-]?[\d. /]*\d\.?)(?:e(?<exponent>[+-]?\d+))?\s*(?<unit>.*)$/i;

/**
 * A reading as it is said: `41.2 mW/cm2` is “four one point two milliwatts per square centimetre”, `<0.1 uT` “less than
 * zero point one microtesla”. A unit that there are no words for is said as it stands; so is what is no number.
 */
export function spokenReading(written: string): string {
  const { bound = '', number, exponent, unit = '' } = READING.exec(written.trim())?.groups ?? {};
  if (number === undefined) return written.trim();
  const power = exponent === undefined ? [] : ['times ten to the', signs(exponent.replace('+', ''))];
  const isOne = exponent === undefined && /^\+?1$/.test(number.trim());
  return [signs(bound), signs(number), ...power, unitWords(unit, isOne)].filter((it) => it !== '').join(' ');
}

/** Sign by sign; a whole number before a fraction is joined to it. */
const signs = (text: string) =>
  text
    .trim()
    .replace(/^(\d+) (?=\d+\/)/, '$1 and ')
    .split(/(and)|/)
    .map((it) => (it && Object.hasOwn(SIGNS, it) ? SIGNS[it] : it?.trim()))
    .filter((it) => it)
    .join(' ');

function unitWords(unit: string, isOne: boolean): string {
  const plain = unit
    .replace(/[\u00b5\u03bc]/g, 'u')
    .replace(/\u00b2|\^2/g, '2')
    .replace(/\s+/g, '');
  const words = Object.hasOwn(UNITS, plain) ? UNITS[plain] : undefined;
  return words ? words[isOne ? 0 : 1] : unit.trim();
}
