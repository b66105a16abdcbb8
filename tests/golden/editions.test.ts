/** What one of the product's texts says changes with its edition alone, and each method has its text. */
import { expect, test } from 'vitest';
import { productTexts } from '../../src/content/read/product-texts.ts';
import { COLLECTIONS } from '../../src/content/schema/collections.ts';
import { METHODS } from '../../src/measure/methods.ts';
import { goldenEditions, presentEditions } from '../support/text-editions.ts';

test('a text that says something else is a new edition (npx node tests/golden/renew-editions.ts raises it)', () => {
  const golden = goldenEditions();
  const present = presentEditions();
  const stale = Object.entries(present).filter(
    ([path, { edition, mark }]) => golden[path]?.mark !== mark || golden[path]?.edition !== edition,
  );
  expect(stale.map(([path]) => path)).toEqual([]);
  expect(Object.keys(golden)).toEqual(Object.keys(present));
});

test('each method has its text, in an edition, with a history that ends with the version that is computed', () => {
  const texts = productTexts('methods');
  expect([...texts.keys()].toSorted()).toEqual(METHODS.map((it) => it.id).toSorted());
  for (const { id, version } of METHODS) {
    const prose = COLLECTIONS.methods.schema.parse(texts.get(id)?.source?.data);
    expect([id, prose.versions.at(-1)?.version], id).toEqual([id, version]);
    expect(prose.edition, id).toBeGreaterThan(0);
  }
});
