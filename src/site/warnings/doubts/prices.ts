import type { Price } from '../../../content/schema/panel.ts';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import { type Warning, warningAt } from '../warning.ts';

/** A price this many times another of the same panel is odd: a sign between thousands, or another currency. Our own choice. */
export const ODD_STEP = 5;

/** Prices that do not go with one another: paid above list, far under it, or far from what was paid before. */
export function oddPrices({ content }: Loaded): Warning[] {
  return [...content.panels.values()].flatMap(({ data, source }) => {
    const warn = (index: number, key: 'list' | 'paid', text: string, hint: string) =>
      warningAt(source, ['prices', index, key], {
        severity: 'doubt',
        check: 'price-odd',
        text,
        hint,
        figures: ['real-price', 'price-per-watt'],
      });
    const within = data.prices.flatMap(({ list, paid, currency }, index) => {
      if (list === undefined || paid === undefined) return [];
      if (paid > list)
        return [
          warn(
            index,
            'paid',
            `${paid} ${currency} was paid, more than the list price of ${list} ${currency}.`,
            'right only where shipping makes up for it; otherwise the two are the wrong way round, or one was mistyped',
          ),
        ];
      if (paid * ODD_STEP < list)
        return [
          warn(
            index,
            'paid',
            `${paid} ${currency} was paid, less than a ${ordinal(ODD_STEP)} of the list price of ${list} ${currency}.`,
            'write prices without a sign between thousands: 4790',
          ),
        ];
      return [];
    });
    const dated = data.prices
      .map((price, index) => ({ price, index }))
      .toSorted((a, b) => a.price.date.localeCompare(b.price.date));
    const between = dated.flatMap(({ price, index }, i) => {
      const before = dated[i - 1]?.price;
      if (!before || before.currency !== price.currency) return [];
      const [now, then] = [amountOf(price), amountOf(before)];
      if (Math.max(now / then, then / now) <= ODD_STEP) return [];
      return [
        warn(
          index,
          price.paid === undefined ? 'list' : 'paid',
          `The price went from ${then} ${before.currency} on ${before.date} to ${now} ${price.currency} on ${price.date}, by more than a factor of ${ODD_STEP}.`,
          'write prices without a sign between thousands: 4790',
        ),
      ];
    });
    return [...within, ...between];
  });
}

/** What a buyer pays by this entry. */
function amountOf({ paid, list }: Price): number {
  return paid ?? list ?? Number.NaN;
}

const ordinal = (n: number) => ({ 2: 'half', 3: 'third', 4: 'quarter', 5: 'fifth' })[n] ?? `${n}th`;
