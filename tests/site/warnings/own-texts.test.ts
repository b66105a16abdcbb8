/** Texts of the tester's own in the place of the product's. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import { productTexts } from '../../../src/content/read/product-texts.ts';
import { valueAt } from '../../../src/content/schema/block.ts';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import { ownTexts } from '../../../src/site/warnings/doubts/own-texts.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

const RANK = 'methods/rank.mdx';
let folder: ContentFolder;
beforeEach(() => {
  folder = tinyContent();
});
afterEach(() => folder.delete());

const found = () => {
  const content = folder.content();
  return ownTexts({ content, ledger: buildLedger(content, { today: TODAY, drafts: false }) });
};
const edition = () => Number(valueAt(productTexts('methods').get('rank')?.source?.data, ['edition']));

test('that say which edition they stand for, and are up to date, are passed over', () => {
  expect(found()).toEqual([]);
});

test('that stand for an edition which has moved on get a note at the line that says so', () => {
  folder.edit(RANK, `standsFor: ${edition()}`, `standsFor: ${edition() + 4}`);
  expect(found()).toEqual([
    expect.objectContaining({
      ...{ severity: 'note', check: 'own-text', file: `content/${RANK}`, line: 2, field: 'standsFor' },
      text: `This text was written for edition ${edition() + 4} of the product’s, which is in edition ${edition()} now (src/texts/${RANK}).`,
    }),
  ]);
});

test('that do not say of which edition get a note, one that was copied with its edition too', () => {
  folder.edit(RANK, `standsFor: ${edition()}`, `edition: ${edition()}`);
  const [note, ...more] = found();
  expect(more).toEqual([]);
  expect(note).toMatchObject({
    severity: 'note',
    line: 2,
    text: expect.stringContaining('does not say of which edition'),
  });
  expect(note?.hint).toContain(`write \`standsFor: ${edition()}\` in the place of \`edition\``);
});

test('cautions without a part that other pages lead to are doubtful', () => {
  folder.edit('cautions.mdx', '## skin and heat', '## warmth');
  expect(found()).toEqual([
    expect.objectContaining({
      ...{ severity: 'doubt', check: 'own-text-parts', file: 'content/cautions.mdx' },
      text: expect.stringContaining('this page has not: #skin-and-heat. '),
    }),
  ]);
});
