import type { WordsOf } from '../speaker.ts';

/** What any part of the calculation may say, and which a page's script may be sent. */
export const GENERAL_WORDS: WordsOf<
  'not-measured' | 'uncertainty-not-known' | 'input-uncertainty-not-known' | 'divisor-reaches-nought' | 'verbatim'
> = {
  'not-measured': () => 'not measured',
  'uncertainty-not-known': () => 'the uncertainty is not known',
  'divisor-reaches-nought': () => 'what it is divided by may be nought',
  'input-uncertainty-not-known': () => 'the uncertainty of an input is not known',
  verbatim: ({ text }) => text,
};
