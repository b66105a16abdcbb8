import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import type { Ledger, PanelEntry } from '../../../src/ledger/ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { METHODS } from '../../../src/measure/methods.ts';
import type { MetricId } from '../../../src/measure/metrics.ts';
import type { Rank } from '../../../src/measure/money/ranking.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { guideView } from '../../../src/site/guide/guide-view.ts';
import { rankSentence } from '../../../src/site/guide/rank-sentence.ts';
import { guideColumns } from '../../../src/site/guide/ranking-columns.ts';
import { rankRange } from '../../../src/words/rank-words.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { type Demo, demoLedger, textsIn } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

const tables = (ledger = demo.ledger) => guideView(ledger).classes.flatMap((it) => it.tables);
const row = (name: string) => {
  const it = tables()
    .flatMap((table) => table.rows)
    .find((one) => one.name === name);
  if (!it) throw new Error(`no row ${name}`);
  return it;
};
const cell = (name: string, column: string) => {
  const it = row(name).cells.find((one) => one.column === column);
  if (!it) throw new Error(`no column ${column}`);
  return it;
};

describe('columns', () => {
  test('each has a page that explains it', () => {
    const ids = METHODS.map((it) => it.id);
    for (const it of guideColumns('EUR')) expect(ids).toContain(it.method);
  });

  test('money is in the currency of the guide', () => {
    expect(guideColumns('GBP').map((it) => it.label)).toContain('£ a watt');
    expect(JSON.stringify(guideColumns('GBP'))).not.toMatch(/currency|EUR/);
  });

  test('the ranked one comes first, by either watt, and no column is there twice', () => {
    for (const basis of ['optical', 'emitted'] as const) {
      const columns = guideColumns('EUR', basis);
      expect(columns.map((it) => it.isRanked)).toEqual(columns.map((_, i) => i === 0));
      expect(new Set(columns.map((it) => it.label)).size).toBe(columns.length);
    }
  });

  test('a first press puts the better end first', () => {
    const first = Object.fromEntries(guideColumns('EUR').map((it) => [it.id, it.first]));
    expect(first).toMatchObject({
      price: 'ascending',
      'price-per-watt': 'ascending',
      flicker: 'ascending',
      'optical-power': 'descending',
      efficiency: 'descending',
      uniformity: 'descending',
    });
  });
});

describe('tables', () => {
  test('every row has a cell for every column, with text and something to sort by or a stated gap', () => {
    const columns = guideColumns('EUR').map((it) => it.id);
    for (const { rows } of tables()) {
      for (const { name, cells } of rows) {
        expect(
          cells.map((it) => it.column),
          name,
        ).toEqual(columns);
        for (const it of cells) {
          expect(it.text).not.toBe('');
          if (it.isGap) expect([it.text, it.sort, (it.after ?? '').length > 3]).toEqual(['–', null, true]);
          else expect(Number.isFinite(it.sort)).toBe(true);
        }
      }
    }
  });

  test('cells sort by the values that the ledger holds', () => {
    for (const panel of demo.ledger.panels.values()) {
      if (!panel.rank) continue;
      const value = (metric: MetricId) => {
        const it = panel.figures.get(metric);
        return isFigure(it) ? it.value : null;
      };
      expect(cell(panel.name, 'price').sort).toBe(value('real-price'));
      expect(cell(panel.name, 'optical-power').sort).toBe(value('optical-power'));
      expect(cell(panel.name, 'price-per-watt').sort).toBe(value('price-per-watt'));
      expect(cell(panel.name, 'efficiency').sort).toBe(value('efficiency-combined'));
      expect(cell(panel.name, 'mean').sort).toBe(value('mean-irradiance'));
      expect(cell(panel.name, 'peak').sort).toBe(value('peak-irradiance-combined'));
      expect(cell(panel.name, 'uniformity').sort).toBe(value('uniformity-lowest'));
    }
  });

  test('have addresses of their own on the page', () => {
    const ids = [...guideView(demo.ledger).classes.map((it) => `class ${it.id}`), ...tables().map((it) => it.id)];
    expect(new Set(ids).size).toBe(ids.length);
    for (const it of tables()) expect(it.id).toMatch(/^[a-z][a-z0-9-]*$/);
  });

  test('of other conditions are set apart and say so', () => {
    const apart = tables().filter((it) => it.apart);
    expect(apart.map((it) => it.rows.map((one) => one.name))).toEqual([['Ostrel Vagg']]);
    expect(apart[0]?.apart).toBe('at 30 cm, not at the guide’s 15.24 cm');
  });

  test('an interval in each row that has one, all on one scale of equal ratios that holds them', () => {
    const view = guideView(demo.ledger);
    expect(tables().length).toBeGreaterThan(2);
    for (const { rows } of tables()) {
      for (const { name, interval } of rows) {
        if (!interval || !view.scale) throw new Error(`${name} has no interval drawn`);
        const [low, high] = view.scale;
        const wanted = (200 * Math.log((cell(name, 'price-per-watt').sort ?? 0) / low)) / Math.log(high / low);
        expect(Math.abs(interval.at - wanted)).toBeLessThanOrEqual(0.5);
        expect(interval.from).toBeLessThanOrEqual(interval.at);
        expect(interval.at).toBeLessThanOrEqual(interval.to);
        expect(interval.from >= 0 && interval.to <= 200).toBe(true);
      }
    }
  });

  test('no text says nothing, and none promises safety or a dose', () => {
    for (const [path, text] of textsIn(guideView(demo.ledger))) {
      expect(text, path).not.toMatch(/undefined|NaN|Infinity|\[object|null/);
      expect(text, path).not.toMatch(/\bsafe(ly|ty)?\b|\bdose\b|\btreat/i);
    }
  });
});

describe('cells', () => {
  test('a rank is shown with its range, and a bracket joins a tie', () => {
    expect(row('Kelpwright Limpet').rank).toBe('2–3');
    expect(row('Kelpwright Limpet').ties.parts).toEqual([{ lane: 0, isFirst: false, isLast: true }]);
    expect(row('Ostrel Lill').ties.parts).toEqual([{ lane: 0, isFirst: true, isLast: false }]);
    expect(row('Quennick Sprat')).toMatchObject({ rank: '1', ties: { parts: [], others: [] } });
    expect(row('Ostrel Vagg').rank).toBe('alone');
  });

  test('a price is written as shops do, in its own currency too', () => {
    expect(cell('Kelpwright Limpet', 'price')).toMatchObject({ text: '€32' });
    expect(cell('Fennimarsh Electric Reed', 'price')).toMatchObject({
      text: '€182.85',
      after: '£159',
      priced: '£159',
      afterPriced: '€182.85',
    });
    expect(cell('Ruddlestone R60', 'price').after).toBeUndefined();
  });

  test('a price of a watt has no sign: it stands in the head', () => {
    expect(cell('Kelpwright Gannet', 'price-per-watt').text).toMatch(/^[\d.]+$/);
  });

  test('under the name stands when it was tested, how it was obtained, and what the price asks for', () => {
    expect(row('Quennick Tope').remarks).toEqual(['lent by the maker', 'price with a code', 'tested Oct 2026']);
    expect(row('Ostrel Lill').remarks).toEqual(['given by the maker', 'tested Nov 2026']);
    expect(row('Kelpwright Limpet').remarks).toContain('price with a code that earns us money');
    expect(row('Ruddlestone R60').remarks).toEqual(['tested Sep 2026', 'efficiency corrected 6 Oct 2026']);
  });

  test('peaks stand on one axis, those that eyes see apart from those that they don’t', () => {
    expect(row('Kelpwright Gannet').strip).toEqual({ visible: [20], infrared: [83], text: '661.0, 848.0' });
    expect(row('Quennick Dab').strip).toBeUndefined();
  });

  test('a doubt is marked beside the figure that it concerns', () => {
    expect(cell('Quennick Dab', 'mean').dagger?.mark).toBe('†');
    expect(cell('Ruddlestone R60', 'mean').dagger).toBeUndefined();
  });

  test('a bound stays a bound, and flicker says its frequency', () => {
    expect(cell('Kelpwright Limpet', 'flicker')).toMatchObject({ text: '< 0.5' });
    expect(cell('Ostrel Lill', 'flicker').after).toBe('100 Hz');
    expect(cell('Quennick Sprat', 'flicker').after).toBe('48 kHz');
  });

  test('a gap says why', () => {
    expect(cell('Quennick Dab', 'efficiency')).toMatchObject({
      text: '–',
      after: 'mains draw, both channels, was not measured',
      isGap: true,
    });
  });
});

describe('classes', () => {
  test('stand in the order of the guide and say which areas they hold', () => {
    expect(guideView(demo.ledger).classes.map((it) => it.id)).toEqual(['palm', 'desk', 'torso', 'full-length']);
    const words = guideView(demo.ledger).classes.map((it) => it.area);
    expect(words).toEqual([
      'LED area up to 200 cm²',
      'LED area 200 to 700 cm²',
      'LED area 700 to 2,000 cm²',
      'LED area over 2,000 cm²',
    ]);
  });

  test('panels of unknown size come last, with the reason', () => {
    const content = tinyContent();
    try {
      content.edit('panels/teasel/index.md', 'field: { width: 24 cm, height: 40 cm }\n', '');
      const view = guideView(buildLedger(content.content(), { today: TODAY })).classes.at(-1);
      expect(view).toMatchObject({
        id: 'unknown-size',
        tables: [],
        unranked: [{ name: 'Knotgrass Teasel', address: '/panels/teasel/', reason: 'the LED field was not measured' }],
      });
    } finally {
      content.delete();
    }
  });
});

describe('rankRange', () => {
  test.each([
    [[1, 1], '1st'],
    [[2, 4], '2nd to 4th'],
    [[11, 13], '11th to 13th'],
    [[1, 22], '1st to 22nd'],
  ] as Array<[[number, number], string]>)('%j is %s', (range, text) => {
    expect(rankRange(range)).toBe(text);
  });
});

describe('rankSentence', () => {
  const ranked = (rank: Partial<Rank> | undefined, part: Partial<PanelEntry> = {}): string => {
    const panel: PanelEntry = {
      ...demo.panel('ruddlestone-r60'),
      ...part,
      rank: rank && { panel: 'ruddlestone-r60', place: 2, of: 5, range: [2, 2], tiedWith: [], ...rank },
    };
    return rankSentence(panel, demo.ledger);
  };

  test('a place that the readings show', () => {
    expect(ranked({})).toBe('2nd of 5 in the class Desk.');
  });

  test('a tie names the others', () => {
    expect(ranked({ range: [1, 3], tiedWith: ['fennimarsh-reed', 'quennick-dab'] })).toBe(
      '1st to 3rd of 5 in the class Desk. A tie with Fennimarsh Electric Reed and Quennick Dab: the readings do not show which is the better value.',
    );
  });

  test('a tie with many names the nearest, in the order of the table, and counts the others', () => {
    const tiedWith = Array.from({ length: 40 }, (_, i) => `panel-${i + 1}`).filter((it) => it !== 'panel-20');
    const panels = new Map(demo.ledger.panels);
    for (const slug of tiedWith) {
      const place = Number(slug.split('-')[1]);
      const rank: Rank = { panel: slug, place, of: 40, range: [1, 40], tiedWith: [] };
      panels.set(slug, { ...demo.panel('fennimarsh-reed'), slug, name: `No ${place}`, rank });
    }
    const rank: Rank = { panel: 'ruddlestone-r60', place: 20, of: 40, range: [1, 40], tiedWith };
    expect(rankSentence({ ...demo.panel('ruddlestone-r60'), rank }, { ...demo.ledger, panels })).toBe(
      '1st to 40th of 40 in the class Desk. A tie with No 17, No 18, No 19, No 21, No 22 and 34 others near it in the table: the readings do not show which is the better value.',
    );
  });

  test('no range, with the reason', () => {
    expect(ranked({ range: null, rangeAbsent: verbatim('the session does not name the meter') })).toBe(
      '2nd of 5 in the class Desk; no range, since the session does not name the meter.',
    );
  });

  test('one of one is no rank', () => {
    expect(ranked({ place: 1, of: 1, range: [1, 1] })).toMatch(
      /^Alone: no other panel of the class Desk was measured at 15\.24 cm .*, so there is none to rank it with\.$/,
    );
  });

  test('not ranked, with the reason', () => {
    expect(ranked(undefined, { rankAbsent: verbatim('withdrawn from the guide') })).toBe(
      'Not ranked: withdrawn from the guide.',
    );
    expect(rankSentence(demo.panel('ostrel-bord'), demo.ledger)).toBe('Not ranked: withdrawn from the guide.');
  });

  test('under other conditions says among which', () => {
    const current = demo.panel('ostrel-vagg').current;
    expect(ranked({}, { current })).toBe(
      '2nd of 5 in the class Desk, among those measured at 30 cm under version 1 or 2.',
    );
  });

  test('every panel of the demo has a sentence', () => {
    for (const panel of demo.ledger.panels.values()) expect(rankSentence(panel, demo.ledger)).toMatch(/^[A-Z1-9].*\.$/);
  });
});

describe('two settings of the stand that are one', () => {
  let content: ContentFolder | undefined;
  afterEach(() => content?.delete());

  test('give no second table that looks like the first', () => {
    content = tinyContent();
    const teasel = content.read('panels/teasel/index.md');
    content.write(
      'panels/fescue/index.md',
      teasel
        .replace('model: Teasel', 'model: Fescue')
        .replace('methodVersion: 1\n', 'methodVersion: 1\n    distance: 15.29 cm\n'),
    );
    const ledger: Ledger = buildLedger(content.content(), { today: TODAY });
    const plain = guideView(ledger).classes.flatMap((it) => it.tables.filter((table) => !table.apart).map(() => it.id));
    expect(new Set(plain).size).toBe(plain.length);
  });
});
