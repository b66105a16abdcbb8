/** What a doubt about one reading does to all that is shown of a panel; by the tiny content, changed in one reading. */

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import type { Ledger, PanelEntry } from '../../../src/ledger/ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { COMPARE_GROUPS } from '../../../src/site/compare/browser/compare-rows.ts';
import { compareRow } from '../../../src/site/compare/browser/compare-words.ts';
import { comparedPanel } from '../../../src/site/compare/compare-data.ts';
import { panelsCsv } from '../../../src/site/export/panels-csv.ts';
import { panelsJson } from '../../../src/site/export/panels-json.ts';
import { FIGURES_TABLE } from '../../../src/site/export/tables/figures-table.ts';
import { tableCsv } from '../../../src/site/export/tables/table.ts';
import { guideView } from '../../../src/site/guide/guide-view.ts';
import { offersJson } from '../../../src/site/guide/offers-data.ts';
import { rankSentence } from '../../../src/site/guide/rank-sentence.ts';
import { panelView } from '../../../src/site/panel/panel-view.ts';
import type { PlanData } from '../../../src/site/plan/browser/plan-panel.ts';
import { isPlannable, planJson } from '../../../src/site/plan/plan-data.ts';
import { plotsView } from '../../../src/site/plots/plots-view.ts';
import { unpackFigures } from '../../../src/site/shared/browser/figure-pack.ts';
import { say } from '../../../src/words/say.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { expandPanels } from '../../support/expand-panels.ts';
import { parseCsv, parseRecords } from '../../support/parse-csv.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

/** The ledger with another mains draw: 22 W of light from 100 W is 22 %, from 32 W 69 %, from 10 W 222 %. */
function drawing(watts: number): { ledger: Ledger; plover: PanelEntry } {
  content.edit(PLOVER, 'combined: 100.0', `combined: ${watts}`);
  const ledger = buildLedger(content.content(), { today: TODAY });
  return { ledger, plover: ledger.panels.get('plover') as PanelEntry };
}

const json = (ledger: Ledger) => expandPanels(JSON.parse([...panelsJson(ledger)].join('')));
const cellOf = (ledger: Ledger, column: string) => {
  const rows = guideView(ledger).classes.flatMap((it) => it.tables.flatMap((table) => table.rows));
  const row = rows.find((it) => it.name === 'Wrackline Plover');
  return column === 'rank'
    ? { dagger: row?.rankDagger, text: row?.rank }
    : row?.cells.find((it) => it.column === column);
};
const contender = (panel: PanelEntry, ledger: Ledger) => {
  const file = comparedPanel(panel, ledger);
  return { panel: file, figures: unpackFigures(file) };
};

describe('a figure in doubt', () => {
  test('is ranked, and marked wherever it goes', () => {
    const { ledger, plover } = drawing(32);
    expect(plover.rank?.place).toBe(1);
    const perWatt = plover.figures.get('price-per-watt');
    if (!isFigure(perWatt)) throw new Error('no price per watt');
    // The efficiency and the one less standby say so in a sentence each.
    expect(perWatt.flags.map((it) => [it.check, it.severity, it.from])).toEqual([
      ['efficiency-possible', 'doubt', 'optical-power'],
      ['efficiency-possible', 'doubt', 'optical-power'],
    ]);
    for (const column of ['rank', 'price-per-watt']) {
      expect(cellOf(ledger, column)?.dagger, column).toEqual({
        mark: '†',
        label: 'in doubt, for it is made of optical power at the reference plane, see the flags',
      });
    }
    expect(cellOf(ledger, 'optical-power')?.dagger?.label).toBe('in doubt, see the flags');
    expect(cellOf(ledger, 'price')?.dagger).toBeUndefined();
    expect(rankSentence(plover, ledger)).toMatch(/ † The figure it goes by is in doubt\.$/);
    const view = panelView(plover, ledger);
    expect(view.further.find((it) => it.metric === 'running-cost')?.dagger?.label).toContain('mains draw');
    expect(view.prices.every((it) => it.dagger?.mark === '†')).toBe(true);
    expect(plotsView(ledger)[0]?.points.find((it) => it.name === plover.name)?.dagger?.mark).toBe('†');
    const offers = JSON.parse(offersJson(ledger));
    expect(offers.panels.find((it: { slug: string }) => it.slug === 'plover').isInDoubt).toBe(true);
  });

  test('is so in the data files, with the figure that the flag comes from', () => {
    const { ledger } = drawing(32);
    const [plover] = json(ledger).panels;
    expect(plover.rank).toMatchObject({ place: 1, in_doubt: true });
    expect(plover.sessions[0].figures['price-per-watt'].flags).toContainEqual({
      check: 'efficiency-possible',
      severity: 'doubt',
      from: 'optical-power',
    });
    const lines = parseCsv([...tableCsv(FIGURES_TABLE, ledger)].join(''));
    const flags = lines[0]?.indexOf('flags') ?? -1;
    const line = lines.find((it) => it.includes('price-per-watt') && it.includes('plover'));
    expect(line?.[flags]?.split(' ')).toContain('efficiency-possible@optical-power');
    const [wide] = parseRecords([...panelsCsv(ledger)].join(''));
    expect(wide?.in_doubt?.split(' ')).toEqual(expect.arrayContaining(['optical-power', 'price-per-watt']));
  });

  test('leaves what is not made of it alone', () => {
    const { ledger, plover } = drawing(32);
    const peak = plover.figures.get('peak-irradiance-combined');
    expect(isFigure(peak) && peak.flags.filter((it) => it.severity !== 'note')).toEqual([]);
    const [, teasel] = json(ledger).panels;
    expect(teasel.rank.in_doubt).toBe(false);
  });
});

/** Why a panel has no rank, in words. */
const absence = ({ rankAbsent }: PanelEntry) => (rankAbsent === undefined ? '' : say(rankAbsent));

describe('a figure that can’t be right', () => {
  test('is not ranked by either basis, and the panel stands apart with the reason', () => {
    const { ledger, plover } = drawing(10);
    expect(plover.rank).toBeUndefined();
    expect(plover.byEmitted.rank).toBeUndefined();
    expect(absence(plover)).toMatch(/^‡ impossible as it stands\. An efficiency of \d+ % is not possible: .*[^.]$/);
    const unranked = guideView(ledger).classes.flatMap((it) => it.unranked);
    expect(unranked).toContainEqual({
      name: 'Wrackline Plover',
      address: '/panels/plover/',
      reason: absence(plover),
    });
    expect(panelView(plover, ledger).head.standing).toBe(`Not ranked: ${absence(plover)}.`);
  });

  test('is in no frontier, step-up, plot or sum, nor held against another', () => {
    const { ledger, plover } = drawing(10);
    expect(ledger.frontier).toEqual(['teasel']);
    expect(plover.frontier).toBeUndefined();
    expect(plover.stepUps.best).toEqual([]);
    expect(panelView(plover, ledger).hasStepUps).toBe(false);
    for (const other of ledger.panels.values()) {
      expect(other.stepUps.best).not.toContain('plover');
    }
    for (const plot of plotsView(ledger)) {
      expect(plot.points.map((it) => it.name)).not.toContain(plover.name);
      expect(plot.absent.map((it) => it.name)).toContain(plover.name);
    }
    const offers = JSON.parse(offersJson(ledger));
    expect(offers.panels.map((it: { slug: string }) => it.slug)).toEqual(['teasel']);
    const row = COMPARE_GROUPS.flatMap((it) => it.rows).find((it) => it.metric === 'price-per-watt');
    const teasel = ledger.panels.get('teasel') as PanelEntry;
    if (!row) throw new Error('no row');
    for (const [it, first] of [
      [plover, teasel],
      [teasel, plover],
    ] as const) {
      expect(compareRow(row, contender(it, ledger), contender(first, ledger))).toEqual({
        kind: 'unknown',
        reason: verbatim('that of Wrackline Plover can’t be right as it stands'),
      });
    }
    expect(json(ledger).panels[0]).toMatchObject({ rank: null, rank_absent: absence(plover), frontier: null });
  });

  test('nothing of the kind at a draw that can be', () => {
    const { plover, ledger } = drawing(99);
    expect(plover.rank?.place).toBe(1);
    expect(cellOf(ledger, 'rank')?.dagger).toBeUndefined();
  });
});

describe('a panel alone', () => {
  test('is called so in the table, on its page and in the data', () => {
    const { ledger, plover } = drawing(100);
    expect(cellOf(ledger, 'rank')?.text).toBe('alone');
    expect(panelView(plover, ledger).head.standing).toMatch(
      /^Alone: no other panel of the class Small was measured at 15\.24 cm/,
    );
    expect(json(ledger).panels[0].rank).toMatchObject({ of: 1, alone: true });
  });
});

describe('links to the tools', () => {
  test('are there where the tool takes the panel', () => {
    const { ledger, plover } = drawing(100);
    expect(panelView(plover, ledger)).toMatchObject({ plan: '/plan/?panel=plover', compare: '/compare/?with=plover' });
  });

  test('are not where the planner has no model of its light, or does not name it', () => {
    // Without a field there is nothing to model.
    content.edit(PLOVER, 'field:\n  width: 20 cm\n  height: 30 cm\n', '');
    const { ledger, plover } = drawing(100);
    const view = panelView(plover, ledger);
    expect(view.plan).toBeUndefined();
    expect(view.compare).toBe('/compare/?with=plover');
  });

  test('are not for a withdrawn panel, save to the comparison', () => {
    content.edit(PLOVER, 'status: published', 'status: withdrawn\nstatusReason: No longer sold');
    const { ledger, plover } = drawing(100);
    const view = panelView(plover, ledger);
    expect(view.plan).toBeUndefined();
    expect(view.compare).toBe('/compare/?with=plover');
  });
});

describe('the planner', () => {
  const planned = (ledger: Ledger) =>
    (JSON.parse(planJson(ledger)) as PlanData).panels.find((it) => it.slug === 'plover');

  test('marks what rests on a figure in doubt, and nothing else', () => {
    // 69 % of 32 W: the watts are in doubt, at either end.
    const panel = planned(drawing(32).ledger);
    expect(panel?.doubts).toEqual({ mains: { mark: '†', label: 'in doubt, see the flags' } });
    expect(panel?.model).toBeDefined();
    // Light that had not settled: all that the grid tells is in doubt, as in the table by distance.
    content.edit(PLOVER, 'combined: 32', 'combined: 100.0');
    content.edit(PLOVER, 'warmUp: 40 min', 'warmUp: 40');
    const { ledger, plover } = drawing(100);
    const rows = panelView(plover, ledger).modelled?.table ?? [];
    const doubts = planned(ledger)?.doubts;
    expect(doubts?.mean).toEqual(rows[0]?.mean.dagger);
    expect(doubts?.mean?.label).toMatch(/^in doubt, for it is made of /);
    expect(doubts).not.toHaveProperty('mains');
  });

  test('has no mark where there is no doubt', () => {
    const { ledger, plover } = drawing(99);
    expect(planned(ledger)).not.toHaveProperty('doubts');
    expect(isPlannable(plover)).toBe(true);
  });

  test('plans nothing with what can’t be right, says why, and has no link from the panel’s page', () => {
    const { ledger, plover } = drawing(10);
    const panel = planned(ledger);
    expect(panel?.reason).toMatch(/^‡ impossible as it stands\. An efficiency of \d+ % is not possible: .*[^.]$/);
    expect(panel).not.toHaveProperty('model');
    expect(isPlannable(plover)).toBe(false);
    expect(panelView(plover, ledger).plan).toBeUndefined();
    // Cautions stand all the same, and say it of the figure that they name.
    expect(panel?.cautions).toHaveProperty('eyes');
    expect(panel?.cautions['mains-electricity']).toMatch(/^Draws 10\.0+ ± [\d.]+ W \(‡ impossible as it stands\)\.$/);
  });
});

describe('distances that are one', () => {
  const at = (distance: string, slug: string) => {
    const teasel = content.read('panels/teasel/index.md').replace('model: Teasel', `model: ${slug}`);
    content.write(
      `panels/${slug}/index.md`,
      teasel.replace('    methodVersion: 1\n', `    methodVersion: 1\n    distance: ${distance}\n`),
    );
  };

  test('are ranked together, and what is ranked together can be compared', () => {
    // 30.04 and 30.06 cm are rounded to two numbers, and yet are one; 15.15 and 15.33 cm are both the guide's own.
    at('30.04 cm', 'one');
    at('30.06 cm', 'two');
    at('30.3 cm', 'three');
    at('15.15 cm', 'near');
    at('15.33 cm', 'far');
    const ledger = buildLedger(content.content(), { today: TODAY });
    const groups = ledger.classes.flatMap((it) => it.groups.map((group) => group.panels.map((one) => one.slug)));
    expect(groups.map((it) => it.toSorted())).toContainEqual(['one', 'two']);
    expect(groups.map((it) => it.toSorted())).toContainEqual(['far', 'near', 'teasel']);
    expect(groups).toContainEqual(['three']);
    const row = COMPARE_GROUPS.flatMap((it) => it.rows).find((it) => it.metric === 'price-per-watt');
    if (!row) throw new Error('no row');
    const kind = (a: string, b: string) => {
      const [one, other] = [a, b].map((it) => contender(ledger.panels.get(it) as PanelEntry, ledger));
      return one && other && compareRow(row, one, other).kind;
    };
    for (const group of groups) for (const a of group) for (const b of group) expect(kind(a, b)).not.toBe('unlike');
    expect(kind('one', 'three')).toBe('unlike');
  });
});
