/** Ledgers of the tiny content, changed in one thing at a time. */

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../src/ledger/ledger.ts';
import { type FigureOrGap, isFigure } from '../../src/measure/figure.ts';
import { NO_INSTRUMENT } from '../../src/measure/instrument/instrument.ts';
import { METRICS } from '../../src/measure/metrics.ts';
import type { Statement } from '../../src/measure/statement.ts';
import { say } from '../../src/words/say.ts';
import { metricNamed, told } from '../measure/make.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const PLOVER = 'panels/plover/index.md';
const TEASEL = 'panels/teasel/index.md';
const ledger = () => buildLedger(content.content(), { today: TODAY });

function panel(slug: string, of = ledger()): PanelEntry {
  const it = of.panels.get(slug);
  if (!it) throw new Error(`no panel ${slug}`);
  return it;
}

function figure(it: FigureOrGap | undefined) {
  if (!isFigure(it)) throw new Error(it ? say(it.reason) : 'no figure');
  return it;
}

const said = (it: Statement | undefined) => (it === undefined ? 'nothing' : say(it));
const reasonOf = (it: FigureOrGap | undefined) => (it && !isFigure(it) ? say(it.reason) : 'a figure');

describe('gaps hand their reason on', () => {
  const cases: Array<[string, string, string, Record<string, RegExp>]> = [
    [
      'no grid',
      '    grid:\n      rows:\n        - [30, 40, 30]\n        - [40, 50, 40]\n        - [30, 40, 30]\n',
      '',
      {
        'mean-irradiance': /^the grid was not measured$/,
        'optical-power': /^the grid was not measured$/,
        'price-per-watt': /^the grid was not measured$/,
        'uniformity-lowest': /^the grid was not measured$/,
        'radiant-exposure-minute': /^the grid was not measured$/,
        'efficiency-combined': /^the grid was not measured$/,
      },
    ],
    [
      'no field',
      'field: { width: 24 cm, height: 40 cm }\n',
      '',
      {
        'led-area': /^the LED field was not measured$/,
        'optical-power': /^the LED field was not measured$/,
        'price-per-watt': /^the LED field was not measured$/,
        'mean-irradiance-by-cells': /^the LED field was not measured$/,
      },
    ],
    [
      'no price',
      'prices:\n  - date: 2026-10-05\n    list: 400\n    currency: EUR\n',
      '',
      { 'real-price': /^no price is recorded$/, 'price-per-watt': /^no price is recorded$/ },
    ],
    [
      'every reading struck out',
      '        - [30, 40, 30]\n        - [40, 50, 40]\n        - [30, 40, 30]\n',
      '        - [{ value: 40, struck: The lamp was off. }]\n',
      {
        'mean-irradiance': /^every reading of the grid was struck out$/,
        'optical-power': /^every reading of the grid was struck out$/,
      },
    ],
    [
      'one point',
      '        - [30, 40, 30]\n        - [40, 50, 40]\n        - [30, 40, 30]\n',
      '        - [40]\n',
      { 'uniformity-lowest': /^one grid point only$/, 'uniformity-variation': /^one grid point only$/ },
    ],
    [
      'a field smaller than the grid’s inset',
      'field: { width: 24 cm, height: 40 cm }',
      'field: { width: 5 cm, height: 40 cm }',
      { 'mean-irradiance-by-cells': /^the LED field is too small for points 1 in inside its edges$/ },
    ],
    [
      'nothing but the grid',
      'model: Teasel',
      'model: Teasel',
      {
        'efficiency-combined': /^mains draw, both channels, was not measured$/,
        'efficiency-red': /was not measured$/,
        'running-cost': /^mains draw, both channels, was not measured$/,
        'peak-to-mean': /^peak irradiance, both channels, was not measured$/,
        'wavelength-red': /^not measured$/,
        'sound-on': /^not measured$/,
      },
    ],
  ];
  test.each(cases)('%s', (_name, from, to, reasons) => {
    if (from !== to) content.edit(TEASEL, from, to);
    const { figures } = panel('teasel');
    for (const [metric, reason] of Object.entries(reasons))
      expect(reasonOf(figures.get(metricNamed(metric))), metric).toMatch(reason);
  });

  test('a panel that was never on the bench has its size and its price, and a reason for all else', () => {
    content.write(TEASEL, `${content.read(TEASEL).split('sessions:')[0]}---\n`);
    const teasel = panel('teasel');
    expect([teasel.sessions.length, teasel.current]).toEqual([0, undefined]);
    const known = METRICS.filter((it) => isFigure(teasel.figures.get(it.id))).map((it) => it.id);
    expect(known.toSorted()).toEqual(['field-height', 'field-width', 'led-area', 'real-price']);
    expect(teasel.figures.size).toBe(METRICS.length);
    expect(reasonOf(teasel.figures.get('sound-on'))).toBe('there is no bench session yet');
    expect(said(teasel.rankAbsent)).toBe('there is no bench session yet');
  });

  test('a standby known only as a bound leaves no efficiency less standby', () => {
    content.edit(PLOVER, 'standby: 0.6', 'standby: <0.1 W');
    const { figures } = panel('plover');
    expect(reasonOf(figures.get('efficiency-combined-net'))).toBe('standby is known only as a bound');
    expect(isFigure(figures.get('efficiency-combined'))).toBe(true);
  });

  test('a standby as large as the draw leaves none either', () => {
    content.edit(PLOVER, 'standby: 0.6', 'standby: 50.2');
    const { figures } = panel('plover');
    expect(reasonOf(figures.get('efficiency-red-net'))).toBe(
      'standby draws as much as the mode itself, as far as the meter tells',
    );
    expect(isFigure(figures.get('efficiency-combined-net'))).toBe(true);
  });
});

describe('uncertainty', () => {
  test('is absent, with the reason, where the session names no meter', () => {
    content.edit(TEASEL, '    instruments: { irradiance: thermopile }\n', '');
    const teasel = panel('teasel');
    for (const metric of ['mean-irradiance', 'optical-power', 'price-per-watt', 'uniformity-lowest'] as const) {
      expect(figure(teasel.figures.get(metric)), metric).toMatchObject({
        standardUncertainty: null,
        interval95: null,
        uncertaintyAbsent: NO_INSTRUMENT,
      });
    }
    // 330 / 9 mW/cm² over 960 cm².
    expect(figure(teasel.figures.get('optical-power')).value).toBeCloseTo(((330 / 9) * 960) / 1000, 10);
    // Without a range a place would look surer than all others, so there is none.
    expect(teasel.rank).toBeUndefined();
    expect(said(teasel.rankAbsent)).toBe('its range is not known: the session does not name the meter');
    expect(
      ledger()
        .classes.flatMap((it) => it.unranked)
        .map((it) => it.slug),
    ).toContain('teasel');
    expect(ledger().frontier).not.toContain('teasel');
    expect(teasel.flags.map((it) => it.check)).toContain('meter-named');
  });

  test('of a field strength comes from its own meter, in the canonical unit', () => {
    // 4.3 mG: 6 % at k = 2 of 0.43 µT, 0.1 mG at k = 2, and steps of 0.1 mG.
    const it = figure(panel('plover').figures.get('magnetic-field-on'));
    expect(it.value).toBeCloseTo(0.43, 12);
    const expected = Math.hypot(0.03 * 0.43, 0.01 / 2, 0.01 / 2 / Math.sqrt(3));
    expect(it.standardUncertainty).toBeCloseTo(expected, 12);
    expect(it.notes.map(say)).toContain('read at 6 in');
  });

  test('of a level is absolute, in decibels', () => {
    const it = figure(panel('plover').figures.get('sound-on'));
    expect(it.standardUncertainty).toBeCloseTo(Math.hypot(0.7, 0.05 / Math.sqrt(3)), 12);
  });

  test('of the LED area counts the rule where a session names it, and says so where none does', () => {
    const withRule = figure(panel('plover').figures.get('led-area'));
    expect(withRule.budget.map((it) => it.source.key).join(' ')).toContain('rule@2026-01-20/calibration');
    content.edit(PLOVER, '      length: rule\n', '');
    const without = figure(panel('plover').figures.get('led-area'));
    expect(without.budget.map((it) => it.source.key).join(' ')).not.toContain('rule@');
    expect(without.unassessed).toEqual([{ what: { code: 'tape-calibration' }, reason: { code: 'tape-not-named' } }]);
  });
});

describe('struck readings', () => {
  test('one of two at a point: the other stands for it, and no note is needed', () => {
    const it = figure(panel('plover').figures.get('mean-irradiance'));
    expect(it.value).toBeCloseTo((31 + 38.2 + 30.8 + 40.1 + 50 + 39.9 + 30.6 + 37.8 + 31.2) / 9, 10);
    expect(it.notes).toEqual([]);
  });

  test('the only one of a point: the point is left out, and every figure that rests on the mean says so', () => {
    content.edit(PLOVER, '[31.2, { value: 61.0, struck: The rod had slipped. }]', '{ value: 61.0, struck: Slipped. }');
    const { figures } = panel('plover');
    const mean = figure(figures.get('mean-irradiance'));
    expect(mean.value).toBeCloseTo((31 + 38.2 + 30.8 + 40.1 + 50 + 39.9 + 30.6 + 37.8) / 8, 10);
    for (const metric of ['mean-irradiance', 'optical-power', 'price-per-watt', 'efficiency-combined'] as const)
      expect(figure(figures.get(metric)).notes, metric).toContainEqual({ code: 'grid-points-empty', empty: 1, of: 9 });
  });
});

describe('prices', () => {
  test('what was really paid is used before the list price, the newest before the older', () => {
    const { prices, figures } = panel('plover');
    // 200 pounds at 1.2 euros.
    expect(figure(figures.get('real-price')).value).toBeCloseTo(240, 10);
    expect(prices.map((it) => [it.price.date, it.figure.value])).toEqual([
      ['2026-11-01', 240],
      ['2026-08-01', 240],
    ]);
    expect(figure(figures.get('real-price')).notes).toEqual([]);
  });

  test('a list price stands in, and every figure that rests on it says so', () => {
    const { figures } = panel('teasel');
    expect(figure(figures.get('real-price')).value).toBe(400);
    for (const metric of ['real-price', 'price-per-watt'] as const)
      expect(figure(figures.get(metric)).notes, metric).toContainEqual({ code: 'list-price-only' });
  });

  test('an old price is noted on the day it is looked at', () => {
    // 2026-08-01 is 116 days before the day of the ledger.
    content.edit(PLOVER, '  - date: 2026-11-01', '  - date: 2026-07-31');
    const flag = panel('plover').flags.find((it) => it.check === 'price-age');
    expect(flag?.severity).toBe('note');
    expect(told(flag?.finding)).toContain('116 days old (1 Aug 2026)');
    // It is the current session's price; an earlier session has none.
    content.edit(PLOVER, 'sessions:\n', 'sessions:\n  - { date: 2025-01-01, methodVersion: 1 }\n');
    expect(panel('plover').sessions.map((it) => it.flags.some((own) => own.check === 'price-age'))).toEqual([
      true,
      false,
    ]);
    const earlier = buildLedger(content.content(), { today: '2026-08-15' });
    expect(panel('plover', earlier).flags.map((it) => it.check)).not.toContain('price-age');
  });
});

describe('sessions', () => {
  const again = (lines: string) =>
    content.edit(TEASEL, '        - [30, 40, 30]\n---', `        - [30, 40, 30]\n${lines}---`);
  const session = (date: string, more: string) =>
    `  - date: ${date}\n    methodVersion: 1\n    instruments: { irradiance: thermopile }\n${more}    grid: { rows: [[33, 44, 33], [44, 55, 44], [33, 44, 33]] }\n`;

  test('the newest is the current one, wherever it stands in the file', () => {
    again(session('2026-02-01', ''));
    const teasel = panel('teasel');
    expect(teasel.sessions.map((it) => it.date)).toEqual(['2026-10-02', '2026-02-01']);
    expect(figure(teasel.figures.get('mean-irradiance')).value).toBeCloseTo(330 / 9, 10);
    // From a tenth more to what it is now.
    expect(figure(teasel.sessions[0]?.change).value).toBeCloseTo(100 * (1 / 1.1 - 1), 9);
    expect(reasonOf(teasel.sessions[1]?.change)).toBe('the first session');
  });

  test('money belongs to the current one', () => {
    again(session('2026-02-01', ''));
    const [current, earlier] = panel('teasel').sessions;
    expect(isFigure(current?.figures.get('price-per-watt'))).toBe(true);
    expect(reasonOf(earlier?.figures.get('price-per-watt'))).toBe('calculated for the current session only');
  });

  test('at another distance give no change', () => {
    again(session('2026-02-01', '    distance: 30 cm\n'));
    expect(reasonOf(panel('teasel').sessions[0]?.change)).toBe('measured under other conditions');
  });

  test('one without a grid gives no change', () => {
    again('  - { date: 2026-02-01, methodVersion: 1 }\n');
    expect(reasonOf(panel('teasel').sessions[0]?.change)).toBe('one of the two has no optical power');
  });

  test('a calibration that had run out flags the session that used it, and only that one', () => {
    content.edit('instruments/thermopile.yaml', 'validMonths: 24', 'validMonths: 6');
    again(session('2026-06-01', ''));
    const [current, earlier] = panel('teasel').sessions;
    // Calibrated on 15 January, good until 15 July.
    expect(current?.flags.map((it) => it.check)).toContain('calibration-valid');
    expect(earlier?.flags.map((it) => it.check)).not.toContain('calibration-valid');
    const flagged = current?.figures.get('mean-irradiance');
    expect(isFigure(flagged) && flagged.flags.map((it) => it.check)).toEqual(['calibration-valid']);
  });

  /** The thermopile was calibrated before, on 1 May 2025, to 6 %. */
  const earlierCalibration = () =>
    content.edit(
      'instruments/thermopile.yaml',
      'calibrations:',
      'calibrations:\n  - { date: 2025-05-01, validMonths: 12, relative: 6, reference: Invented }',
    );
  const budgetOf = (it: FigureOrGap | undefined) => (isFigure(it) ? it.budget : []);

  test('recalibrating leaves what rested on the calibration before: each session has the one of its day', () => {
    again(session('2025-09-01', ''));
    const before = () => panel('teasel').sessions.map((it) => it.figures.get('mean-irradiance'));
    earlierCalibration();
    const [current, earlier] = panel('teasel').sessions;
    expect(current?.instruments).toMatchObject([{ calibration: { date: '2026-01-15', due: '2028-01-15' } }]);
    expect(earlier?.instruments).toMatchObject([{ calibration: { date: '2025-05-01', due: '2026-05-01' } }]);
    const [now, then] = before();
    expect(budgetOf(now).map((it) => it.source.key)).toContain('thermopile@2026-01-15/calibration');
    const line = budgetOf(then).find((it) => it.source.key === 'thermopile@2025-05-01/calibration');
    // 6 % at k = 2.
    expect((line?.contribution ?? 0) / (isFigure(then) ? then.value : 1)).toBeCloseTo(0.03, 12);
    expect(said(line?.source.evaluation)).toContain('calibration of 1 May 2025: 6 % at k = 2');
    // A newer one yet changes neither.
    content.edit(
      'instruments/thermopile.yaml',
      'calibrations:',
      'calibrations:\n  - { date: 2026-11-20, validMonths: 12, relative: 1, reference: Invented }',
    );
    expect(before()).toEqual([now, then]);
  });

  test('in a change between two calibrations, both count', () => {
    again(session('2025-09-01', ''));
    earlierCalibration();
    const keys = budgetOf(panel('teasel').sessions[0]?.change)
      .filter((it) => it.contribution !== 0)
      .map((it) => it.source.key);
    expect(keys).toContain('thermopile@2026-01-15/calibration');
    expect(keys).toContain('thermopile@2025-05-01/calibration');
  });

  test('on the last day of a calibration it still holds', () => {
    content.edit('instruments/thermopile.yaml', 'date: 2026-01-15', 'date: 2025-10-02');
    content.edit('instruments/thermopile.yaml', 'validMonths: 24', 'validMonths: 12');
    expect(panel('teasel').flags.map((it) => it.check)).not.toContain('calibration-valid');
  });
});

describe('conditions', () => {
  const copy = (slug: string, distance: string, version = 1) =>
    content.write(
      `panels/${slug}/index.md`,
      content
        .read(TEASEL)
        .replace('methodVersion: 1\n', `methodVersion: ${version}\n    distance: ${distance}\n`)
        .replace('model: Teasel', `model: ${slug}`),
    );
  const groups = () =>
    ledger().classes.flatMap((table) =>
      table.groups.map(
        (group) => [group.conditions.isReference, group.panels.map((it) => it.slug).toSorted()] as const,
      ),
    );

  test.each(['6 in', '15.24 cm', '152.4 mm', '15.2 cm', '15.29 cm', '15.19 cm'])(
    '%s is the guide’s 6 in: one setting of the stand, one ranking',
    (distance) => {
      copy('fescue', distance);
      expect(groups().find(([, slugs]) => slugs.includes('teasel'))).toEqual([true, ['fescue', 'teasel']]);
    },
  );

  test('a distance that was not written is the guide’s', () => {
    expect(panel('teasel').current?.conditions).toEqual({ distance: 15.24, methodVersion: 1, isReference: true });
  });

  test('15.4 cm is another setting', () => {
    copy('fescue', '15.4 cm');
    expect(groups().filter(([, slugs]) => slugs.includes('fescue') || slugs.includes('teasel'))).toEqual([
      [true, ['teasel']],
      [false, ['fescue']],
    ]);
  });

  test('panels at another distance are ranked among themselves, nearest first', () => {
    copy('fescue', '30 cm');
    copy('vetch', '30 cm');
    copy('sorrel', '20 cm');
    const large = ledger().classes.find((it) => it.sizeClass?.id === 'large');
    expect(large?.groups.map((it) => [it.conditions.distance, it.panels.map((one) => one.slug).toSorted()])).toEqual([
      [15.24, ['teasel']],
      [20, ['sorrel']],
      [30, ['fescue', 'vetch']],
    ]);
  });

  test('panels of equal price per watt share their place', () => {
    copy('fescue', '6 in');
    const of = ledger();
    expect([panel('fescue', of).rank?.place, panel('teasel', of).rank?.place]).toEqual([1, 1]);
    expect(panel('fescue', of).rank?.tiedWith).toEqual(['teasel']);
  });

  test('panels of unknown size are in a table of their own, without a rank', () => {
    content.edit(TEASEL, 'field: { width: 24 cm, height: 40 cm }\n', '');
    const of = ledger();
    const last = of.classes.at(-1);
    expect([last?.sizeClass, last?.groups, last?.unranked.map((it) => it.slug)]).toEqual([undefined, [], ['teasel']]);
    expect(said(panel('teasel', of).rankAbsent)).toBe('the LED field was not measured');
    expect(of.classes.map((it) => it.sizeClass?.id)).toEqual(['small', undefined]);
  });

  test('a panel alone in its class and at its distance is first of one', () => {
    expect(panel('teasel').rank).toMatchObject({ place: 1, of: 1, range: [1, 1], tiedWith: [] });
  });
});

test('a close race ends the same, whatever the order in which the panels lie in their folder', () => {
  const rows = (n: number) =>
    [0, 1, 2].map((r) => `[${[0, 1, 2].map((c) => 30 + 0.1 * ((7 * n + 3 * r + c) % 11)).join(', ')}]`).join(', ');
  for (let n = 0; n < 12; n++) {
    content.write(
      `panels/grass-${n}/index.md`,
      content
        .read(TEASEL)
        .replace('model: Teasel', `model: Grass ${n}`)
        .replace('list: 400', `list: ${400 + ((5 * n) % 9)}`)
        .replace(/rows:\n(.*\n){3}/, `rows: [${rows(n)}]\n`),
    );
  }
  const whole = content.content();
  const forward = buildLedger(whole, { today: TODAY });
  const backward = buildLedger({ ...whole, panels: new Map([...whole.panels].toReversed()) }, { today: TODAY });
  const ranks = (of: typeof forward) =>
    [...of.panels.values()].map((it) => it.rank).toSorted((a, b) => (a?.panel ?? '').localeCompare(b?.panel ?? ''));
  expect(ranks(backward)).toEqual(ranks(forward));
  expect(backward.frontier).toEqual(forward.frontier);
});

test('an older session whose meter reads off its limits leaves the current one alone', () => {
  const before = panel('plover').figures;
  content.edit(
    PLOVER,
    'sessions:\n',
    'sessions:\n  - date: 2024-01-01\n    methodVersion: 1\n    peak: { red: 1, nearInfrared: 1, combined: 1999 }\n',
  );
  expect(panel('plover').figures).toEqual(before);
});

test('an instrument is overdue from the day after its last one', () => {
  // Calibrated on 15 January 2026 for 24 months.
  const whole = content.content();
  const on = (today: string) => buildLedger(whole, { today }).instruments.find((it) => it.id === 'thermopile');
  expect(on('2028-01-15')?.quantities).toMatchObject([{ due: '2028-01-15', overdue: false }]);
  expect(on('2028-01-16')?.quantities).toMatchObject([{ due: '2028-01-15', overdue: true }]);
});

test('the guide of a folder without panels has no tables', () => {
  content.remove('panels');
  const of = ledger();
  expect([of.panels.size, of.classes, of.frontier]).toEqual([0, [], []]);
  expect(of.instruments.every((it) => it.usedIn.length === 0)).toBe(true);
});
