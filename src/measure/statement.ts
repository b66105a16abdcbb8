/**
 * What the calculation has to tell besides numbers (why a figure is not there, what was assumed, what looks odd) is a
 * code with its data. `words/` puts it into a sentence, in one place.
 *
 * Each file that tells something declares its codes here, beside the code that yields them:
 *
 * ```ts
 * declare module '../statement.ts' {
 *   interface StatementData {
 *     'grid-all-rejected': object;
 *     'grid-points-empty': { empty: number; of: number };
 *   }
 * }
 * ```
 *
 * and `words/` has one entry for each, or the types refuse it.
 */
export interface StatementData {
  /** Nobody read it. */
  'not-measured': object;
  /** Nobody read a grid of points. */
  'grid-not-measured': object;
  /** Why there is no uncertainty, where nothing else says it. */
  'uncertainty-not-known': object;
  /** A figure that rests on what can't be right. */
  'impossible-as-it-stands': { finding: Statement };
  /** What another figure would be made of was not read. */
  'input-not-measured': { metric: string };
  /** Words that were put together before: by the tester, or by the build for a page's script. */
  verbatim: { text: string };
}

export type StatementCode = keyof StatementData;

/** One code with its data. */
export type StatementOf<Code extends StatementCode> = { readonly code: Code } & Readonly<StatementData[Code]>;

/** Any code with its data. */
export type Statement = { [Code in StatementCode]: StatementOf<Code> }[StatementCode];

/** Words that stand already, as a statement. */
export function verbatim(text: string): StatementOf<'verbatim'> {
  return { code: 'verbatim', text };
}

/** True where two statements say the same: one code, the same data. */
export function isSameStatement(one: Statement, other: Statement): boolean {
  return one === other || statementKey(one) === statementKey(other);
}

/** True for a statement of one code, which may be among others. */
export function isCode<Code extends StatementCode>(
  it: Statement,
  code: Code,
): it is Extract<Statement, { code: Code }> {
  return it.code === code;
}

/** A text that is the same for statements that say the same. */
export function statementKey(it: Statement): string {
  return JSON.stringify(it);
}
