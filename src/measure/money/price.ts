import type { Figure } from '../figure.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import { exactOver, makeFigure } from '../uncertainty.ts';
import { pricePerWatt } from './cost.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** An equation of a price, with what kind of price it is and of which day. */
    'price-calculation': { equation: string; kind: BasePrice['kind']; date: string };
    'list-price-only': object;
  }
}

/** A price in the guide's base currency. */
export interface BasePrice {
  panel: string;
  /** In the currency it was asked in. */
  amount: number;
  currency: string;
  /** Base currency a unit of the above; 1 where they are the same. */
  rate: number;
  baseCurrency: string;
  date: string;
  kind: 'paid' | 'list';
}

/** The price that a buyer really pays, base currency. Money is exact; what ages is its date, which is a note. */
export function priceFigure(price: BasePrice): Figure {
  const { panel, amount, rate, currency, baseCurrency, date, kind } = price;
  const value = amount * rate;
  const converted = rate !== 1;
  return makeFigure(
    {
      ...identityOf('real-price', panel),
      basis: converted ? 'derived' : 'measured',
      inputs: [`${panel}/prices/${date}`],
      calculation: {
        code: 'price-calculation',
        equation: `C = ${number(amount, 7)} ${currency}${converted ? ` × ${rate} = ${number(value, 7)} ${baseCurrency}` : ''}`,
        kind,
        date,
      },
      notes: kind === 'list' ? [{ code: 'list-price-only' }] : [],
    },
    value,
    { budget: [] },
  );
}

/** Price per optical watt, base currency a W. */
export function pricePerWattFigure(session: string, price: Figure, power: Figure, baseCurrency: string): Figure {
  const value = pricePerWatt(price.value, power.value);
  return exactOver(
    {
      ...identityOf('price-per-watt', session),
      basis: 'derived',
      calculation: `c = C ÷ P = ${number(price.value, 7)} ${baseCurrency} ÷ ${number(power.value)} W = ${number(value)} ${baseCurrency}/W`,
    },
    price,
    power,
  );
}
