import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity, type QuantityLimits } from '../../../src/content/schema/quantity.ts';
import { quantityKeywords, quantityPattern, unitTextPattern } from '../../../src/content/schema/quantity-pattern.ts';
import { QUANTITIES, type QuantityName, UNIT_WORDS } from '../../../src/content/schema/units.ts';

const NAMES = Object.keys(QUANTITIES) as QuantityName[];
const UNITS = NAMES.flatMap((name) => Object.keys(QUANTITIES[name].units));
const read = (text: string, name: QuantityName, limits: QuantityLimits = {}) =>
  'reading' in parseQuantity(text, name, limits);
const matches = (text: string, name: QuantityName, limits: QuantityLimits = {}) => {
  const { pattern, maxLength } = quantityKeywords(name, limits);
  return text.length <= maxLength && new RegExp(pattern, 'u').test(text);
};

const digits = fc.stringMatching(/^\d{1,3}$/);
const space = fc.constantFrom('', ' ', '  ', '\t', '\u00a0');
const number = fc.oneof(
  digits,
  fc.tuple(digits, fc.constantFrom('.', ','), digits).map((it) => it.join('')),
  digits.map((it) => `${it}.`),
  digits.map((it) => `.${it}`),
  fc.tuple(digits, fc.constantFrom('e', 'E', 'e+', 'e-'), fc.stringMatching(/^\d$/)).map((it) => it.join('')),
  fc.constantFrom('0', '0.0', '00'),
);
const fractionOf = (text: string) => /(\d+)\s*[/\u2044]\s*(\d+)/.exec(text)?.slice(1).map(Number);
/** What a pattern can't see is which of two numbers is larger, and whether a fraction is of nothing. */
const isProper = (text: string) => {
  const [top = 1, bottom = 2] = fractionOf(text) ?? [];
  return top > 0 && top < bottom;
};
const fraction = fc
  .tuple(fc.integer({ min: 1, max: 8 }), fc.constantFrom('/', ' / ', '/ ', '\u2044'), fc.integer({ min: 9, max: 64 }))
  .map((it) => it.join(''));
const amount = fc.oneof(
  { weight: 4, arbitrary: number },
  fraction,
  fc.tuple(digits, fc.constantFrom(' ', '  ', '-', ''), fraction).map((it) => it.join('')),
  fc.tuple(fc.option(digits, { nil: '' }), space, fc.constantFrom('½', '¾', '⅞')).map((it) => it.join('')),
  fc.tuple(digits, fc.constantFrom('-', ' to ', '..', ' x ', ' ', '±'), digits).map((it) => it.join('')),
);
const cased = fc.tuple(fc.constantFrom(...Object.keys(UNIT_WORDS)), fc.constantFrom('', 's', 'S'), fc.boolean());
const unit = fc.oneof(
  fc.constantFrom(...UNITS, ''),
  fc.constantFrom('µT', 'μT', 'uW/cm²', 'mW/cm^2', 'mW / cm2', '“', '″', 'kgs', 'IN', 'Cm', '!', 'e', '.5', '/2', '0'),
  cased.map(([word, ending, isLoud]) => (isLoud ? word.toUpperCase() : word) + ending),
);
const sign = fc.constantFrom('', '', '', '', '+', '-', '<', '>', '< ', '<=', '~', '--', '<-');
const quantityText = fc
  .tuple(space, sign, amount, space, unit, space)
  .map((parts) => parts.join(''))
  .filter(isProper);

describe('the pattern accepts what the reader reads, and nothing else', () => {
  test.each(NAMES)('%s', (name) => {
    fc.assert(
      fc.property(quantityText, fc.boolean(), (text, bounds) => {
        expect(matches(text, name, { bounds }), JSON.stringify(text)).toBe(read(text, name, { bounds }));
      }),
      { numRuns: 400, seed: 1 },
    );
  });

  test('where a quantity may not be below nothing', () => {
    for (const limits of [{ positive: true }, { min: 0 }, { positive: true, bounds: true }]) {
      fc.assert(
        fc.property(quantityText, (text) => {
          expect(matches(text, 'length', limits), JSON.stringify(text)).toBe(read(text, 'length', limits));
        }),
        { numRuns: 400, seed: 2 },
      );
    }
  });

  test('any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 12 }), (text) => {
        expect(matches(text, 'irradiance')).toBe(read(text, 'irradiance'));
      }),
      { numRuns: 500, seed: 3 },
    );
  });

  test('texts longer than any quantity are none', () => {
    expect(matches(`${' '.repeat(77)}6 in`, 'length')).toBe(false);
    expect(read(`${' '.repeat(77)}6 in`, 'length')).toBe(false);
    expect(matches(`${' '.repeat(76)}6 in`, 'length')).toBe(true);
  });
});

describe('the keywords beside the pattern', () => {
  test('are the limits of a bare number', () => {
    expect(quantityKeywords('mass', { positive: true, max: 500 })).toMatchObject({ exclusiveMinimum: 0, maximum: 500 });
    expect(quantityKeywords('mass', { positive: true, max: 500 })).not.toHaveProperty('minimum');
    expect(quantityKeywords('temperature', { min: -20, max: 60 })).toMatchObject({ minimum: -20, maximum: 60 });
  });

  test('a bound that may only be below', () => {
    const below = new RegExp(quantityPattern('irradiance', { bounds: 'below' }), 'u');
    expect([below.test('<0.1'), below.test('>0.1')]).toEqual([true, false]);
  });
});

describe('the unit of a display', () => {
  test.each([
    ['magnetic', 'µT', true],
    ['magnetic', 'mG', true],
    ['magnetic', 'microtesla', false],
    ['magnetic', '1 uT', false],
    ['irradiance', 'mW / cm²', true],
    ['irradiance', 'W', false],
  ] as Array<[QuantityName, string, boolean]>)('%s in %s', (name, text, isOne) => {
    expect(new RegExp(unitTextPattern(name), 'u').test(text)).toBe(isOne);
  });
});
