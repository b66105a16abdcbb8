import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { parseISO } from 'date-fns/parseISO';
import { STALE_PRICE_DAYS } from '../thresholds.ts';
import type { Check } from './check.ts';

export const priceAge: Check = {
  id: 'price-age',
  guards: 'A price that is no longer new.',
  run({ priceDate, today }) {
    if (!priceDate) return [];
    const days = differenceInCalendarDays(parseISO(today), parseISO(priceDate));
    if (days <= STALE_PRICE_DAYS) return [];
    return [
      {
        check: 'price-age',
        severity: 'note',
        finding: `The price is ${days} days old (${priceDate}); after ${STALE_PRICE_DAYS} days it should be looked up again.`,
        concerns: ['real-price', 'price-per-watt'],
      },
    ];
  },
};
