/** The ledger of the demo content, and what holds for every ledger. */

import { isDeepStrictEqual } from 'node:util';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Content } from '../../src/content/read/content.ts';
import { readContent } from '../../src/content/read/read-content.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { Ledger, PanelEntry } from '../../src/ledger/ledger.ts';
import { type FigureOrGap, isFigure } from '../../src/measure/figure.ts';
import { methodText } from '../../src/measure/method-versions.ts';
import { METHODS } from '../../src/measure/methods.ts';
import { METRICS, metricById } from '../../src/measure/metrics.ts';
import { say } from '../../src/words/say.ts';
import { told } from '../measure/make.ts';
import { TODAY } from '../support/content-folder.ts';
import { DEMO_FOLDER } from '../support/demo-folder.ts';
import { demoLedger } from '../support/demo-ledger.ts';

const read = () => {
  const { content, problems } = readContent({ folder: DEMO_FOLDER, today: TODAY });
  if (!content) throw new Error(JSON.stringify(problems, null, 1));
  return content;
};

let content: Content;
let ledger: Ledger;
beforeAll(() => {
  ({ content, ledger } = demoLedger());
});

function panel(slug: string, of = ledger): PanelEntry {
  const it = of.panels.get(slug);
  if (!it) throw new Error(`no panel ${slug}`);
  return it;
}

function value(it: FigureOrGap | undefined): number {
  if (!isFigure(it)) throw new Error(it ? say(it.reason) : 'no figure');
  return it.value;
}

/** Every figure or gap of every session and of every panel, with a name for messages. */
function* everything(of: Ledger): Generator<[name: string, it: FigureOrGap, session: string | undefined]> {
  for (const { slug, figures, sessions, prices } of of.panels.values()) {
    for (const it of figures.values()) yield [`${slug}: ${it.metric}`, it, sessions[0]?.id];
    for (const session of sessions) {
      for (const it of session.figures.values()) yield [`${session.id}: ${it.metric}`, it, session.id];
      yield [`${session.id}: change`, session.change, session.id];
    }
    for (const { figure, perWatt } of prices) {
      yield [`${slug}: a price`, figure, undefined];
      yield [`${slug}: a price per watt`, perWatt, sessions[0]?.id];
    }
  }
}

describe('every panel', () => {
  test('has every metric, as a figure or as a gap, and no other', () => {
    const ids = METRICS.map((it) => it.id).toSorted();
    for (const { slug, figures, sessions } of ledger.panels.values()) {
      expect([...figures.keys()].toSorted(), slug).toEqual(ids);
      for (const session of sessions) expect([...session.figures.keys()].toSorted(), session.id).toEqual(ids);
    }
  });

  test('files each figure under its own metric', () => {
    for (const { figures, sessions } of ledger.panels.values()) {
      for (const all of [figures, ...sessions.map((it) => it.figures)])
        for (const [metric, it] of all) expect(it.metric).toBe(metric);
    }
  });

  test('gives a reason for every gap, short enough for a cell of a table', () => {
    let gaps = 0;
    for (const [name, it] of everything(ledger)) {
      if (isFigure(it)) continue;
      gaps++;
      expect(say(it.reason), name).toMatch(/^\S.{3,90}$/);
      expect(say(it.reason), name).not.toMatch(/undefined|NaN|\[object/);
    }
    expect(gaps).toBeGreaterThan(20);
  });

  test('has finite figures within their intervals, in the unit of their metric', () => {
    let figures = 0;
    for (const [name, it] of everything(ledger)) {
      if (!isFigure(it)) continue;
      figures++;
      expect(Number.isFinite(it.value), name).toBe(true);
      if (it.metric !== 'optical-power-change') expect(it.unit, name).toBe(metricById(it.metric).unit);
      expect(
        METHODS.map((method) => `${method.id}@${method.version}`),
        name,
      ).toContain(methodText(it.method));
      if (it.interval95 === null) continue;
      expect(it.interval95.every(Number.isFinite), name).toBe(true);
      expect(it.interval95[0], name).toBeLessThanOrEqual(it.value);
      expect(it.interval95[1], name).toBeGreaterThanOrEqual(it.value);
    }
    expect(figures).toBeGreaterThan(300);
  });

  test('has an uncertainty for every figure, or says why there is none', () => {
    for (const [name, it] of everything(ledger)) {
      if (!isFigure(it)) continue;
      if (it.standardUncertainty === null) {
        expect(it.uncertaintyAbsent && say(it.uncertaintyAbsent), name).toMatch(/^\S.{3,}/);
        expect([it.interval95, it.coverageFactor, it.degreesOfFreedom], name).toEqual([null, null, null]);
      } else {
        expect(it.uncertaintyAbsent, name).toBeUndefined();
        expect(it.standardUncertainty, name).toBeGreaterThanOrEqual(0);
        // A time that is cut at its end, in part or throughout, has no factor to speak of.
        if (it.metric.startsWith('infrared-stay-') && it.interval95?.[1] === 1000) continue;
        // The interval of a simulation in which one even error leads is narrower.
        expect(it.coverageFactor, name).toBeGreaterThan(it.basis === 'modelled' ? 1.3 : 1.9);
      }
    }
  });

  test('has ids that say panel, session and metric, each once', () => {
    for (const { slug, sessions } of ledger.panels.values()) {
      for (const session of sessions) {
        const ids = [...session.figures.values()].filter(isFigure).map((it) => it.id);
        expect(new Set(ids).size).toBe(ids.length);
        for (const it of [...session.figures.values()].filter(isFigure))
          expect([`${session.id}/${it.metric}`, `${slug}/${it.metric}`]).toContain(it.id);
      }
    }
  });

  test('has a bound that stays a bound wherever a reading was one', () => {
    const limpet = panel('kelpwright-limpet');
    for (const metric of ['magnetic-field-on', 'magnetic-field-off', 'flicker-red', 'flicker-combined'] as const) {
      const it = limpet.figures.get(metric);
      expect(isFigure(it) && [it.bound, it.standardUncertainty]).toEqual(['below', null]);
    }
    // 0.1 µT; neither nought nor half of it.
    expect(value(limpet.figures.get('magnetic-field-on'))).toBe(0.1);
  });
});

describe('drafts', () => {
  test('are left out', () => {
    expect(content.panels.has('ruddlestone-r600')).toBe(true);
    expect(ledger.panels.has('ruddlestone-r600')).toBe(false);
  });

  test('are worked out where asked for, without a rank, and change no other panel', () => {
    const withDrafts = buildLedger(content, { today: TODAY, drafts: true });
    const draft = panel('ruddlestone-r600', withDrafts);
    expect([draft.rank, draft.rankAbsent, draft.frontier]).toEqual([undefined, { code: 'still-a-draft' }, undefined]);
    expect(draft.stepUps).toEqual({ best: [], more: 0 });
    expect(value(draft.figures.get('mains-draw-combined'))).toBeGreaterThan(0);
    for (const it of ledger.panels.values()) expect(withDrafts.panels.get(it.slug)).toEqual(it);
    expect(withDrafts.classes).toEqual(ledger.classes);
    expect(withDrafts.frontier).toEqual(ledger.frontier);
  });
});

describe('withdrawn panels', () => {
  test('keep their page and their figures, and have no part in any ranking', () => {
    const bord = panel('ostrel-bord');
    expect(value(bord.figures.get('optical-power'))).toBeGreaterThan(0);
    expect([bord.rank, bord.rankAbsent, bord.frontier]).toEqual([undefined, { code: 'withdrawn' }, undefined]);
    expect(bord.stepUps).toEqual({ best: [], more: 0 });
    expect(ledger.frontier).not.toContain('ostrel-bord');
    for (const { groups, unranked } of ledger.classes) {
      const slugs = [...groups.flatMap((it) => it.panels), ...unranked].map((it) => it.slug);
      expect(slugs).not.toContain('ostrel-bord');
    }
    for (const { rank, stepUps } of ledger.panels.values()) {
      expect(rank?.tiedWith ?? []).not.toContain('ostrel-bord');
      expect(stepUps.best).not.toContain('ostrel-bord');
    }
  });
});

describe('ranking', () => {
  test('every published panel stands in one table of its class, ranked or with a reason', () => {
    const placed = ledger.classes.flatMap(({ groups, unranked }) => [
      ...groups.flatMap((it) => it.panels),
      ...unranked,
    ]);
    const published = [...ledger.panels.values()].filter((it) => it.data.status === 'published');
    expect(placed.map((it) => it.slug).toSorted()).toEqual(published.map((it) => it.slug).toSorted());
    for (const it of published)
      expect([it.rank === undefined, it.rankAbsent === undefined]).toEqual([!it.rank, !!it.rank]);
  });

  test('within each group places run from 1 by price per watt', () => {
    for (const { groups } of ledger.classes) {
      for (const { panels } of groups) {
        const costs = panels.map((it) => value(it.figures.get('price-per-watt')));
        expect(costs).toEqual(costs.toSorted((a, b) => a - b));
        expect(panels.map((it) => [it.rank?.place, it.rank?.of])).toEqual(panels.map((_, i) => [i + 1, panels.length]));
      }
    }
  });

  test('a range holds the place, and panels with overlapping ranges are ties of each other', () => {
    for (const { groups } of ledger.classes) {
      for (const { panels } of groups) {
        for (const { slug, rank } of panels) {
          if (!rank?.range) continue;
          expect(rank.range[0]).toBeLessThanOrEqual(rank.place);
          expect(rank.range[1]).toBeGreaterThanOrEqual(rank.place);
          for (const other of rank.tiedWith) expect(panel(other).rank?.tiedWith).toContain(slug);
        }
      }
    }
  });

  test('a panel that was read at another distance is ranked apart, and compared with none of the others', () => {
    const vagg = panel('ostrel-vagg');
    expect(vagg.current?.conditions).toEqual({ distance: 30, methodVersion: 1, isReference: false });
    expect(vagg.rank).toMatchObject({ place: 1, of: 1, tiedWith: [] });
    const torso = ledger.classes.find((it) => it.sizeClass?.id === 'torso');
    expect(torso?.groups.map((it) => it.conditions.isReference)).toEqual([true, false]);
    expect(torso?.groups[0]?.panels.map((it) => it.slug)).not.toContain('ostrel-vagg');
    expect(torso?.groups[1]?.panels.map((it) => it.slug)).toEqual(['ostrel-vagg']);
    expect(vagg.stepUps).toEqual({ best: [], more: 0 });
    expect(vagg.frontier).toBeUndefined();
    for (const { slug, rank, stepUps } of ledger.panels.values()) {
      if (slug === 'ostrel-vagg') continue;
      expect(rank?.tiedWith ?? []).not.toContain('ostrel-vagg');
      expect(stepUps.best).not.toContain('ostrel-vagg');
    }
  });

  test('on the frontier no panel is beaten on price and power, and the dearer is the stronger', () => {
    const offers = ledger.frontier.map((slug) => {
      const { figures } = panel(slug);
      return [value(figures.get('real-price')), value(figures.get('optical-power'))] as const;
    });
    expect(offers.length).toBeGreaterThan(2);
    for (let i = 1; i < offers.length; i++) {
      expect(offers[i]?.[0]).toBeGreaterThan(offers[i - 1]?.[0] ?? Number.NaN);
      expect(offers[i]?.[1]).toBeGreaterThan(offers[i - 1]?.[1] ?? Number.NaN);
    }
    for (const it of ledger.panels.values()) expect(it.frontier === 'on').toBe(ledger.frontier.includes(it.slug));
  });

  test('every panel lies in the class of its LED area', () => {
    for (const { slug, sizeClass, figures } of ledger.panels.values()) {
      const area = value(figures.get('led-area'));
      const { sizeClasses } = ledger.guide;
      const at = sizeClasses.findIndex((it) => it.id === sizeClass?.id);
      expect(area, slug).toBeLessThanOrEqual(sizeClasses[at]?.upToArea ?? Number.POSITIVE_INFINITY);
      expect(area, slug).toBeGreaterThan(sizeClasses[at - 1]?.upToArea ?? 0);
    }
  });
});

describe('two sessions of one panel', () => {
  test('the newest is the current one, and the older keeps its figures', () => {
    const { sessions, current, figures } = panel('kelpwright-cormorant');
    expect(sessions.map((it) => it.date)).toEqual(['2026-10-20', '2025-10-21']);
    expect(current).toBe(sessions[0]);
    // Nine points each, from the file.
    expect(value(figures.get('mean-irradiance'))).toBeCloseTo(
      (33.5 + 43.9 + 33.3 + 47.4 + 61.8 + 47.8 + 33.5 + 42.9 + 33.2) / 9,
      10,
    );
    expect(value(sessions[1]?.figures.get('mean-irradiance'))).toBeCloseTo(
      (34.4 + 44.6 + 34.1 + 49.4 + 62.9 + 49.0 + 33.8 + 44.2 + 33.9) / 9,
      10,
    );
  });

  test('the change is worked out with what both sessions share taken out', () => {
    const { sessions } = panel('kelpwright-cormorant');
    const change = sessions[0]?.change;
    if (!isFigure(change)) throw new Error('no change');
    const later = [33.5, 43.9, 33.3, 47.4, 61.8, 47.8, 33.5, 42.9, 33.2];
    const earlier = [34.4, 44.6, 34.1, 49.4, 62.9, 49.0, 33.8, 44.2, 33.9];
    const mean = (it: number[]) => it.reduce((a, b) => a + b) / 9;
    // One thermopile under one calibration, one LED area: both cancel. Distance, rounding and repeats don't; of the
    // response to each band, 0.5 %, what the shares of the bands have changed by is left, and of that to oblique light
    // what the points have changed by against one another.
    const [redLater, redEarlier] = [35.1 / (35.1 + 31.2), 36.2 / (36.2 + 32.4)];
    const bands = 0.005 * Math.SQRT2 * (redLater - redEarlier);
    // f2 of 3 % as -ln cos e / 0.477667, over an even field of points of light, each as its cosine and distance send it.
    const oblique = (it: number[]) => {
      const spots = [2.54, 40, 77.46].flatMap((y) => [2.54, 11.05, 19.56].map((x) => ({ x, y })));
      const errors = spots.map(({ x, y }) => {
        let [light, error] = [0, 0];
        for (let i = 0; i < 110; i++) {
          for (let j = 0; j < 400; j++) {
            const square = (0.2 * (i + 0.5) - x) ** 2 + (0.2 * (j + 0.5) - y) ** 2 + 15.24 ** 2;
            const cosine = 15.24 / Math.sqrt(square);
            light += cosine ** 2 / square;
            error += (((0.03 * -Math.log(cosine)) / 0.477667) * cosine ** 2) / square;
          }
        }
        return error / light;
      });
      return errors.reduce((sum, error, i) => sum + error * (it[i] as number), 0) / it.reduce((a, b) => a + b);
    };
    const exponent = (2 * 15.24 ** 2) / ((22.1 * 80) / Math.PI + 15.24 ** 2);
    const own = (it: number[]) =>
      Math.hypot(
        (exponent * (0.2 / Math.sqrt(3))) / 15.24,
        0.05 / Math.sqrt(3) / 3 / mean(it),
        (0.008 * Math.hypot(...it)) / 9 / mean(it),
      );
    const ratio = mean(later) / mean(earlier);
    expect(change.value).toBeCloseTo(100 * (ratio - 1), 9);
    expect(change.value).toBeLessThan(0);
    const expected = 100 * ratio * Math.hypot(own(later), own(earlier), bands, oblique(later) - oblique(earlier));
    expect(Math.abs((change.standardUncertainty ?? 0) / expected - 1)).toBeLessThan(2e-3);
    expect(change.unit).toBe('%');
  });

  test('the first session has no change, and says so', () => {
    expect(panel('kelpwright-cormorant').sessions[1]?.change).toMatchObject({
      gap: true,
      reason: { code: 'first-session' },
    });
    for (const { sessions } of ledger.panels.values()) expect(isFigure(sessions.at(-1)?.change)).toBe(false);
  });
});

describe('prices', () => {
  test('the newest is used, whatever the order of the file', () => {
    const gannet = panel('kelpwright-gannet');
    expect(gannet.prices.map((it) => it.price.date)).toEqual(['2026-11-18', '2026-10-09', '2026-09-04']);
    expect(value(gannet.figures.get('real-price'))).toBe(849);
    const power = value(gannet.figures.get('optical-power'));
    gannet.prices.forEach((it, i) => {
      expect(value(it.perWatt)).toBeCloseTo(([849, 999, 1190][i] as number) / power, 10);
    });
  });

  test('in another currency is converted at the rate of the guide', () => {
    const reed = panel('fennimarsh-reed');
    const price = reed.figures.get('real-price');
    // 159 pounds at 1.15 euros.
    expect(value(price)).toBeCloseTo(182.85, 10);
    expect(isFigure(price) && [price.basis, price.unit]).toEqual(['derived', 'currency']);
    expect(isFigure(price) && told(price.calculation)).toContain('159 GBP × 1.15 = 182.85 EUR');
  });
});

describe('instruments', () => {
  test('a calibration that had run out is flagged in the session that used it, with what rests on it', () => {
    const dab = panel('quennick-dab');
    const flag = dab.flags.find((it) => it.check === 'calibration-valid');
    expect(flag?.severity).toBe('doubt');
    expect(told(flag?.finding)).toContain('3 Mar 2026');
    for (const metric of ['mean-irradiance', 'optical-power', 'price-per-watt', 'peak-irradiance-combined'] as const) {
      const it = dab.figures.get(metric);
      expect(isFigure(it) && it.flags.map((own) => own.check), metric).toContain('calibration-valid');
    }
    for (const other of ledger.panels.values()) {
      if (other.slug !== 'quennick-dab') expect(other.flags.map((it) => it.check)).not.toContain('calibration-valid');
    }
  });

  test('are listed with their last day and with the sessions that used them', () => {
    const silicon = ledger.instruments.find((it) => it.id === 'silicon-handheld');
    expect(silicon?.quantities).toMatchObject([{ due: '2026-03-03', overdue: true }]);
    expect(silicon?.usedIn).toEqual([
      { slug: 'quennick-dab', name: 'Quennick Dab', date: '2026-10-02', carriedInto: [] },
    ]);
    const thermopile = ledger.instruments.find((it) => it.id === 'bench-thermopile');
    expect(thermopile?.quantities).toMatchObject([{ due: '2027-09-15', overdue: false }]);
    expect(thermopile?.usedIn.filter((it) => it.slug === 'kelpwright-cormorant').map((it) => it.date)).toEqual([
      '2026-10-20',
      '2025-10-21',
    ]);
    expect(ledger.instruments.map((it) => it.id)).toEqual([...content.instruments.keys()]);
  });
});

describe('struck readings', () => {
  test('are left out of the mean, and the point counts by what was kept', () => {
    const r60 = panel('ruddlestone-r60');
    const mean = r60.figures.get('mean-irradiance');
    // 58.3 was struck out, 34.6 stands in its place.
    expect(value(mean)).toBeCloseTo((25.9 + 32.1 + 26.2 + 35.1 + 44.5 + 34.6 + 26.5 + 32.4 + 25.9) / 9, 10);
  });
});

describe('the same', () => {
  test('content gives the same ledger', () => {
    for (const again of [content, read()]) {
      const made = buildLedger(again, { today: TODAY });
      // Node holds them together in no time; the test's own way takes seconds, but says where they part.
      if (!isDeepStrictEqual(made, ledger)) expect(made).toEqual(ledger);
    }
  });

  test('panels in another order get the same figures, ranks, steps and frontier', () => {
    const turned = buildLedger({ ...content, panels: new Map([...content.panels].toReversed()) }, { today: TODAY });
    for (const it of ledger.panels.values()) expect(turned.panels.get(it.slug), it.slug).toEqual(it);
    expect(turned.panels.size).toBe(ledger.panels.size);
    expect(turned.frontier).toEqual(ledger.frontier);
    expect(turned.classes.map((it) => it.groups)).toEqual(ledger.classes.map((it) => it.groups));
  });

  test('a ledger is made without touching the content', () => {
    const before = structuredClone([...content.panels.values()].map((it) => it.data));
    buildLedger(content, { today: TODAY, drafts: true });
    expect([...content.panels.values()].map((it) => it.data)).toEqual(before);
  });
});
