import type { WordsOf } from '../speaker.ts';

/** Why two figures can't be held against each other. */
export const DIFFERENCE_WORDS: WordsOf<'one-only-a-bound' | 'an-uncertainty-not-known' | 'no-ratio-to-nought'> = {
  'one-only-a-bound': () => 'one of the two is only a bound',
  'an-uncertainty-not-known': () => 'an uncertainty is not known',
  'no-ratio-to-nought': () => 'there is no ratio to nought',
};
