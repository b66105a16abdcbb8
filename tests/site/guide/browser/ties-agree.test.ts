/** Guide, panel's page, comparison, the reader's own prices, what a sum buys and the data files: one answer to what ties. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readContent } from '../../../../src/content/read/read-content.ts';
import { buildLedger } from '../../../../src/ledger/build-ledger.ts';
import type { Ledger, PanelEntry, RankBasis } from '../../../../src/ledger/ledger.ts';
import { COMPARE_GROUPS, type CompareRow } from '../../../../src/site/compare/browser/compare-rows.ts';
import { type ComparedContender, compareRow } from '../../../../src/site/compare/browser/compare-words.ts';
import { comparedPanel } from '../../../../src/site/compare/compare-data.ts';
import { panelsJson } from '../../../../src/site/export/panels-json.ts';
import { calculate, spend } from '../../../../src/site/guide/browser/own-prices.ts';
import { guideView } from '../../../../src/site/guide/guide-view.ts';
import { offersJson } from '../../../../src/site/guide/offers-data.ts';
import { rankSentence } from '../../../../src/site/guide/rank-sentence.ts';
import { unpackFigures } from '../../../../src/site/shared/browser/figure-pack.ts';
import { TODAY } from '../../../support/content-folder.ts';
import { expandPanels } from '../../../support/expand-panels.ts';
import { generateContent } from '../../../support/generate-content.ts';

let folder: string;
let ledger: Ledger;
let contenders: Map<string, ComparedContender>;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ties-agree-'));
  generateContent(folder, 36, 11);
  const { content } = readContent({ folder, today: TODAY });
  if (!content) throw new Error('the generated content has problems');
  ledger = buildLedger(content, { today: TODAY });
  contenders = new Map(
    [...ledger.panels.values()].map((it): [string, ComparedContender] => {
      // As the browser gets it.
      const panel = JSON.parse(JSON.stringify(comparedPanel(it, ledger)));
      return [it.slug, { panel, figures: unpackFigures(panel) }];
    }),
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const row = (metric: string): CompareRow => {
  const it = COMPARE_GROUPS.flatMap((group) => group.rows).find((one) => one.metric === metric);
  if (!it) throw new Error(`no row ${metric}`);
  return it;
};
const isTied = (metric: string, a: string, b: string) => {
  const [one, other] = [contenders.get(a), contenders.get(b)];
  if (!one || !other) throw new Error(`no file of ${a} or ${b}`);
  return ['tie', 'same'].includes(compareRow(row(metric), one, other).kind);
};
const groups = (basis: RankBasis) =>
  (basis === 'optical' ? ledger.classes : ledger.classesByEmitted).flatMap((it) => it.groups.map((one) => one.panels));
const rankBy = (basis: RankBasis, it: PanelEntry) => (basis === 'optical' ? it.rank : it.byEmitted.rank);

describe.each([
  ['optical', 'price-per-watt'],
  ['emitted', 'price-per-emitted-watt'],
] as const)('by %s watt', (basis, metric) => {
  test('the comparison ties just those that the guide ties', () => {
    let ties = 0;
    let others = 0;
    for (const panels of groups(basis)) {
      for (const a of panels) {
        for (const b of panels) {
          if (a === b) continue;
          const tied = rankBy(basis, a)?.tiedWith.includes(b.slug) ?? false;
          expect(isTied(metric, a.slug, b.slug), `${a.name} and ${b.name}`).toBe(tied);
          if (tied) ties++;
          else others++;
        }
      }
    }
    // Both kinds are met, or nothing is shown.
    expect(ties).toBeGreaterThan(20);
    expect(others).toBeGreaterThan(20);
  });

  test('the table, the panel’s page, the reader’s tools and the data say the same', () => {
    const cells = new Map(
      guideView(ledger, basis).classes.flatMap((it) =>
        it.tables.flatMap((table) => table.rows.map((one) => [one.name, one.ties] as const)),
      ),
    );
    const own = calculate(JSON.parse(offersJson(ledger)), { own: new Map(), extra: 0 }).panels;
    const data = expandPanels(JSON.parse([...panelsJson(ledger)].join(''))).panels as Array<Record<string, unknown>>;
    for (const panel of groups(basis).flat()) {
      const rank = rankBy(basis, panel);
      const tied = rank?.tiedWith ?? [];
      const { parts = [], others = [] } = cells.get(panel.name) ?? {};
      expect(parts.length + others.length > 0).toBe(tied.length > 0);
      expect(rankSentence(panel, ledger, basis).includes('A tie with')).toBe(tied.length > 0);
      const calculated = own.get(panel.slug);
      expect((basis === 'optical' ? calculated?.rank : calculated?.emittedRank)?.tiedWith).toEqual(tied);
      const published = data.find((it) => it.slug === panel.slug);
      expect(published?.[basis === 'optical' ? 'rank' : 'rank_by_emitted']).toMatchObject({ tiedWith: tied });
    }
  });
});

test('what a sum buys is as good where the comparison ties the powers', () => {
  const offers = JSON.parse(offersJson(ledger));
  const answers = [100, 200, 300, 500, 800, 1500].flatMap((sum) => {
    const answer = spend(offers, { own: new Map(), extra: 0 }, sum);
    return answer ? [{ sum, answer }] : [];
  });
  expect(answers.length).toBeGreaterThan(3);
  expect(answers.some(({ answer }) => answer.asGood.length > 0)).toBe(true);
  for (const { sum, answer } of answers) {
    const affordable = offers.panels.filter(
      (it: { slug: string; price: number; isReference: boolean }) =>
        it.isReference && it.price <= sum && it.slug !== answer.best.panel,
    );
    const tied = affordable
      .map((it: { slug: string }) => it.slug)
      .filter((slug: string) => isTied('optical-power', slug, answer.best.panel));
    expect(answer.asGood.map((it) => it.panel).toSorted()).toEqual(tied.toSorted());
  }
});
