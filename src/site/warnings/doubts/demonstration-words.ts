import { type Field, fields } from '../../../content/read/fields.ts';
import { isBlock } from '../../../content/schema/block.ts';
import { fieldPath } from '../../../content/schema/problem.ts';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import { DEMONSTRATION_MAKERS, DEMONSTRATION_SENTENCES, DEMONSTRATION_SITE } from '../demonstration-sentences.ts';
import { type Warning, warningAt } from '../warning.ts';

/** Fields of guide.yaml that may well stay as the demonstration has them. */
const ANYBODYS = new Set(['sizeClasses']);

/** The demonstration's words in a guide that is no longer the demonstration. */
export function demonstrationWords({ content }: Loaded): Warning[] {
  const { data, source } = content.guide;
  const isDemonstration =
    data.site === DEMONSTRATION_SITE &&
    [...content.panels.values()].every(({ data: { maker } }) => DEMONSTRATION_MAKERS.has(maker));
  if (isDemonstration) return [];
  return textsBelow(source.data).flatMap(({ path, value }) => {
    const [first, ...more] = sentencesOf(String(value)).filter((it) => DEMONSTRATION_SENTENCES.has(it));
    if (first === undefined) return [];
    return [
      warningAt(source, path, {
        severity: 'impossible',
        check: 'demonstration-words',
        text: `This is the demonstration’s, word for word: “${first}”${more.length > 0 ? ` And ${more.length} more of its sentences.` : ''}`,
        hint: `say in your own words what holds for your guide, or leave ${fieldPath(path)} out where it may be`,
      }),
    ];
  });
}

/** The sentences of a text, on one line each; a title is one. */
export function sentencesOf(text: string): string[] {
  const plain = text.replace(/\s+/g, ' ').trim();
  return [...new Intl.Segmenter('en', { granularity: 'sentence' }).segment(plain)].map(({ segment }) => segment.trim());
}

/** All texts of the guide's file in which a tester speaks: of two words or more, so that no quantity is one. */
export function textsBelow(data: unknown, path: readonly PropertyKey[] = []): Field[] {
  if (typeof data === 'string') return /\p{L}{2,}\W+\p{L}{2,}/u.test(data) ? [{ path: [...path], value: data }] : [];
  if (Array.isArray(data)) return data.flatMap((it, i) => textsBelow(it, [...path, i]));
  if (!isBlock(data)) return [];
  return Object.keys(data)
    .filter((key) => path.length > 0 || !ANYBODYS.has(key))
    .flatMap((key) => fields(data, [key]).flatMap(({ value }) => textsBelow(value, [...path, key])));
}
