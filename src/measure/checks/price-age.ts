import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { parseISO } from 'date-fns/parseISO';
import { STALE_PRICE_DAYS } from '../thresholds.ts';
import type { Check } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    'price-stale': { days: number; date: string; limit: number };
  }
}

/** A price that is no longer new. */
export const priceAge: Check = {
  id: 'price-age',
  run({ priceDate, today }) {
    if (!priceDate) return [];
    const days = differenceInCalendarDays(parseISO(today), parseISO(priceDate));
    if (days <= STALE_PRICE_DAYS) return [];
    return [
      {
        severity: 'note',
        finding: { code: 'price-stale', days, date: priceDate, limit: STALE_PRICE_DAYS },
        concerns: ['real-price', 'price-per-watt'],
      },
    ];
  },
};
