/** What the demonstration weighs for each panel: no kind of file grows unseen. `npm run bench` has 100 and 1,000 panels. */
import { expect, test } from 'vitest';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { outputParts } from '../support/output-parts.ts';
import { panelFiles } from './site.ts';

const KB = 1000;
const parts = new Map(outputParts(DEMO_SITE).map((it) => [it.name, it]));
const panels = panelFiles('published').length + panelFiles('withdrawn').length;

/** KB a panel that a kind may come to: what it was when it was last made lighter, and three in a hundred more. */
test.each([
  ['panels’ pages', 61.9],
  ['calculation pages', 55.8],
  ['panels.json', 23.5],
  ['panels.csv', 5.3],
  ['table of figures', 14.4],
  ['files to compare with', 8.3],
  ['panels for the bench', 2.55],
])('%s come to at most %s KB a panel', (name, most) => {
  const { bytes = 0 } = parts.get(name) ?? {};
  expect(bytes).toBeGreaterThan(KB);
  expect(bytes / KB / panels).toBeLessThan(most);
});
