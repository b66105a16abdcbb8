import type { Said, StatementCode } from '../measure/statement.ts';
import { speaker, type WordsOf } from './speaker.ts';
import { FINDING_WORDS, HINT_WORDS } from './statements/checks.ts';
import { CLAIM_WORDS } from './statements/claims.ts';
import { DIFFERENCE_WORDS } from './statements/difference.ts';
import { GENERAL_WORDS } from './statements/general.ts';
import { ledgerWords } from './statements/ledger.ts';

/** Statements hold others: what is said of them is said in the same words. */
const within = (it: Said): string => say(it);

/** Every code that the calculation may yield: one that has no words here does not pass the types. */
const WORDS: WordsOf<StatementCode> = {
  ...GENERAL_WORDS,
  ...DIFFERENCE_WORDS,
  ...CLAIM_WORDS,
  ...FINDING_WORDS,
  ...HINT_WORDS,
  ...ledgerWords(within),
};

/** A statement of the calculation in words, within a sentence, without a full stop. */
export const say = speaker(WORDS);
