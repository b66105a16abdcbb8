import { expect, test } from 'vitest';
import { slugOf } from '../../../src/content/templates/file-name.ts';

test.each([
  ['Kelpwright Plover', 'kelpwright-plover'],
  ['Müller & Söhne', 'muller-sohne'],
  ['Große Tafel', 'grosse-tafel'],
  ['Blåskærm Øst', 'blaskaerm-ost'],
  ['Światło', 'swiatlo'],
  ['R-150/2 (new)', 'r-150-2-new'],
  ['日本', ''],
])('%s', (name, slug) => {
  expect(slugOf(name)).toBe(slug);
});
