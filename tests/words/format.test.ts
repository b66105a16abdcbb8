import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Figure, Unit } from '../../src/measure/figure.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { makeFigure } from '../../src/measure/uncertainty.ts';
import {
  decimalsFor,
  fixed,
  lastDigitOf,
  listed,
  measuredText,
  methodOf,
  money,
  ordinal,
  rangeText,
  showDate,
  showFigure,
  unbroken,
  unitWords,
  withSigns,
} from '../../src/words/format.ts';
import { figure, identity, line, RUNS, vague } from '../measure/make.ts';

describe('decimalsFor', () => {
  // Particle Data Group, Review of Particle Physics, introduction, 5.3 (from memory): where the three highest digits
  // of the uncertainty are 100 to 354, two digits are kept; 355 to 949, one; 950 to 999, it is rounded up to 1000
  // and two are kept.
  const EXAMPLES: Array<[uncertainty: number, decimals: number]> = [
    // The two examples of the Review: 0.83 ± 0.12 and 0.8 ± 0.4.
    [0.119, 2],
    [0.367, 1],
    [0.1, 2],
    [0.354, 2],
    [0.355, 1],
    [0.949, 1],
    [0.95, 1],
    [0.999, 1],
    [1, 1],
    [3.54, 1],
    [3.55, 0],
    [9.49, 0],
    [9.5, 0],
    [0.0999, 2],
    [0.0949, 2],
    [0.0354, 3],
    [0.00127, 4],
    [12, 0],
    [36, -1],
    [240, -1],
    [443, -2],
    [1234, -2],
  ];
  test.each(EXAMPLES)('±%d: %i', (uncertainty, decimals) => {
    expect(decimalsFor(uncertainty)).toBe(decimals);
  });

  test('follows the rule for every three digits at every size', () => {
    for (let exponent = -9; exponent <= 5; exponent++) {
      for (let digits = 100; digits <= 999; digits++) {
        const uncertainty = Number(`${digits}e${exponent - 2}`);
        const accepted = digits <= 354 ? 1 - exponent : 0 - exponent;
        expect(decimalsFor(uncertainty), String(uncertainty)).toBe(accepted);
      }
    }
  });
});

describe('fixed', () => {
  test.each([
    [0, 0, '0'],
    [-0, 1, '0.0'],
    [1234.5, 1, '1,234.5'],
    [1234567, 0, '1,234,567'],
    [-5, 0, '−5'],
    [-1234.56, 1, '−1,234.6'],
    [0.05, 2, '0.05'],
    [99.95, 1, '100.0'],
    [1105.4, -1, '1,110'],
    [-2905, -2, '−2,900'],
    [4, -1, '0'],
  ])('%d with %i decimals is %s', (value, decimals, text) => {
    expect(fixed(value, decimals)).toBe(text);
  });

  test('is what the library for formats writes, ties and all', () => {
    const formats = [0, 1, 2, 3, 4, 5, 6, 7].map(
      (decimals) =>
        new Intl.NumberFormat('en-GB', {
          minimumFractionDigits: decimals,
          maximumFractionDigits: decimals,
          signDisplay: 'negative',
        }),
    );
    const halves = fc.tuple(fc.integer({ min: -20_000, max: 20_000 }), fc.nat(5)).map(([n, d]) => (n + 0.5) / 10 ** d);
    fc.assert(
      fc.property(fc.oneof(fc.double(), fc.double({ min: -1e5, max: 1e5 }), halves), fc.nat(7), (value, decimals) => {
        expect(fixed(value, decimals)).toBe(formats[decimals]?.format(value).replace('-', '−'));
      }),
      RUNS,
    );
  });

  test('what rounds to nought has no sign', () => {
    expect(fixed(-0.04, 1)).toBe('0.0');
  });
});

describe('money', () => {
  test.each([
    [39, 'EUR', '€39'],
    [99.5, 'EUR', '€99.50'],
    [189, 'EUR', '€189'],
    [1190, 'EUR', '€1,190'],
    [182.85, 'EUR', '€182.85'],
    [159, 'GBP', '£159'],
    [-50, 'EUR', '−€50'],
    [0, 'EUR', '€0'],
  ])('%d %s is %s', (amount, currency, text) => {
    expect(money(amount, currency)).toBe(text);
  });

  test('is what the library for formats writes, in any currency', () => {
    const currencies = fc.constantFrom('EUR', 'USD', 'GBP', 'CHF', 'SEK', 'JPY', 'KWD');
    fc.assert(
      fc.property(
        fc.oneof(fc.double(), fc.double({ min: -1e4, max: 1e6 })),
        currencies,
        fc.nat(4),
        (it, currency, d) => {
          const fraction = { minimumFractionDigits: d, maximumFractionDigits: d };
          const format = new Intl.NumberFormat('en-GB', { style: 'currency', currency, ...fraction });
          expect(money(it, currency, d)).toBe(format.format(it).replace('-', '−'));
        },
      ),
      RUNS,
    );
  });

  test('with as many decimals as are asked for', () => {
    expect(money(0.0305, 'EUR', 4)).toBe('€0.0305');
    expect(money(10.9223, 'EUR', 1)).toBe('€10.9');
    expect(money(10.9223, 'EUR', 0)).toBe('€11');
  });
});

/** A figure with a normal error of u. */
const sure = (value: number, u: number, unit: Unit = 'W', metric = 'optical-power') =>
  figure(value, [line('own', u)], metric, unit);
const K = 1.959963985;
/** A figure whose 95 % interval reaches so far to both sides. */
const within = (value: number, half: number, unit: Unit = 'W') => sure(value, half / K, unit);
const bounded = (value: number, bound: 'below' | 'above', unit: Unit) =>
  makeFigure({ ...identity('magnetic-field-on', unit), bound }, value, { absent: verbatim('the reading is a bound') });

describe('showFigure', () => {
  const CASES: Array<[Figure, string]> = [
    [within(84.3, 9.2), '84 ± 9 W'],
    [within(0.827, 0.119), '0.83 ± 0.12 W'],
    [within(0.827, 0.367), '0.8 ± 0.4 W'],
    [within(36.622, 1.901, 'mW/cm²'), '36.6 ± 1.9 mW/cm²'],
    [within(21.973, 1.163), '22.0 ± 1.2 W'],
    [within(1234.5, 25), '1,235 ± 25 W'],
    [within(43.94, 2.7, '%'), '43.9 ± 2.7 %'],
    [within(1.4336, 0.0162, '1'), '1.434 ± 0.016'],
    [within(44, 1.37, 'dB(A)'), '44.0 ± 1.4 dB(A)'],
    [within(10.922, 0.578, 'currency/W'), '€10.9 ± 0.6/W'],
    [within(0.03, 0.00033, 'currency/h'), '€0.0300 ± 0.0003/h'],
    [figure(189, [], 'real-price', 'currency'), '€189'],
    [figure(39, [], 'real-price', 'currency'), '€39'],
    [figure(600, [], 'led-area', 'cm²'), '600 cm²'],
    [bounded(0.1, 'below', 'µT'), '< 0.1 µT'],
    [bounded(200, 'above', 'µT'), '> 200 µT'],
    [bounded(0.000005, 'below', 'mW/m²'), '< 0.000005 mW/m²'],
    // Away from what it bounds.
    [bounded(0.37037, 'below', '%'), '< 0.371 %'],
    [bounded(387.7, 'above', 's'), '> 387 s'],
    [vague(47.3), '47.3 W'],
    [vague(65000), '65,000 W'],
    [vague(0.35), '0.35 W'],
    [vague(100), '100 W'],
  ];
  test.each(CASES.map(([it, text]) => [text, it] as const))('%s', (text, it) => {
    const shown = showFigure(it, 'EUR');
    expect(shown.text).toBe(text);
    expect(shown.text.startsWith(shown.value)).toBe(true);
  });

  test('its parts can be set apart', () => {
    expect(showFigure(within(84.3, 9.2), 'EUR')).toEqual({ value: '84', plusMinus: '9', unit: 'W', text: '84 ± 9 W' });
    expect(showFigure(within(10.922, 0.578, 'currency/W'), 'EUR')).toEqual({
      value: '€10.9',
      plusMinus: '0.6',
      unit: '/W',
      text: '€10.9 ± 0.6/W',
    });
  });

  test('without an uncertainty the reason is handed on', () => {
    expect(showFigure(vague(47.3, 'the session does not name the meter'), 'EUR')).toEqual({
      value: '47.3',
      unit: 'W',
      text: '47.3 W',
      absent: verbatim('the session does not name the meter'),
    });
    expect(showFigure(bounded(0.1, 'below', 'µT'), 'EUR').absent).toEqual(verbatim('the reading is a bound'));
  });

  test('an exact figure has no uncertainty, and nothing to explain', () => {
    expect(showFigure(figure(189, [], 'real-price', 'currency'), 'EUR')).toEqual({
      value: '€189',
      unit: '',
      text: '€189',
    });
  });

  test('an interval that is cut at nought is shown from end to end', () => {
    // 0.5 ± 1.96 W: there is no negative power.
    const shown = showFigure(sure(0.5, 1), 'EUR');
    expect(shown).toEqual({ value: '0.5', interval: '0.0 to 2.5', unit: 'W', text: '0.5 W (0.0 to 2.5)' });
    expect(showFigure(sure(1, 10, 'currency/W'), 'EUR').text).toBe('€1/W (€0 to €21)');
  });

  test('an interval that only just stays above nought is not cut', () => {
    expect(showFigure(within(2.0001, 2, 'W'), 'EUR').text).toBe('2.0 ± 2.0 W');
  });

  test('a quantity that may be negative is not cut', () => {
    const change = makeFigure({ ...identity('optical-power-change', '%'), lowest: Number.NEGATIVE_INFINITY }, -3.21, {
      budget: [line('own', 4 / K)],
    });
    expect(showFigure(change, 'EUR').text).toBe('−3 ± 4 %');
  });

  test('money is shown in the currency of the guide', () => {
    expect(showFigure(within(10.922, 0.578, 'currency/W'), 'GBP').text).toBe('£10.9 ± 0.6/W');
    expect(showFigure(figure(189, [], 'real-price', 'currency'), 'GBP').text).toBe('£189');
  });

  test('a reading that is not nought never looks like nought', () => {
    for (const value of [2e-7, 5e-6, 0.04, 3e-10]) expect(showFigure(vague(value), 'EUR').value).toMatch(/[1-9]/);
  });

  const digits = (text: string) => text.replace(/[^\d.−]/g, '').replace('−', '-');
  const decimalsOf = (text: string) => digits(text).split('.')[1]?.length ?? 0;

  test('value and uncertainty end at the same digit, and neither is off by more than half of it', () => {
    const numbers = fc.tuple(
      fc.double({ min: 0.001, max: 1e5, noNaN: true }),
      fc.double({ min: 1e-5, max: 0.4, noNaN: true }),
    );
    fc.assert(
      fc.property(numbers, ([value, share]) => {
        const shown = within(value, share * value);
        const { value: text, plusMinus } = showFigure(shown, 'EUR');
        if (plusMinus === undefined) throw new Error('no uncertainty is shown');
        const decimals = decimalsOf(text);
        expect(decimalsOf(plusMinus)).toBe(decimals);
        // GUM (JCGM 100:2008) 7.2.6: two digits of the uncertainty at most, and the value to the same place.
        expect(Number(Number(digits(plusMinus)).toPrecision(2))).toBe(Number(digits(plusMinus)));
        const steps = Number(digits(text)) / lastDigitOf(shown);
        expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-6);
        const half = 0.5000001 * lastDigitOf(shown);
        expect(Math.abs(Number(digits(text)) - value)).toBeLessThanOrEqual(half);
        expect(Math.abs(Number(digits(plusMinus)) - share * value)).toBeLessThanOrEqual(half);
        // An uncertainty that is there never looks as if there were none.
        expect(plusMinus).toMatch(/[1-9]/);
      }),
      RUNS,
    );
  });

  test('an uncertainty of money never looks as if there were none', () => {
    expect(showFigure(within(0.00031, 0.00002, 'currency/h'), 'EUR').plusMinus).toMatch(/[1-9]/);
  });
});

describe('words', () => {
  test.each([
    [1, '1st'],
    [2, '2nd'],
    [3, '3rd'],
    [4, '4th'],
    [10, '10th'],
    [11, '11th'],
    [12, '12th'],
    [13, '13th'],
    [21, '21st'],
    [22, '22nd'],
    [23, '23rd'],
    [101, '101st'],
    [111, '111th'],
    [112, '112th'],
    [113, '113th'],
    [1002, '1002nd'],
  ])('%i is %s', (n, text) => {
    expect(ordinal(n)).toBe(text);
  });

  test.each([
    ['2026-03-14', '14 Mar 2026'],
    ['2026-09-01', '1 Sep 2026'],
    ['2024-02-29', '29 Feb 2024'],
    ['1999-12-31', '31 Dec 1999'],
    ['2026-06-30', '30 Jun 2026'],
  ])('%s is %s', (iso, text) => {
    expect(showDate(iso)).toBe(text);
  });

  test('a list in a sentence', () => {
    expect(listed([])).toBe('');
    expect(listed(['A'])).toBe('A');
    expect(listed(['A', 'B'])).toBe('A and B');
    expect(listed(['A', 'B', 'C'])).toBe('A, B and C');
  });

  test('a method’s reference in its parts', () => {
    expect(methodOf({ method: { id: 'optical-power', version: 2 } })).toEqual({
      id: 'optical-power',
      version: 2,
      address: '/methods/optical-power/',
    });
  });

  test('a unit beside a bare number', () => {
    expect(unitWords('1', 'EUR')).toBe('');
    expect(unitWords('currency/W', 'GBP')).toBe('GBP/W');
    expect(unitWords('mW/cm²', 'EUR')).toBe('mW/cm²');
  });
});

describe('rangeText', () => {
  test('has the digits that the interval leaves, on the value and on both ends', () => {
    expect(rangeText(12.345, 11.8, 12.9, 'min')).toBe('12.3 min (11.8 to 12.9)');
    expect(rangeText(60, 52, 71, '%')).toBe('60 % (52 to 71)');
    expect(rangeText(30, 29.5, 30.5, '°')).toBe('30.0° (29.5 to 30.5)');
  });

  test('prints in the way that it is given', () => {
    expect(rangeText(1.2, 1, 1.5, '', (it, decimals) => `€${it.toFixed(decimals)}`)).toBe('€1.20 (€1.00 to €1.50)');
  });
});

test.each([
  ['<1 W/m2', '<1 W/m²'],
  ['5 uW/m2', '5 µW/m²'],
  ['19.6 C', '19.6 °C'],
  ['31.7 dB(A)', '31.7 dB(A)'],
  ['6 in', '6 in'],
  ['0.5', '0.5'],
])('a reading keeps its number as written, and has its unit in signs: %s', (typed, shown) => {
  expect(withSigns(typed)).toBe(shown);
});

test('a value and half of its interval end at one digit', () => {
  expect(measuredText(0.987, 0.2)).toBe('0.99 ± 0.20');
  expect(measuredText(661.04, 4.2)).toBe('661 ± 4');
});

test('unbroken keeps a value, its ± and what follows on one line, and nothing else', () => {
  expect(unbroken('Mean 48.0 ± 2.7 mW/cm². The light changed by −2 ± 4 % since')).toBe(
    'Mean 48.0\u00a0±\u00a02.7\u00a0mW/cm². The light changed by −2\u00a0±\u00a04\u00a0% since',
  );
  expect(unbroken('82.1 ± 0.9 W → 92.1 ± 1.0 W, of 7 figures')).toBe(
    '82.1\u00a0±\u00a00.9\u00a0W → 92.1\u00a0±\u00a01.0\u00a0W, of 7 figures',
  );
});
