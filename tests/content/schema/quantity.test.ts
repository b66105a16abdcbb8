import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity, type QuantityLimits, type Reading } from '../../../src/content/schema/quantity.ts';
import { normaliseUnit, QUANTITIES, type QuantityName, quantityOfUnit } from '../../../src/content/schema/units.ts';
import { RUNS } from '../../measure/make.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { CONVERSIONS } from './unit-conversions.ts';

const NAMES = Object.keys(QUANTITIES) as QuantityName[];
const unitsOf = (name: QuantityName) => Object.keys(QUANTITIES[name].units);
const PAIRS = NAMES.flatMap((name) => unitsOf(name).map((unit) => [name, unit] as const));

function reading(input: number | string, name: QuantityName, limits: QuantityLimits = {}): Reading {
  const result = parseQuantity(input, name, limits);
  if (!('reading' in result)) throw new Error(`"${String(input).slice(0, 60)}" was refused: ${result.fault.wanted}`);
  return result.reading;
}

function fault(input: number | string, name: QuantityName, limits: QuantityLimits = {}) {
  const result = parseQuantity(input, name, limits);
  if (!('fault' in result)) throw new Error(`"${String(input).slice(0, 60)}" was read as ${result.reading.value}`);
  return result.fault;
}

describe('conversions', () => {
  test.each(CONVERSIONS.map((row) => [row.label, row] as const))('%s', (_label, row) => {
    const { quantity, unit, value } = row.arguments;
    expectToMeet(reading(`${value} ${unit}`, quantity).value, row);
  });

  test('there is a published conversion for every unit that is read', () => {
    const covered = new Set(CONVERSIONS.map((it) => `${it.arguments.quantity} in ${it.arguments.unit}`));
    expect(PAIRS.map(([name, unit]) => `${name} in ${unit}`).filter((it) => !covered.has(it))).toEqual([]);
  });

  test.each(NAMES)('the canonical and the typed unit of %s are one and change nothing', (name) => {
    const { canonical, typed } = QUANTITIES[name];
    expect(reading(`12.5 ${canonical}`, name).value).toBe(12.5);
    expect(reading(`12.5 ${typed}`, name).value).toBe(12.5);
    expect(reading('12.5', name)).toEqual({ value: 12.5, unit: canonical, written: `12.5 ${canonical}` });
    expect(reading(12.5, name)).toEqual({ value: 12.5, unit: canonical, written: `12.5 ${canonical}` });
  });

  test('no binary dust is left in a reading', () => {
    expect(reading('3 mG', 'magnetic').value).toBe(0.3);
    expect(reading('473 W/m2', 'irradiance').value).toBe(47.3);
    expect(reading('11 in', 'length').value).toBe(27.94);
    expect(reading('1.1 mm', 'length').value).toBe(0.11);
  });
});

describe('spellings', () => {
  const SAME: Array<[QuantityName, string, string]> = [
    ['magnetic', '0.31 \u00b5T', '0.31 uT'],
    ['magnetic', '0.31 \u03bcT', '0.31 uT'],
    ['irradiance', '41 mW/cm²', '41 mW/cm2'],
    ['irradiance', '41 mW/cm^2', '41 mW/cm2'],
    ['irradiance', '41 mW / cm2', '41 mW/cm2'],
    ['irradiance', '41mW/cm2', '41 mW/cm2'],
    ['irradiance', '  41   mW/cm2  ', '41 mW/cm2'],
    ['irradiance', '4.1e1 mW/cm2', '41 mW/cm2'],
    ['irradiance', '4.1E+1 mW/cm2', '41 mW/cm2'],
    ['irradiance', '+41 mW/cm2', '41 mW/cm2'],
    ['irradiance', '41. mW/cm2', '41 mW/cm2'],
    ['length', '.5 in', '0.5 in'],
    ['length', '6\u2033', '6 in'],
    ['length', '6\u201d', '6 in'],
    ['length', '6\u201c', '6 in'],
    ['length', '6"', '6 in'],
    ['sound', '44 dB (A)', '44 dB(A)'],
    ['temperature', '-5 °C', '-5 C'],
    ['time', '20 minutes', '20 min'],
    ['time', '20 mins', '20 min'],
    ['time', '1 Minute', '1 min'],
    ['time', '2 hours', '2 h'],
    ['time', '1.5 hrs', '1.5 h'],
    ['time', '90 seconds', '90 s'],
    ['length', '12 centimetres', '12 cm'],
    ['length', '2 metres', '200 cm'],
    ['length', '2 meters', '200 cm'],
    ['length', '2 feet', '2 ft'],
    ['length', '7 1/2 in', '7.5 in'],
    ['length', '7½ in', '7.5 in'],
    ['length', '7 ½"', '7.5 in'],
    ['length', '7 3\u20448 in', '7.375 in'],
    ['length', '1/2 in', '0.5 in'],
    ['length', '¾ inch', '0.75 in'],
    ['time', '1 1/2 hours', '90 min'],
    ['frequency', '40 kilohertz', '40 kHz'],
    ['magnetic', '3.1 milligauss', '3.1 mG'],
    ['magnetic', '2 gauss', '2 G'],
    ['mass', '7 pounds', '7 lb'],
    ['mass', '7 lbs', '7 lb'],
  ];
  test.each(SAME)('%s: %s is %s', (name, spelt, plain) => {
    expect(reading(spelt, name).value).toBe(reading(plain, name).value);
  });

  test('what was written is kept as it was written', () => {
    expect(reading(' 6 in ', 'length').written).toBe('6 in');
    expect(reading('0.31 µT', 'magnetic').written).toBe('0.31 µT');
    expect(reading('<0.1', 'magnetic', { bounds: true }).written).toBe('<0.1 µT');
    expect(reading('7 1/2 in', 'length').written).toBe('7 1/2 in');
  });

  test('prefixes are told apart by their case: a milliwatt is no megawatt', () => {
    expect(fault('5 MW', 'power').hint).toBe('did you mean "5 mW"?');
    expect(fault('3 mt', 'magnetic').wanted).toContain('a magnetic flux density');
  });
});

describe('wrong units', () => {
  const WRONG = NAMES.flatMap((name) =>
    PAIRS.filter(([, unit]) => !unitsOf(name).includes(unit)).map(([, unit]) => [name, unit] as const),
  );

  test('of every other quantity are refused, and the quantity that they measure is named', () => {
    for (const [name, unit] of WRONG) {
      const { wanted, hint } = fault(`5 ${unit}`, name);
      expect(wanted).toContain(QUANTITIES[name].name);
      const other = quantityOfUnit(unit, name) as QuantityName;
      expect(unitsOf(other)).toContain(unit);
      expect(hint).toBe(`"${unit}" is a unit of ${QUANTITIES[other].name}, not of ${QUANTITIES[name].name}`);
    }
  });

  test.each([
    ['28.4 mW/cm', 'irradiance', '28.4 mW/cm2'],
    ['28.4 mw/cm2', 'irradiance', '28.4 mW/cm2'],
    ['3.1 mg', 'magnetic', '3.1 mG'],
    ['100 hz', 'frequency', '100 Hz'],
    ['65 khz', 'frequency', '65 kHz'],
    ['6 IN', 'length', '6 in'],
    ['6 inhces', 'length', '6 inches'],
    ['40 mni', 'time', '40 min'],
    ['44 db(a)', 'sound', '44 dB(A)'],
    ['50 percnt', 'percent', '50 percent'],
  ] as const)('%s: the nearest unit is offered', (input, name, meant) => {
    expect(fault(input, name)).toEqual({ wanted: expect.any(String), hint: `did you mean "${meant}"?` });
  });

  test('nothing is offered for a unit that is like none', () => {
    expect(fault('5 furlongs', 'irradiance').hint).toBeUndefined();
    expect(fault('5 xyzzy', 'length').hint).toBeUndefined();
  });

  test('a misspelt bound stays a bound in what is offered', () => {
    expect(fault('<0.1 ut', 'magnetic', { bounds: true }).hint).toBe('did you mean "<0.1 uT"?');
  });

  test('the message lists every unit that may be written', () => {
    for (const name of NAMES) {
      const { wanted } = fault('5 xyzzy', name);
      for (const unit of unitsOf(name)) expect(wanted).toContain(unit);
    }
  });
});

describe('numbers', () => {
  test.each(['5,5 cm', '5,5', '-5,5 cm', '<5,5 cm'])(
    '%s: a decimal comma is refused with the point in its place',
    (input) => {
      const { hint } = fault(input, 'length', { bounds: true });
      expect(hint).toBe(`write the decimals after a point: ${input.replace(',', '.')}`);
    },
  );

  test('what is offered for a comma can be read', () => {
    for (const input of ['5,5 cm', '0,25', '1,234.5 cm', '1,234,567 cm']) {
      const offered = /: (?<text>.*)$/.exec(fault(input, 'length').hint ?? '')?.groups?.text;
      if (offered !== undefined) expect(parseQuantity(offered, 'length'), offered).toHaveProperty('reading');
    }
  });

  test.each([
    ['41-42', /^a range is no reading: .* list of them: \[41, 42\]$/],
    ['41 – 42 mW/cm2', /^a range is no reading/],
    ['41 to 42.5', /\[41, 42\.5\]$/],
    ['24 x 34 cm', /^two lengths in one text: .* width and height$/],
    ['24cm×34cm', /^two lengths in one text/],
    ['41.2 40.1', /^two numbers in one place/],
    ['1 000 mW/cm2', /a space stands inside a number$/],
    ['41 ± 1', /^write the reading alone/],
    ['~41', /^write the number as the meter showed it/],
    ['ca. 41', /^write the number as the meter showed it/],
    ['<= 41', /^write a bound with < or > alone$/],
    ['7-1/2 in', /: 7 1\/2$/],
  ])('%s: the likely slip is told', (input, hint) => {
    expect(fault(input, 'irradiance', { bounds: true }).hint).toMatch(hint);
  });

  test.each(['1e-3 W', '-5', '+5', '.5 W', '1e+2', '5. W'])('%s looks like none of these slips', (input) => {
    expect(parseQuantity(input, 'power')).toHaveProperty('reading');
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('%s is refused', (input) => {
    for (const name of NAMES) expect(fault(input, name).wanted).toContain(QUANTITIES[name].name);
  });

  test.each([
    'NaN',
    'Infinity',
    '-Infinity',
    '.inf',
    '.nan',
    'inf cm',
    '1e999',
    '1e999 cm',
    '-1e999 cm',
    '1e308 m',
    '9'.repeat(400),
  ])('%s as a text is refused', (input) => {
    expect(fault(input, 'length').wanted).toContain('a length');
  });

  test.each([
    '',
    ' ',
    'cm',
    '-',
    '<',
    '> cm',
    '0x10 cm',
    '1_000 cm',
    '1 000 cm',
    '５ cm',
    '−5 cm',
    '5..5 cm',
    '5 cm 3 mm',
    '7 9/2 in',
    '1/0 in',
    '3/4/5 in',
  ])('"%s" is refused', (input) => {
    expect(fault(input, 'length').wanted).toContain('a length');
  });
});

describe('limits', () => {
  test('zero is refused where a quantity has to be positive, and taken elsewhere', () => {
    expect(fault(0, 'length', { positive: true })).toEqual({ wanted: 'a length above 0 cm' });
    expect(fault('0 in', 'length', { positive: true })).toEqual({ wanted: 'a length above 0 cm' });
    expect(fault(-3, 'length', { positive: true })).toEqual({ wanted: 'a length above 0 cm' });
    expect(reading(0, 'length', { min: 0 }).value).toBe(0);
    expect(reading(-3, 'length').value).toBe(-3);
  });

  test('both ends are taken, and what lies beyond is refused, in whatever unit it is written', () => {
    const limits = { min: 0, max: 2000 };
    expect(reading('20000 W/m2', 'irradiance', limits).value).toBe(2000);
    expect(fault('20001 W/m2', 'irradiance', limits)).toEqual({
      wanted: 'an irradiance of at most 2000 mW/cm²; more is absurd here',
    });
    expect(fault(2000.1, 'irradiance', limits).wanted).toContain('at most 2000 mW/cm²');
    expect(reading(0, 'irradiance', limits).value).toBe(0);
    expect(fault('-1 uW/cm2', 'irradiance', limits)).toEqual({ wanted: 'an irradiance of at least 0 mW/cm²' });
    expect(fault('-13 F', 'temperature', { min: -20 })).toEqual({ wanted: 'a temperature of at least -20 °C' });
  });

  test('a bound is kept as a bound, where the field takes one', () => {
    const limits = { min: 0, max: 1e6, bounds: true };
    expect(reading('<0.2 mG', 'magnetic', limits)).toEqual({
      value: 0.02,
      unit: 'µT',
      bound: 'below',
      written: '<0.2 mG',
    });
    expect(reading('> 2000 mG', 'magnetic', limits)).toEqual({
      value: 200,
      unit: 'µT',
      bound: 'above',
      written: '> 2000 mG',
    });
    expect(reading('0.2 mG', 'magnetic', limits)).not.toHaveProperty('bound');
  });

  test('a bound is refused where it cannot be calculated with', () => {
    expect(fault('<5 cm', 'length')).toEqual({
      wanted: `a length with one value; a bound ("<") can't be calculated with here`,
    });
    expect(fault('>5 cm', 'length').wanted).toContain('(">")');
  });

  test.each(['<=5 uT', '≤5 uT', '~5 uT', '5 uT <', '<<5 uT'])('%s is no bound that is known', (input) => {
    expect(fault(input, 'magnetic', { bounds: true }).wanted).toContain('a magnetic flux density');
  });
});

describe('hostile texts', () => {
  const KEYS = ['constructor', '__proto__', 'toString', 'hasOwnProperty', 'valueOf', '__defineGetter__'];

  test.each(KEYS)('%s is neither a quantity nor a unit', (word) => {
    for (const name of NAMES) {
      expect(fault(word, name).wanted).toContain(QUANTITIES[name].name);
      expect(fault(`5 ${word}`, name).wanted).toContain(QUANTITIES[name].name);
    }
    expect(quantityOfUnit(word, 'length')).toBeUndefined();
  });

  test.each(['5 🙂', '🙂', '5 cm🙂', '\u0000', '5 \u0000cm', '5\u202ecm', '<script>', '5 $(1)', "5 ' OR 1=1"])(
    '%j is refused',
    (input) => {
      expect(fault(input, 'length').wanted).toContain('a length');
    },
  );

  test('a unit of a million letters is refused', () => {
    expect(fault(`5 ${'x'.repeat(1_000_000)}`, 'length').wanted).toContain('a length');
  });

  test('a long number on the first of two lines takes no longer than any other', () => {
    // A search that tries every split of the digits takes seconds here; one that does not, under a millisecond.
    const start = performance.now();
    fault(`${'1'.repeat(2000)} cm\nand more`, 'length');
    expect(performance.now() - start).toBeLessThan(1000);
  });
});

describe('properties', () => {
  const anyName = fc.constantFrom(...NAMES);
  const anyPair = fc.constantFrom(...PAIRS);
  /** Values as a display shows them: up to six digits. */
  const shown = fc.integer({ min: -999_999, max: 999_999 }).chain((n) => fc.nat({ max: 4 }).map((d) => n / 10 ** d));

  test('a value comes back from every unit', () => {
    const linear = PAIRS.filter(([name]) => name !== 'temperature');
    fc.assert(
      fc.property(fc.constantFrom(...linear), shown, ([name, unit], value) => {
        const one = reading(`1 ${unit}`, name).value;
        const back = reading(`${value} ${unit}`, name).value / one;
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
      }),
      RUNS,
    );
  });

  test('a temperature comes back from Fahrenheit', () => {
    fc.assert(
      fc.property(fc.integer({ min: -4000, max: 4000 }), (tenths) => {
        const celsius = reading(`${tenths / 10} F`, 'temperature').value;
        expect(celsius * 1.8 + 32).toBeCloseTo(tenths / 10, 9);
      }),
      RUNS,
    );
  });

  test('a reading can be written down and read again', () => {
    fc.assert(
      fc.property(anyPair, shown, fc.constantFrom('', '<', '>'), ([name, unit], value, bound) => {
        const first = reading(`${bound}${value} ${unit}`, name, { bounds: true });
        expect(reading(first.written, name, { bounds: true })).toEqual(first);
      }),
      RUNS,
    );
  });

  test('a bare number and the same number with its unit are one', () => {
    fc.assert(
      fc.property(anyName, shown, (name, value) => {
        const { canonical } = QUANTITIES[name];
        expect(reading(value, name).value).toBe(reading(`${value} ${canonical}`, name).value);
        expect(reading(value, name)).toEqual(reading(String(value), name));
      }),
      RUNS,
    );
  });

  const anyText = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 60 }),
    fc.string({ unit: fc.constantFrom(...'0123456789.,+-eE<> \tcmWuTGµ²/^%°"()'), maxLength: 30 }),
    fc.tuple(fc.double(), fc.constantFrom(...PAIRS.map(([, unit]) => unit))).map(([n, unit]) => `${n} ${unit}`),
  );
  const anyLimits = fc.record(
    { min: fc.double({ noNaN: true }), max: fc.double({ noNaN: true }), positive: fc.boolean(), bounds: fc.boolean() },
    { requiredKeys: [] },
  );

  test('whatever is written, the answer is a finite reading within the limits, or a fault in words', () => {
    fc.assert(
      fc.property(fc.oneof(anyText, fc.double()), anyName, anyLimits, (input, name, limits) => {
        const result = parseQuantity(input, name, limits);
        if ('fault' in result) {
          expect(Object.keys(result)).toEqual(['fault']);
          expect(result.fault.wanted).toContain(QUANTITIES[name].name);
          expect(result.fault.hint ?? 'none').not.toBe('');
          return;
        }
        expect(Object.keys(result)).toEqual(['reading']);
        const { value, written, bound } = result.reading;
        expect(Number.isFinite(value)).toBe(true);
        expect(written).not.toBe('');
        if (limits.positive) expect(value).toBeGreaterThan(0);
        if (limits.min !== undefined) expect(value).toBeGreaterThanOrEqual(limits.min);
        if (limits.max !== undefined) expect(value).toBeLessThanOrEqual(limits.max);
        if (!limits.bounds) expect(bound).toBeUndefined();
      }),
      { ...RUNS, numRuns: 2000 },
    );
  });

  test('what is offered for a slip can be read', () => {
    const slips = fc.tuple(shown, anyPair).chain(([value, [name, unit]]) =>
      fc.nat({ max: Math.max(0, unit.length - 1) }).map((at) => ({
        name,
        input: `${Math.abs(value)} ${unit.slice(0, at)}${unit.slice(at + 1)}x`,
      })),
    );
    fc.assert(
      fc.property(slips, ({ name, input }) => {
        const result = parseQuantity(input, name);
        const meant = 'fault' in result && /^did you mean "(?<text>.*)"\?$/.exec(result.fault.hint ?? '')?.groups?.text;
        if (meant) expect(parseQuantity(meant, name), meant).toHaveProperty('reading');
      }),
      RUNS,
    );
  });
});

describe('normaliseUnit', () => {
  test('changes nothing that is already plain, and its own result least of all', () => {
    for (const [, unit] of PAIRS) expect(normaliseUnit(unit)).toBe(unit);
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(normaliseUnit(normaliseUnit(text))).toBe(normaliseUnit(text));
      }),
      RUNS,
    );
  });

  test('no unit has two meanings within one quantity, and none is spelt with a sign that is written otherwise', () => {
    for (const name of NAMES) {
      const plain = unitsOf(name).map(normaliseUnit);
      expect(new Set(plain).size).toBe(plain.length);
    }
  });
});

describe('quantityOfUnit', () => {
  test('names another quantity that has the unit, never the one that is asked about', () => {
    expect(quantityOfUnit('kg', 'length')).toBe('mass');
    expect(quantityOfUnit('kg', 'mass')).toBeUndefined();
    expect(quantityOfUnit('mW/cm²', 'irradiance')).toBe('radio');
    expect(quantityOfUnit('mW/cm²', 'length')).toBe('irradiance');
    expect(quantityOfUnit('xyzzy', 'length')).toBeUndefined();
  });
});
