import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gap } from '../../../../src/measure/figure.ts';
import { verbatim } from '../../../../src/measure/statement.ts';
import { errorBars } from '../../../../src/site/shared/browser/error-bar.ts';
import { figure, line, RUNS, vague } from '../../../measure/make.ts';

const K = 1.959963985;
const within = (value: number, half: number) => figure(value, [line('own', half / K)], 'price-per-watt', 'currency/W');

describe('error bars', () => {
  test('lie on one scale from nought to the highest end of any interval', () => {
    const drawn = errorBars([within(5, 1), within(15, 5), within(10, 0)]);
    expect(drawn).toEqual([
      { from: 20, to: 30, at: 25 },
      { from: 50, to: 100, at: 75 },
      { from: 50, to: 50, at: 50 },
    ]);
  });

  test('what has no interval has no error bar, and does not stretch the scale', () => {
    const drawn = errorBars([
      within(15, 5),
      vague(1000),
      gap('price-per-watt', verbatim('no price is recorded')),
      undefined,
    ]);
    expect(drawn).toEqual([{ from: 50, to: 100, at: 75 }, undefined, undefined, undefined]);
  });

  test('of nothing there are none', () => {
    expect(errorBars([])).toEqual([]);
    expect(errorBars([undefined, vague(5)])).toEqual([undefined, undefined]);
    expect(errorBars([figure(0, [], 'price-per-watt', 'currency/W')])).toEqual([undefined]);
  });

  test('stay on the scale, in order, and keep proportions to a tenth of a per cent of it', () => {
    const some = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 1000, noNaN: true }), fc.double({ min: 0, max: 1.5, noNaN: true })),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(some, (pairs) => {
        const figures = pairs.map(([value, share]) => within(value, share * value));
        const top = Math.max(...figures.map((it) => it.interval95?.[1] ?? 0));
        errorBars(figures).forEach((it, i) => {
          if (!it) throw new Error('an error bar is missing');
          expect(it.from).toBeGreaterThanOrEqual(0);
          expect(it.from).toBeLessThanOrEqual(it.at);
          expect(it.at).toBeLessThanOrEqual(it.to);
          expect(it.to).toBeLessThanOrEqual(100);
          expect(it.at).toBeCloseTo((100 * (figures[i]?.value ?? Number.NaN)) / top, 0);
        });
      }),
      RUNS,
    );
  });
});
