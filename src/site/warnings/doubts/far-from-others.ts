import { median } from 'simple-statistics';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import { isFigure } from '../../../measure/figure.ts';
import { rounded } from '../../../words/rounded.ts';
import { type Warning, warningAt } from '../warning.ts';

/** A price per watt this many times the middle of the others, or this part of it, is odd. Our own choice. */
export const FAR = 8;
/** Fewer others have no middle worth the name. Our own choice. */
export const FEWEST_OTHERS = 3;

/** Prices per optical watt far from all others of the guide: a slip in price, field or readings shows here at last. */
export function farFromOthers({ content, ledger }: Loaded): Warning[] {
  const priced = [...ledger.panels.values()].flatMap(({ slug, figures }) => {
    const it = figures.get('price-per-watt');
    return isFigure(it) ? [{ slug, value: it.value }] : [];
  });
  if (priced.length <= FEWEST_OTHERS) return [];
  const middle = median(priced.map((it) => it.value));
  return priced.flatMap(({ slug, value }) => {
    // The middle of all is cheap, and tells whether the middle of the others need be looked for.
    if (Math.max(value / middle, middle / value) <= FAR / 2) return [];
    const others = median(priced.filter((it) => it.slug !== slug).map((it) => it.value));
    if (Math.max(value / others, others / value) <= FAR) return [];
    const entry = content.panels.get(slug);
    if (!entry) return [];
    const currency = ledger.guide.currency;
    return [
      warningAt(entry.source, ['prices'], {
        severity: 'doubt',
        check: 'far-from-others',
        text: `A price of ${rounded(value)} ${currency} for each optical watt is far from that of the other ${priced.length - 1} panels, ${rounded(others)} ${currency}/W in the middle.`,
        hint: 'look at the price, the LED field and the unit of the readings again',
        figures: ['price-per-watt', 'optical-power', 'real-price'],
      }),
    ];
  });
}
