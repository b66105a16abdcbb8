import { problemAt } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import { isBlock } from '../schema/block.ts';
import type { Problem } from '../schema/problem.ts';
import type { Rule } from './rule.ts';

/** Control characters but for tab and line ends, and those that turn the direction of what follows them. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const HIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\ufffe\uffff]/;

/**
 * Texts with signs that nobody sees: pages, tables and feeds may not hold control characters, and one that turns the
 * direction makes a name look like another.
 */
export const visibleSigns: Rule = {
  id: 'visible-signs',
  run: (content) =>
    Object.values(content).flatMap((sources) => [...sources.values()].flatMap((source) => problemsOf(source))),
};

function problemsOf(source: Source, value = source.data, path: PropertyKey[] = []): Problem[] {
  if (typeof value === 'string') {
    const sign = HIDDEN.exec(value)?.[0];
    if (sign === undefined) return [];
    const code = `U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
    const seen = value.replace(new RegExp(HIDDEN, 'g'), '�');
    return [problemAt(source, { path, value: seen }, `a text without hidden signs; it has ${code}`, 'type it anew')];
  }
  if (Array.isArray(value)) return value.flatMap((it, i) => problemsOf(source, it, [...path, i]));
  return isBlock(value) ? Object.entries(value).flatMap(([key, it]) => problemsOf(source, it, [...path, key])) : [];
}
