import type { Statement, StatementCode, StatementData } from '../measure/statement.ts';

/** What each of some codes is in words: within a sentence, without a full stop. */
export type WordsOf<Code extends StatementCode> = { readonly [C in Code]: (it: StatementData[C]) => string };

/**
 * Puts statements into words by some of the tables. What runs in a reader's browser brings only the tables that its
 * statements are in; the build has all of them (`say`).
 *
 * @throws Error for a code that is in none of the tables
 */
export function speaker(words: Partial<WordsOf<StatementCode>>): (it: Statement) => string {
  return (it) => {
    if (typeof it === 'string') return it;
    // One code goes with one shape of data; the compiler can't see that through the table.
    const put = words[it.code] as ((data: Statement) => string) | undefined;
    if (!put) throw new Error(`no words for "${it.code}"`);
    return put(it);
  };
}
