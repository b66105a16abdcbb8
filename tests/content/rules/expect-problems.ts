import { expect } from 'vitest';
import type { Problem } from '../../../src/content/schema/problem.ts';

/** A problem as a test wants it: exact texts, or patterns where a text lists much. */
export interface Wanted {
  file: string;
  /** Undefined where the whole file is concerned. */
  line?: number;
  field?: string;
  found: string | RegExp;
  wanted: string | RegExp;
  hint?: string | RegExp;
}

const text = (it: string | RegExp) => (typeof it === 'string' ? it : expect.stringMatching(it));

/** The problems are these and no others, each in all its parts; a hint that is not wanted is a failure too. */
export function expectProblems(problems: readonly Problem[], ...wanted: Wanted[]): void {
  const plain = problems.map(({ file, line, field, found, wanted: what, hint }) => ({
    file,
    line,
    field,
    found,
    wanted: what,
    hint,
  }));
  expect(plain).toEqual(
    wanted.map((it) => ({
      file: `content/${it.file}`,
      line: it.line,
      field: it.field ?? '',
      found: text(it.found),
      wanted: text(it.wanted),
      hint: it.hint === undefined ? undefined : text(it.hint),
    })),
  );
}
