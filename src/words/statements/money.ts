import { showDate } from '../format.ts';
import type { WordsOf } from '../speaker.ts';

/** What figures of money have to tell. */
export const MONEY_WORDS: WordsOf<'price-calculation' | 'list-price-only'> = {
  'price-calculation': ({ equation, kind, date }) =>
    `${equation}, ${kind === 'paid' ? 'really paid' : 'list price'} on ${showDate(date)}`,
  'list-price-only': () => 'list price: what buyers really pay is not recorded',
};
