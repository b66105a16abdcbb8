import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { pricedAs } from '../../words/figure-words.ts';
import { money, type Shown, showDate } from '../../words/format.ts';

/** The newest price in the currency that it was asked in, where that is not the guide's. */
export function asPriced(panel: PanelEntry, currency: string): Shown | undefined {
  const price = panel.prices[0]?.price;
  if (!price || price.currency === currency) return undefined;
  return pricedAs(money(price.paid ?? price.list ?? 0, price.currency));
}

/** The guide's dated rate for a currency: "1 GBP = 1.15 EUR, 2 Nov 2026"; undefined for its own. */
export function rateWords({ currency, rates }: Ledger['guide'], of: string): string | undefined {
  const rate = rates.find((it) => it.currency === of);
  return rate && `1 ${of} = ${rate.rate} ${currency}, ${showDate(rate.date)}`;
}
