import { isPair, isSeq, parseDocument, visit } from 'yaml';
import type { Source } from './source.ts';

/** A text of which the file has more than is read. */
export interface CutText {
  path: PropertyKey[];
  /** What is read. */
  kept: string;
  /** What stands after it, with its `#`, and is taken for a comment. */
  rest: string;
}

/** Where no text ends so, a file's YAML need not be gone through again. */
const ANYWHERE = /\p{L}.* #[^\s#]/u;

/**
 * Texts without quotes that end at a ` #`: YAML takes `Best of #1 panels` for "Best of" and a comment. A comment has a
 * space after its `#`, and a single word or a quantity before it; what looks otherwise was meant as text.
 */
export function cutTexts({ yaml }: Pick<Source, 'yaml'>): CutText[] {
  if (!ANYWHERE.test(yaml)) return [];
  const found: CutText[] = [];
  visit(parseDocument(yaml, { logLevel: 'silent' }), {
    Scalar(key, { type, value, comment }, ancestors) {
      if (key === 'key' || type !== 'PLAIN' || typeof value !== 'string' || !comment || /^[\s#]/.test(comment)) return;
      if (!/^\p{L}/u.test(value) || !(/\s/.test(value) || /^\d/.test(comment))) return;
      const nodes = [...ancestors.slice(1)];
      const path = nodes.flatMap((node, i): PropertyKey[] => {
        if (isPair(node)) return [String(node.key)];
        return isSeq(node) ? [node.items.indexOf(nodes[i + 1] ?? node.items[Number(key)])] : [];
      });
      found.push({ path, kept: value, rest: `#${comment}` });
    },
  });
  return found;
}
