import type { LimitResult } from '../../src/measure/exposure/index.ts';
import { limitWords } from '../../src/words/limits/index.ts';
import { textOf } from '../../src/words/limits/wording.ts';

/** All that is said of a figure beside a published limit, in one text; it ends with what it is not. */
export function sentenceOf(result: LimitResult): string {
  return textOf(limitWords(result));
}
