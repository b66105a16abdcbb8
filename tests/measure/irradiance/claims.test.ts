import { describe, expect, test } from 'vitest';
import {
  checkQuantity,
  checkWavelength,
  INFRARED_FROM_NM,
  notComparable,
} from '../../../src/measure/irradiance/claims.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { WAVELENGTH_TOLERANCE_NM } from '../../../src/measure/thresholds.ts';
import { makeFigure } from '../../../src/measure/uncertainty.ts';
import { figure, identity, line, vague } from '../make.ts';

const measured = (value: number, u = 0) => figure(value, [line('sensor', u)], 'peak-irradiance-combined', 'mW/cm²');
const wavelength = (value: number) => figure(value, [], 'wavelength-red', 'nm');

describe('a claimed quantity', () => {
  test('within the interval is held', () => {
    const it = checkQuantity('irradiance', 102, measured(100, 5), 'under');
    expect(it).toMatchObject({ outcome: 'within', unit: 'mW/cm²', claimed: 102 });
    expect(it.difference).toBeCloseTo(-1.9608, 4);
  });

  test('beyond the interval differs to one side, and missed on the side that the buyer loses by', () => {
    expect(checkQuantity('irradiance', 170, measured(100, 5), 'under')).toMatchObject({
      outcome: 'missed',
      difference: expect.closeTo(-41.176, 3),
    });
    expect(checkQuantity('irradiance', 80, measured(100, 5), 'under')).toMatchObject({
      outcome: 'apart',
      difference: 25,
    });
  });

  test('on either end of the interval is held, and a hair beyond is not', () => {
    const it = measured(100, 5);
    const [low, high] = it.interval95 ?? [Number.NaN, Number.NaN];
    expect(checkQuantity('irradiance', high, it, 'under').outcome).toBe('within');
    expect(checkQuantity('irradiance', high + 1e-9, it, 'under').outcome).toBe('missed');
    expect(checkQuantity('irradiance', low, it, 'under').outcome).toBe('within');
    expect(checkQuantity('irradiance', low - 1e-9, it, 'under').outcome).toBe('apart');
  });

  test('against an exact figure must be met exactly', () => {
    expect(checkQuantity('mains-draw', 100, measured(100), 'over').outcome).toBe('within');
    expect(checkQuantity('mains-draw', 101, measured(100), 'over').outcome).toBe('apart');
    expect(checkQuantity('mains-draw', 99, measured(100), 'over').outcome).toBe('missed');
  });

  test('of mains draw is missed by drawing more, and no loss by drawing less', () => {
    expect(checkQuantity('mains-draw', 700, measured(680, 1), 'over')).toMatchObject({
      outcome: 'apart',
      difference: expect.closeTo(-2.857, 3),
    });
    expect(checkQuantity('mains-draw', 600, measured(680, 1), 'over')).toMatchObject({
      outcome: 'missed',
      difference: expect.closeTo(13.333, 3),
    });
  });

  test('is not comparable where the uncertainty is not known, and says why', () => {
    expect(checkQuantity('mains-draw', 400, vague(360, 'the session does not name the meter'), 'over')).toMatchObject({
      outcome: 'not-comparable',
      difference: null,
      because: verbatim('the session does not name the meter'),
    });
  });

  test('is not comparable with a bound', () => {
    const bound = makeFigure({ ...identity(), bound: 'below' }, 0.1, { absent: verbatim('the reading is a bound') });
    expect(checkQuantity('irradiance', 5, bound, 'under')).toMatchObject({
      outcome: 'not-comparable',
      difference: null,
    });
  });
});

test('a claim with nothing to hold against it says why', () => {
  expect(notComparable('irradiance', 150, 'mW/cm²', { code: 'claimed-without-distance' })).toEqual({
    subject: 'irradiance',
    claimed: 150,
    unit: 'mW/cm²',
    measured: null,
    outcome: 'not-comparable',
    difference: null,
    because: { code: 'claimed-without-distance' },
  });
});

describe('a claimed wavelength', () => {
  test.each([
    [660, 'within'],
    [670, 'within'],
    [670.1, 'off'],
    [650, 'within'],
    [649.9, 'off'],
  ])('measured at %d nm against 660 nm is %s', (value, outcome) => {
    expect(WAVELENGTH_TOLERANCE_NM).toBe(10);
    expect(checkWavelength([660], wavelength(value))?.outcome).toBe(outcome);
  });

  test('is the nearest of its channel', () => {
    expect(checkWavelength([630, 660, 850], wavelength(642))).toMatchObject({
      subject: 'wavelength',
      unit: 'nm',
      claimed: 630,
      outcome: 'off',
      difference: 12,
    });
    expect(checkWavelength([630, 660, 850], wavelength(648))).toMatchObject({ claimed: 660, difference: -12 });
    expect(checkWavelength([660], wavelength(662.5))).toMatchObject({ outcome: 'within', difference: 2.5 });
  });

  test('belongs to red below 700 nm and to infrared from there on', () => {
    expect(INFRARED_FROM_NM).toBe(700);
    expect(checkWavelength([660], wavelength(850))).toBeUndefined();
    expect(checkWavelength([850], wavelength(660))).toBeUndefined();
    expect(checkWavelength([700], wavelength(700))?.claimed).toBe(700);
    expect(checkWavelength([699.9], wavelength(700))).toBeUndefined();
  });

  test('is not checked where none is claimed', () => {
    expect(checkWavelength([], wavelength(660))).toBeUndefined();
  });
});
