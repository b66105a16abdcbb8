import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../../../src/content/schema/quantity.ts';
import { LONGEST_LINE, readLine } from '../../../../src/site/bench/browser/meter-line.ts';
import { plainNumber } from '../../../../src/site/bench/browser/meter-number.ts';
import { type MeterPattern, meterPattern } from '../../../../src/site/bench/browser/meter-pattern.ts';

function patternOf(text: string): MeterPattern {
  const made = meterPattern(text);
  if (!('pattern' in made)) throw new Error(`${text}: ${made.fault}`);
  return made.pattern;
}

describe('a number', () => {
  test.each([
    ['41.2', '41.2'],
    ['41,2', '41.2'],
    ['041.20', '041.20'],
    ['+3.5', '3.5'],
    ['-3,5', '-3.5'],
    ['− 0.7', '-0.7'],
    ['.5', '0.5'],
    ['12', '12'],
    ['12.', '12'],
    ['1.2e-3', '1.2e-3'],
    ['1,2E+03', '1.2e03'],
    ['1,234.5', '1234.5'],
    ['1.234,5', '1234.5'],
    ['1,234,567', '1234567'],
    ["12'500", '12500'],
    ['12’500,5', '12500.5'],
    // A point is for decimals where nothing says otherwise, a comma before three digits may be for either.
    ['1.234', '1.234'],
    ['0,123', '0.123'],
    ['1,234', undefined],
    ['12,345', undefined],
    ['1234,567', '1234.567'],
    ['1,41.2', undefined],
    ['1.2.3', undefined],
    ['1,2,3', undefined],
    ['', undefined],
    ['x', undefined],
  ])('%s', (text, plain) => {
    expect(plainNumber(text)).toBe(plain);
  });

  test('a mark that the tester has named decides, and the other one then needs its groups of three', () => {
    expect(plainNumber('1,234', 'comma')).toBe('1.234');
    expect(plainNumber('1.234', 'comma')).toBeUndefined();
    expect(plainNumber('1.234,5', 'comma')).toBe('1234.5');
    expect(plainNumber('1,234', 'point')).toBeUndefined();
    expect(plainNumber('1,2', 'point')).toBeUndefined();
    expect(plainNumber('1,234.5', 'point')).toBe('1234.5');
  });

  test('any number comes back, with a point or with a comma', () => {
    const decimal = fc.tuple(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.integer({ min: 0, max: 6 }));
    fc.assert(
      fc.property(decimal, fc.constantFrom('point', 'comma'), ([value, decimals], mark) => {
        const pointed = value.toFixed(decimals);
        const written = mark === 'comma' ? pointed.replace('.', ',') : pointed;
        expect(Number(plainNumber(written, mark))).toBe(Number(pointed));
        const either = plainNumber(written);
        if (either !== undefined) expect(Number(either)).toBe(Number(pointed));
      }),
    );
  });
});

describe('a line without a pattern', () => {
  test.each([
    ['41.2', '41.2'],
    ['41.2 mW/cm2', '41.2 mW/cm2'],
    ['41.2mW/cm²', '41.2 mW/cm²'],
    ['E = 41,20 mW / cm2', '41.20 mW / cm2'],
    ['410 W/m^2', '410 W/m^2'],
    ['410 W m^-2', '410 W'],
    ['CH1 2.31 uT', '2.31 uT'],
    ['  <0.1 µT \r', '<0.1 µT'],
    ['> 1999 V/m', '>1999 V/m'],
    ['12:31:07 0.52 W', '0.52 W'],
    ['2026-11-21T12:31:07Z;41.2;mW/cm2', '41.2'],
    ['21.11.2026 12:31 41.2', '41.2'],
    ['no. 3: 41.2 dB(A)', '41.2 dB(A)'],
    ['\u000241.2 W\u0003', '41.2 W'],
    ['-1.2E-03 V/m', '-1.2e-03 V/m'],
  ])('%s', (line, written) => {
    expect(readLine(line)).toMatchObject({ written });
  });

  test('its bound stays one', () => {
    expect(readLine('<0.1 uT')).toEqual({ written: '<0.1 uT', number: '0.1', value: 0.1, unit: 'uT', bound: 'below' });
  });

  test.each([
    ['', { refused: 'empty' }],
    ['   \t', { refused: 'empty' }],
    ['ready', { refused: 'no-number' }],
    ['mW/cm2', { refused: 'no-number' }],
    ['12:31', { refused: 'no-number' }],
    ['x'.repeat(LONGEST_LINE + 1), { refused: 'long' }],
    ['OL', { refused: 'overload', text: 'OL' }],
    ['-O.L mW/cm2 range 200', { refused: 'overload', text: '-O.L' }],
    ['0L W', { refused: 'overload', text: '0L' }],
    ['Overload 1999', { refused: 'overload', text: 'Overload' }],
    ['inf', { refused: 'overload', text: 'inf' }],
    ['1e999', { refused: 'overload', text: '1e999' }],
    ['--.- mW/cm2 25.3 C', { refused: 'no-value', text: '--.-' }],
    ['----', { refused: 'no-value', text: '----' }],
    ['NaN', { refused: 'no-value', text: 'NaN' }],
    ['Err 3', { refused: 'no-value', text: 'Err' }],
    ['1,234 mW/cm2', { refused: 'unclear', text: '1,234' }],
    // A list with commas: which of them is the reading, a pattern has to say.
    ['1,41.2,mW/cm2', { refused: 'unclear', text: '1,41.2,' }],
  ])('%s is refused', (line, refusal) => {
    expect(readLine(line)).toEqual(refusal);
  });

  test('words that only look like an overload are none', () => {
    expect(readLine('TOOL 3.2 W')).toMatchObject({ written: '3.2 W' });
    expect(readLine('COLD 3.2 W')).toMatchObject({ written: '3.2 W' });
  });
});

describe('a line with a pattern', () => {
  test.each([
    ['E = {number} {unit}', 'T = 25.3 C; E = 41.2 mW/cm2; n = 4', '41.2 mW/cm2'],
    ['E = {number} {unit}', 'e=41,2mW/cm2', '41.2 mW/cm2'],
    ['E = {number} {unit}', 'E = < 0.1 mW/cm2', '<0.1 mW/cm2'],
    ['{any},{number},{unit}', '1,41.2,mW/cm2', '41.2 mW/cm2'],
    ['{number};', '41.2;25.3;17', '41.2'],
    ['E {number}', 'RE 7.1 E 41.25', '41.25'],
    ['(E): {number}', 'x (E): 41.2 y', '41.2'],
    ['E = {number,} {unit}', 'E = 1,234 mW/cm2', '1.234 mW/cm2'],
    ['{any},{number.},{any}', '3,41.2,mW', '41.2'],
    ['/E (?<numberComma>\\S+)/', 'E <1,234 x', '<1.234'],
    ['over {number}', 'over 41.2', '41.2'],
    ['/^CH1;(?<number>[^;]+);(?<unit>[^;]+)/', 'CH1;41,2;mW/cm2;OK', '41.2 mW/cm2'],
    ['/e<?(?<number>[\\d.]+)/i', 'E<0.10', '<0.10'],
  ])('%s in “%s”', (pattern, line, written) => {
    expect(readLine(line, { pattern: patternOf(pattern) })).toMatchObject({ written });
  });

  test('what does not fit is not guessed at', () => {
    const reader = { pattern: patternOf('E = {number} {unit}') };
    expect(readLine('T = 25.3 C', reader)).toEqual({ refused: 'no-match' });
    expect(readLine('E = OL mW/cm2', reader)).toEqual({ refused: 'overload', text: 'OL' });
    expect(readLine('E = 1,234 mW/cm2', reader)).toEqual({ refused: 'unclear', text: '1,234' });
    // Not the first digits of a longer number.
    expect(readLine('E = 41.2.3', { pattern: patternOf('E = {number}') })).not.toHaveProperty('value');
  });

  test.each([
    ['', { fault: 'empty' }],
    ['E =', { fault: 'no-number' }],
    ['{number} {number}', { fault: 'twice', place: '{number}' }],
    ['{number} {number,}', { fault: 'twice', place: '{number,}' }],
    ['{value}', { fault: 'place', place: '{value}' }],
    ['/E (\\d+)/', { fault: 'no-number' }],
    ['x'.repeat(300), { fault: 'long' }],
  ])('“%s” is no pattern', (text, fault) => {
    expect(meterPattern(text)).toEqual(fault);
  });

  test('a regular expression that can’t be read says why', () => {
    expect(meterPattern('/(?<number>[/')).toMatchObject({ fault: 'expression', why: expect.stringContaining('[') });
  });
});

test('what a meter of any decimals sends is what the content’s files read', () => {
  const reading = fc.tuple(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 0, max: 3 }));
  const unit = fc.constantFrom('mW/cm2', 'W/m2', 'mW/cm²', 'uW/cm2');
  fc.assert(
    fc.property(reading, unit, fc.constantFrom('', '<'), ([digits, decimals], of, bound) => {
      const shown = (digits / 10 ** decimals).toFixed(decimals);
      const line = readLine(`E ${bound}${shown} ${of}`, { pattern: patternOf('E {number} {unit}') });
      if (!('written' in line)) throw new Error(JSON.stringify(line));
      const [ours, theirs] = [line.written, `${bound}${shown} ${of}`].map((it) =>
        parseQuantity(it, 'irradiance', { bounds: true }),
      );
      expect(ours).toEqual(theirs);
      expect(ours).toHaveProperty('reading');
    }),
  );
});

test('no line makes it throw or take its time', () => {
  const text = fc.string({ unit: fc.constantFrom(..."0123456789.,-+eE<> 'mW/cm2²:{}OL"), maxLength: LONGEST_LINE });
  const reader = { pattern: patternOf('{any} {number} {any} {unit} {any}') };
  fc.assert(
    fc.property(text, (line) => {
      for (const it of [readLine(line), readLine(line, reader)]) {
        if ('value' in it) expect(Number.isFinite(it.value)).toBe(true);
      }
    }),
  );
});
