import type { Price } from '../../content/schema/panel.ts';
import { ODD_STEP } from '../../site/warnings/doubts/prices.ts';
import { money, showDate } from '../../words/format.ts';
import type { Slip } from '../ask/slips.ts';

/** What is often a slip in a price, and what accepting it means. */
export const PRICE_SLIPS = {
  'unknown-panel': 'take the panel of the nearest name',
  'no-price': 'a row without an amount; it can only be left out',
  'factor-ten': `an amount more than ${ODD_STEP} times another one of the panel, or under a ${ODD_STEP}th of it`,
  'paid-over-list': 'more paid than the list price',
  'same-day': 'a price of that day is there already: replace it',
  older: 'a day before that of the newest price',
  currency: 'another currency than before',
  unchanged: 'the same amounts as before: they were looked up again, and stand',
} as const;

export type PriceSlip = keyof typeof PRICE_SLIPS;

/** What a price is held against. */
export interface Before {
  /** The newest price of the panel. */
  newest: Price | undefined;
  /** The price of the same day. */
  same: Price | undefined;
  /** The one before its day. */
  earlier: Price | undefined;
}

/**
 * What is odd in a price beside the panel's others.
 *
 * @param of the panel's name, and where the row stands
 */
export function priceSlips(price: Price, before: Before, of: { name: string; entry: string | undefined }): Slip[] {
  const slips: Slip[] = [];
  const slip = (id: PriceSlip, text: string, offer: string, together?: string) =>
    slips.push({ id, entry: of.entry, text: `${of.name}: ${text}`, offer, ...(together && { together }) });
  const { list, paid, currency, date } = price;
  const show = (amount: number) => money(amount, currency);
  const { newest, same, earlier } = before;

  if (!same && earlier && isAlike(price, earlier)) {
    const since = `the same as on ${showDate(earlier.date)}, ${amounts(earlier)}.`;
    // What is odd in it was odd before.
    slip('unchanged', since, 'Was it looked up again?', 'Were these looked up again on that day, and stand?');
    return slips;
  }
  const far = pairsOf(price, earlier).find(([mine, other]) => Math.max(mine / other, other / mine) > ODD_STEP);
  if (far) {
    const [mine, other, what] = far;
    slip(
      'factor-ten',
      `${show(mine)}, and ${show(other)} ${what}; is a sign between thousands or a digit astray?`,
      'Write it all the same?',
    );
  }
  if (list !== undefined && paid !== undefined && paid > list) {
    slip(
      'paid-over-list',
      `${show(paid)} paid is more than the list price of ${show(list)}.`,
      'Write it all the same?',
    );
  }
  const compared = same ?? earlier;
  if (compared && compared.currency !== currency) {
    slip('currency', `in ${currency}, and before in ${compared.currency}.`, 'Is the currency right?');
  }
  if (same) {
    slip(
      'same-day',
      `there is a price of ${showDate(date)} already, ${amounts(same)}.`,
      `Replace it by ${amounts(price)}?`,
    );
  } else if (newest && date < newest.date) {
    slip(
      'older',
      `${showDate(date)} is before ${showDate(newest.date)}, the day of the newest price; that one stays in use.`,
      'Add it to the earlier ones?',
    );
  }
  return slips;
}

/** Amounts that should be near one another. */
function pairsOf(price: Price, earlier: Price | undefined): Array<[mine: number, other: number, what: string]> {
  const { list, paid } = price;
  const pairs: Array<[number | undefined, number | undefined, string]> = [[paid, list, 'by its list price']];
  if (earlier?.currency === price.currency) {
    const when = `on ${showDate(earlier.date)}`;
    pairs.push([paid ?? list, earlier.paid ?? earlier.list, when], [list, earlier.list, `by the list price ${when}`]);
  }
  return pairs.flatMap(([mine, other, what]) =>
    mine === undefined || other === undefined ? [] : [[mine, other, what]],
  );
}

/** True for the same amounts in the same currency. */
export const isAlike = (one: Price, other: Price) =>
  one.list === other.list && one.paid === other.paid && one.currency === other.currency;

/** `€849 paid, list price €1,190`. */
export function amounts({ list, paid, currency }: Price): string {
  const parts = [
    ...(paid === undefined ? [] : [`${money(paid, currency)} paid`]),
    ...(list === undefined ? [] : [`list price ${money(list, currency)}`]),
  ];
  return parts.join(', ');
}
