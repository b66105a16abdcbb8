import { ownField } from './block.ts';
import { FRACTION_SIGNS } from './number-words.ts';
import { LONGEST, type QuantityLimits } from './quantity.ts';
import { QUANTITIES, type QuantityKind, type QuantityName, UNIT_SIGNS, UNIT_WORDS } from './units.ts';

/** What JSON Schema can say of a quantity: bounds hold for bare numbers, the pattern for texts. */
export interface QuantityKeywords {
  minimum?: number;
  exclusiveMinimum?: number;
  maximum?: number;
  maxLength: number;
  pattern: string;
}

/**
 * The keywords by which an editor accepts what `parseQuantity` reads. A pattern can't calculate: a number beside a unit is
 * held against no limit but its sign, and a fraction's top against its bottom only by the reader.
 */
export function quantityKeywords(name: QuantityName, limits: QuantityLimits = {}): QuantityKeywords {
  const { min, max, positive } = limits;
  return {
    ...(min !== undefined && !(positive && min <= 0) && { minimum: min }),
    ...(positive && { exclusiveMinimum: 0 }),
    ...(max !== undefined && { maximum: max }),
    maxLength: LONGEST,
    pattern: quantityPattern(name, limits),
  };
}

/**
 * A regular expression, of the kind that JSON Schema takes (ECMA-262), for the texts that stand for a quantity: a
 * bound where one may stand, a number or a fraction as rules are read, and a unit as `units.ts` spells them.
 */
export function quantityPattern(name: QuantityName, limits: QuantityLimits = {}): string {
  const { units }: QuantityKind = QUANTITIES[name];
  const keepsSign = Object.values(units).every((it) => (it.offset ?? 0) === 0);
  const bound = limits.bounds === 'below' ? '<?\\s*' : limits.bounds ? '[<>]?\\s*' : '';
  const digits = '(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+\\-]?\\d+)?';
  const number = `${keepsSign ? signPattern(limits) : '[+\\-]?'}${digits}`;
  const glyphs = `(?:\\d+\\s*)?[${FRACTION_SIGNS}]`;
  // After a whole number and a space, one more space would make two numbers of it.
  const fraction = '(?:\\d+\\s+\\d+|\\d+\\s*)[/\u2044\u2215]\\s*\\d+';
  return `^\\s*(?:${bound}${number}|${glyphs}|${fraction})\\s*(?:${unitPattern(units)})?\\s*$`;
}

/** The texts that name a unit of a quantity and nothing else, as the display of an instrument has it. */
export function unitTextPattern(name: QuantityName): string {
  const { units }: QuantityKind = QUANTITIES[name];
  return `^\\s*(?:${Object.keys(units)
    .map((unit) => spelt(unit, signPatternOf))
    .join('|')})\\s*$`;
}

/** A sign that leaves the number where it may be. */
function signPattern({ min, positive }: QuantityLimits): string {
  if (positive) return '\\+?(?=[0.]*[1-9])';
  // Minus nothing is nothing.
  return min !== undefined && min >= 0 ? '(?:\\+|-(?=[0.]+(?![\\d.])))?' : '[+\\-]?';
}

function unitPattern(units: QuantityKind['units']): string {
  const words = Object.keys(UNIT_WORDS).filter((word) => Object.hasOwn(units, ownField(UNIT_WORDS, word) ?? ''));
  return [
    ...Object.keys(units).map((unit) => spelt(unit, signPatternOf)),
    ...words.map((word) => `${spelt(word, eitherCase)}(?:\\s*[sS])?`),
  ].join('|');
}

/** Letters one by one: spaces between them do not count. */
const spelt = (text: string, one: (letter: string) => string) => [...text].map(one).join('\\s*');

/** A sign of a unit in all the spellings that keyboards give. */
function signPatternOf(sign: string): string {
  const others = UNIT_SIGNS.filter((it) => it.plain === sign).map((it) => it.pattern);
  return others.length > 0 ? `(?:${[escaped(sign), ...others].join('|')})` : escaped(sign);
}

function eitherCase(letter: string): string {
  const [small, capital] = [letter.toLowerCase(), letter.toUpperCase()];
  if (small === capital) return signPatternOf(letter);
  return small === 'u' ? '[uU\u00b5\u03bc]' : `[${small}${capital}]`;
}

const escaped = (sign: string) => sign.replace(/[/()|$^.*+?[\]{}\\]/g, '\\$&');
