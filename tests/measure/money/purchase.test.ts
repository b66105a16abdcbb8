import { describe, expect, test } from 'vitest';
import { purchaseAnswer } from '../../../src/measure/money/purchase.ts';
import type { Contender } from '../../../src/measure/money/ranking.ts';
import { figure, line } from '../make.ts';

const contender = (panel: string, price: number, power: number, u = 0.1): Contender => ({
  panel,
  price,
  power: figure(power, [line(`${panel}/own`, u)]),
});

describe('what a sum of money buys', () => {
  const all = [
    contender('small', 50, 5),
    contender('middle', 100, 12),
    contender('twin', 90, 11.9),
    contender('next', 120, 18),
    contender('far', 400, 60),
  ];

  test('the strongest panel for no more than the sum', () => {
    expect(purchaseAnswer(all, 100, 'EUR')?.best.panel).toBe('middle');
    expect(purchaseAnswer(all, 99, 'EUR')?.best.panel).toBe('twin');
    expect(purchaseAnswer(all, 49.99, 'EUR')).toBeUndefined();
    expect(purchaseAnswer([], 1e9, 'EUR')).toBeUndefined();
  });

  test('and what is as good within the uncertainty: 0.1 W apart, each ± 0.1 W', () => {
    expect(purchaseAnswer(all, 100, 'EUR')?.asGood.map((it) => it.panel)).toEqual(['twin']);
    const sure = all.map((it) => contender(it.panel, it.price, it.power.value, 0.01));
    expect(purchaseAnswer(sure, 100, 'EUR')?.asGood).toEqual([]);
  });

  test('an error that two share does not make them as good', () => {
    const shared = (panel: string, power: number): Contender => ({
      panel,
      price: 10,
      power: figure(power, [line('meter', 0.05 * power)]),
    });
    expect(purchaseAnswer([shared('a', 10), shared('b', 9.5)], 10, 'EUR')?.asGood).toEqual([]);
  });

  test('a step-up is a little dearer, and its extra watts cost less each', () => {
    const stepUp = purchaseAnswer(all, 100, 'EUR')?.stepUp;
    expect(stepUp).toMatchObject({ panel: 'next', extraPrice: 20 });
    expect(stepUp?.extraPricePerWatt?.value).toBeCloseTo(20 / 6, 9);
    // 12 W for 100 are 8.33 a watt: one that asks 10 for each extra watt is no step up.
    const dear = [contender('a', 100, 12), contender('b', 120, 14)];
    expect(purchaseAnswer(dear, 100, 'EUR')?.stepUp).toBeUndefined();
  });

  test('a little dearer is up to half as much over the sum, and no cent more', () => {
    const stepUpAt = (price: number) =>
      purchaseAnswer([contender('a', 80, 12), contender('b', price, 90)], 100, 'EUR')?.stepUp?.panel;
    expect(stepUpAt(150)).toBe('b');
    expect(stepUpAt(150.01)).toBeUndefined();
  });
});
