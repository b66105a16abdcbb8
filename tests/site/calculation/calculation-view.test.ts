import { beforeAll, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { METRICS, metricById } from '../../../src/measure/metrics.ts';
import {
  type Calculation,
  calculationView,
  looseCalculation,
  type SessionCalculation,
} from '../../../src/site/calculation/calculation-view.ts';
import { rawReadings } from '../../../src/site/calculation/raw-readings.ts';
import { TODAY, tinyContent } from '../../support/content-folder.ts';
import { type Demo, demoLedger, textsIn } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});
const views = (slug: string): SessionCalculation[] => calculationView(demo.panel(slug), 'EUR');
const calculation = (slug: string, metric: string): Calculation => {
  const it = views(slug)[0]?.figures.find((one) => one.id.endsWith(`/${metric}`));
  if (!it) throw new Error(`${slug}: no working of ${metric}`);
  return it;
};

describe('every session', () => {
  test('shows every metric: its working, or why there is none', () => {
    for (const { slug, sessions } of demo.ledger.panels.values()) {
      views(slug).forEach((it, i) => {
        const shown = [...it.figures, ...(it.distances?.figures ?? []), ...it.gaps];
        const names = shown.map((one) => one.name);
        expect(names.toSorted(), `${slug} ${it.date}`).toEqual(
          METRICS.filter((one) => !one.isOfFiles)
            .map((one) => one.name)
            .toSorted(),
        );
        expect(it.readings).toEqual(rawReadings(sessions[i] as never));
        expect(it.isCurrent).toBe(i === 0);
      });
    }
  });

  test('has anchors of its own: none stands twice on the page', () => {
    for (const { slug } of demo.ledger.panels.values()) {
      const anchors = views(slug).flatMap((it) => [...it.figures, ...it.gaps].map((one) => one.anchor));
      expect(new Set(anchors).size).toBe(anchors.length);
    }
  });

  test('says nothing that is empty or a slip of the program', () => {
    for (const { slug } of demo.ledger.panels.values()) {
      for (const [path, text] of textsIn(views(slug))) {
        if (/unit$|relative$|scatter$/.test(path)) continue;
        expect(text.trim(), `${slug}: ${path}`).not.toBe('');
        expect(text, `${slug}: ${path}`).not.toMatch(/undefined|NaN|\[object/);
      }
    }
  });

  test('links that were made while a session was the current one keep leading to it', () => {
    for (const { slug } of demo.ledger.panels.values()) {
      for (const session of views(slug)) {
        for (const it of session.figures) expect(it.datedAnchor).toMatch(new RegExp(`-${session.date}$`));
      }
    }
  });
});

describe('a figure’s working', () => {
  test('has the formula with the numbers put in, which lead to their own, the method and its version', () => {
    const it = calculation('ruddlestone-r60', 'optical-power');
    const text = it.calculation?.map((part) => (typeof part === 'string' ? part : part.text)).join('');
    expect(text).toMatch(/^P = Ē × A ÷ 1000 = [\d.]+ mW\/cm² × [\d.]+ cm² ÷ 1000 = [\d.]+ W$/);
    const anchors = it.calculation?.flatMap((part) => (typeof part === 'string' ? [] : [part.anchor]));
    expect(anchors).toEqual(['mean-irradiance', 'led-area']);
    expect(it.inputs).toEqual([]);
    expect(it.methodAddress).toBe('/methods/optical-power/');
    expect(it.methodVersion).toBeGreaterThanOrEqual(1);
  });

  test('names every input: linked in the formula, or beside it', () => {
    for (const panel of demo.ledger.panels.values()) {
      for (const it of views(panel.slug)[0]?.figures ?? []) {
        const figure = [...panel.figures.values()].find((one) => isFigure(one) && one.id === it.id);
        if (!figure || !isFigure(figure)) throw new Error(it.id);
        const linked = it.calculation?.filter((part) => typeof part !== 'string').length ?? 0;
        expect(linked + it.inputs.length, it.id).toBe(figure.inputs.length);
      }
    }
  });

  test('has a budget in short that says the same as the whole', () => {
    let referring = 0;
    for (const { slug } of demo.ledger.panels.values()) {
      const all = views(slug).flatMap((session) => session.figures);
      const byAnchor = new Map(all.map((it) => [it.anchor, it]));
      for (const it of all) {
        const theirs = it.short.as.flatMap((other) => byAnchor.get(other.anchor)?.budget ?? []);
        const own = new Set(it.short.lines.map((line) => line.key));
        referring += it.short.as.length;
        for (const line of it.budget) {
          if (own.has(line.key)) continue;
          const same = theirs.filter((one) => one.key === line.key || one.name === line.name);
          expect(
            same.map((one) => one.relative),
            `${it.id}: ${line.name}`,
          ).toContain(line.relative);
        }
        // What a budget that is referred to has besides is named as not there.
        const names = new Set(it.budget.flatMap((line) => [line.name, line.key]));
        const foreign = theirs.filter((one) => !names.has(one.name) && !names.has(one.key)).map((one) => one.name);
        expect(
          foreign.filter((name) => !it.short.without.includes(name)),
          it.id,
        ).toEqual([]);
      }
    }
    expect(referring).toBeGreaterThan(100);
  });

  test('tells errors of one kind apart by their reading', () => {
    for (const { slug } of demo.ledger.panels.values()) {
      for (const it of views(slug).flatMap((session) => session.figures)) {
        const names = it.budget.map((line) => line.name);
        expect(new Set(names).size, `${it.id}: ${names.join(', ')}`).toBe(names.length);
      }
    }
    expect(calculation('ruddlestone-r60', 'peak-to-mean').budget.map((it) => it.name)).toContain(
      'repeatability of peak irradiance (both channels)',
    );
  });

  test('has a budget whose lines make up the whole', () => {
    for (const panel of demo.ledger.panels.values()) {
      const shown = new Map((views(panel.slug)[0]?.figures ?? []).map((it) => [it.id, it]));
      for (const figure of panel.figures.values()) {
        if (!isFigure(figure) || !figure.standardUncertainty) continue;
        // Values by distance have one account of their own.
        if (figure.method.id === 'distance-table') continue;
        // And those of files stand on a page of their own.
        if (metricById(figure.metric).isOfFiles) continue;
        // Lines are shown with two digits.
        const lines = (shown.get(figure.id)?.budget ?? []).map((it) => Number.parseFloat(it.u.replace('−', '-')));
        const whole = Math.hypot(...lines);
        expect(whole / figure.standardUncertainty, figure.id).toBeGreaterThan(figure.basis === 'modelled' ? 0.9 : 0.95);
        expect(whole / figure.standardUncertainty, figure.id).toBeLessThan(figure.basis === 'modelled' ? 1.1 : 1.05);
      }
    }
  });

  test('shows an error that cancels as nought, not as what the last binary digit left of it', () => {
    for (const { slug } of demo.ledger.panels.values()) {
      for (const it of views(slug).flatMap((session) => session.figures))
        for (const line of it.budget) expect(`${line.u} ${line.relative}`, it.id).not.toMatch(/e[−-]1\d/);
    }
  });

  test('says standard uncertainty and interval, and how few degrees of freedom there are', () => {
    expect(calculation('ruddlestone-r60', 'optical-power').combined).toMatch(/^u [\d.]+, 95 % [\d.]+ to [\d.]+$/);
    // 27 readings at 9 points leave 18 degrees of freedom for the scatter, many more for the whole.
    expect(calculation('quennick-sprat', 'mean-irradiance').combined).toMatch(/, \d+ degrees of freedom, k = 1\.9/);
  });

  test('shows type A where there were repeats, and type B elsewhere', () => {
    const types = (slug: string) => calculation(slug, 'mean-irradiance').budget.map((it) => it.type);
    expect(types('quennick-sprat')).toContain('A');
    expect(types('ruddlestone-r60')).not.toContain('A');
  });

  test('names money’s unit in its budget', () => {
    for (const it of calculation('ruddlestone-r60', 'price-per-watt').budget) expect(it.u).toMatch(/ EUR\/W$/);
  });

  test('of an exact figure has no budget', () => {
    const it = calculation('ruddlestone-r60', 'real-price');
    expect([it.budget, it.combined]).toEqual([[], undefined]);
  });
});

describe('instruments of a session', () => {
  test('say their calibration, when it runs out, and their uncertainty', () => {
    const [session] = views('kelpwright-limpet');
    expect(session?.instruments.find((it) => it.kind === 'mains')).toEqual({
      kind: 'mains',
      id: 'plug-in-wattmeter',
      name: 'Plug-in wattmeter',
      calibrated: '29 Jun 2026',
      due: '29 Jun 2029',
      isOverdue: false,
      uncertainty: '1 % and 0.2 W at k = 2',
      scatter: '0.2 %',
    });
  });

  test('whose calibration had run out on the day are called overdue', () => {
    const [session] = views('quennick-dab');
    expect(session?.instruments).toMatchObject([{ id: 'silicon-handheld', due: '3 Mar 2026', isOverdue: true }]);
  });
});

describe('looseWorking', () => {
  test('is that of a panel without a session: its size and its price', () => {
    const content = tinyContent();
    try {
      const file = 'panels/plover/index.md';
      content.write(file, `${content.read(file).split('sessions:')[0]}---\n`);
      const panel = buildLedger(content.content(), { today: TODAY }).panels.get('plover') as never;
      const figures = looseCalculation(panel, 'EUR');
      expect(figures.map((it) => it.id).toSorted()).toEqual([
        'plover/field-height',
        'plover/field-width',
        'plover/led-area',
        'plover/real-price',
      ]);
      expect(calculationView(panel, 'EUR')).toEqual([]);
    } finally {
      content.delete();
    }
  });

  test('is none where there is a session: the figures stand there', () => {
    expect(looseCalculation(demo.panel('ruddlestone-r60'), 'EUR')).toEqual([]);
  });
});
