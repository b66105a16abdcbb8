/** What the demonstration weighs for each panel: no kind of file grows unseen. `npm run bench` has 100 and 1,000 panels. */
import { expect, test } from 'vitest';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { outputParts } from '../support/output-parts.ts';
import { panelFiles } from './site.ts';

const KB = 1000;
const panels = panelFiles('published').length + panelFiles('withdrawn').length;
const bounded = outputParts(DEMO_SITE).flatMap(({ name, bytes, most }) =>
  most === undefined ? [] : [{ name, bytes, most }],
);

test.each(bounded)('$name come to at most $most KB a panel', ({ bytes, most }) => {
  expect(bytes).toBeGreaterThan(KB);
  expect(bytes / KB / panels).toBeLessThan(most);
});

test('pages and data that each panel has are bounded', () => {
  expect(bounded.map((it) => it.name)).toEqual(expect.arrayContaining(['panels’ pages', 'panels.json']));
  expect(bounded.length).toBeGreaterThan(6);
});
