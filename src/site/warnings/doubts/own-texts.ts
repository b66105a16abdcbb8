import { idsIn } from '../../../content/read/body-links.ts';
import type { Content, Entry } from '../../../content/read/content.ts';
import { productTexts, TEXTS, type TextCollection } from '../../../content/read/product-texts.ts';
import { valueAt } from '../../../content/schema/block.ts';
import type { Cautions } from '../../../content/schema/cautions.ts';
import type { MethodProse } from '../../../content/schema/method.ts';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import { type Warning, warningAt } from '../warning.ts';

/**
 * Texts of the tester's own that stand in the place of the product's: whether that has moved on since, and what the rest
 * of the guide leads to in the cautions.
 */
export function ownTexts({ content }: Loaded): Warning[] {
  return TEXTS.flatMap((collection) =>
    [...entriesOf(content, collection)].flatMap(([id, entry]) => {
      const product = productTexts(collection).get(id)?.source;
      if (entry.source.isProducts || !product) return [];
      const edition = valueAt(product.data, ['edition']);
      const missing = collection === 'cautions' ? idsIn(product).filter((it) => !idsIn(entry.source).includes(it)) : [];
      return [...editionNotes(entry, edition, product.file), ...missingParts(entry, missing, product.file)];
    }),
  );
}

function entriesOf(content: Content, collection: TextCollection): ReadonlyMap<string, Entry<MethodProse | Cautions>> {
  return collection === 'methods' ? content.methods : new Map([['cautions', content.cautions]]);
}

function editionNotes({ source, data }: Entry<MethodProse | Cautions>, edition: unknown, file: string): Warning[] {
  if (data.standsFor === edition) return [];
  const isUnsaid = data.standsFor === undefined;
  return [
    warningAt(source, isUnsaid ? [] : ['standsFor'], {
      severity: 'note',
      check: 'own-text',
      text: isUnsaid
        ? `This text stands in the place of the product’s and does not say of which edition of it. ${file} is in edition ${edition}.`
        : `This text was written for edition ${data.standsFor} of the product’s, which is in edition ${edition} now (${file}).`,
      hint: isUnsaid
        ? `compare the two, then write \`standsFor: ${edition}\`${data.edition === undefined ? '' : ' in the place of `edition`'}; or delete this file, and the product’s text stands`
        : `compare the two, take over what you want, then write \`standsFor: ${edition}\``,
    }),
  ];
}

function missingParts({ source }: Entry<unknown>, missing: readonly string[], file: string): Warning[] {
  if (missing.length === 0) return [];
  return [
    warningAt(source, [], {
      severity: 'doubt',
      check: 'own-text-parts',
      text: `Other pages lead to parts that this page has not: ${missing.map((it) => `#${it}`).join(', ')}. Whoever follows such a link lands at its top.`,
      hint: `keep the headings of ${file}, or give your own these ids`,
    }),
  ];
}
