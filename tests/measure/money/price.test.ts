import { describe, expect, test } from 'vitest';
import { NO_INSTRUMENT } from '../../../src/measure/instrument/instrument.ts';
import { type BasePrice, priceFigure, pricePerWattFigure } from '../../../src/measure/money/price.ts';
import { figure, line, vague } from '../make.ts';

const price = (part: Partial<BasePrice> = {}): BasePrice => ({
  panel: 'lantern-40',
  amount: 599,
  currency: 'EUR',
  rate: 1,
  baseCurrency: 'EUR',
  date: '2026-02-20',
  kind: 'paid',
  ...part,
});

describe('the price really paid', () => {
  test('is exact', () => {
    expect(priceFigure(price())).toMatchObject({
      id: 'lantern-40/real-price',
      value: 599,
      unit: 'currency',
      basis: 'measured',
      standardUncertainty: 0,
      interval95: [599, 599],
      calculation: { code: 'price-calculation', equation: 'C = 599 EUR', kind: 'paid', date: '2026-02-20' },
      notes: [],
      inputs: ['lantern-40/prices/2026-02-20'],
    });
  });

  test('in another currency is converted, and is then derived', () => {
    const it = priceFigure(price({ amount: 650, currency: 'USD', rate: 0.9 }));
    expect(it.value).toBeCloseTo(585, 10);
    expect(it.basis).toBe('derived');
    expect(it.calculation).toMatchObject({ equation: 'C = 650 USD × 0.9 = 585 EUR', kind: 'paid' });
  });

  test('that is a list price tells so', () => {
    const it = priceFigure(price({ kind: 'list' }));
    expect(it.calculation).toMatchObject({ kind: 'list', date: '2026-02-20' });
    expect(it.notes).toEqual([{ code: 'list-price-only' }]);
  });

  test('keeps its cents in the calculation', () => {
    expect(priceFigure(price({ amount: 12345.99 })).calculation).toMatchObject({ equation: 'C = 12345.99 EUR' });
  });
});

describe('price per optical watt', () => {
  test('is price over power; the power alone is uncertain', () => {
    const it = pricePerWattFigure('s', priceFigure(price()), figure(100, [line('sensor', 6)]), 'EUR');
    expect(it.value).toBeCloseTo(5.99, 12);
    expect(it.standardUncertainty).toBeCloseTo(0.3594, 12);
    expect(it).toMatchObject({
      id: 's/price-per-watt',
      unit: 'currency/W',
      method: { id: 'price-per-watt', version: 2 },
      calculation: 'c = C ÷ P = 599 EUR ÷ 100 W = 5.99 EUR/W',
    });
    expect(it.budget[0]?.contribution).toBeLessThan(0);
  });

  test('carries the note of a list price', () => {
    const it = pricePerWattFigure('s', priceFigure(price({ kind: 'list' })), figure(100), 'EUR');
    expect(it.notes).toEqual([{ code: 'list-price-only' }]);
  });

  test('has no uncertainty where the power has none', () => {
    const it = pricePerWattFigure('s', priceFigure(price()), vague(100, NO_INSTRUMENT), 'EUR');
    expect(it).toMatchObject({ standardUncertainty: null, uncertaintyAbsent: NO_INSTRUMENT });
  });
});
