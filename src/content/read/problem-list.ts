import type { Problem } from '../schema/problem.ts';

/**
 * All problems as one readable list, a block each: place, what was found, what is wanted, the likely slip.
 *
 * @example
 * content/panels/tern-300/index.md:14  field.width
 *   found   "20 kg"
 *   wanted  a length: a number in cm, or a text with one of: cm, mm, m, in, …
 *   hint    "kg" is a unit of a mass, not of a length
 *
 * @param ended what has not been done for them
 */
export function problemList(problems: readonly Problem[], ended = 'nothing was built'): string {
  const blocks = problems.map((it) => {
    const place = it.line === undefined ? it.file : `${it.file}:${it.line}`;
    return [
      it.field ? `${place}  ${it.field}` : place,
      `  found   ${it.found}`,
      `  wanted  ${it.wanted}`,
      ...(it.hint ? [`  hint    ${it.hint}`] : []),
    ].join('\n');
  });
  const files = new Set(problems.map((it) => it.file)).size;
  return [...blocks, `${counted(problems.length, 'problem')} in ${counted(files, 'file')}; ${ended}.`].join('\n\n');
}

/** `1 file`, `2 files`. */
export function counted(n: number, one: string): string {
  return `${n} ${one}${n === 1 ? '' : 's'}`;
}

/** Content that can't be used, with every problem in it. */
export class ContentError extends Error {
  override name = 'ContentError';
  problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(`\n\n${problemList(problems)}\n`);
    this.problems = problems;
    // The list says where the fault lies; where the program noticed it is of no use to the tester.
    this.stack = this.message;
  }
}
