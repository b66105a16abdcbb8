import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { RULES } from '../../../src/content/rules/index.ts';

/** What rules share, and their list. */
const NO_RULES = [
  'calibrations',
  'index',
  'rule',
  'rules-of-text',
  'site-addresses',
  'page-parts',
  'display-range',
  'stated-quantities',
];

test('every file of the folder is a rule of the list, by its name', () => {
  const files = readdirSync(new URL('../../../src/content/rules/', import.meta.url))
    .map((name) => name.replace(/\.ts$/, ''))
    .filter((name) => !NO_RULES.includes(name));
  expect(RULES.map(({ id }) => id).toSorted()).toEqual(files.toSorted());
});
