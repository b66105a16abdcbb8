import { beforeAll, describe, expect, test } from 'vitest';
import { panelNamed } from '../../../src/cli/show.ts';
import { sectionText } from '../../../src/cli/text/lay-out.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { METRICS } from '../../../src/measure/metrics.ts';
import { isLeftOut } from '../../../src/site/export/figure-rows.ts';
import { panelsJson } from '../../../src/site/export/panels-json.ts';
import { panelJson } from '../../../src/site/show/panel-json.ts';
import { panelText } from '../../../src/site/show/panel-text-view.ts';
import { showFigure } from '../../../src/words/format.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';
import { expandPanels } from '../../support/expand-panels.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

describe('a panel in the terminal', () => {
  test('every figure stands there with its interval, every gap with its reason, within 80 columns', () => {
    for (const panel of demo.ledger.panels.values()) {
      const { title, sections } = panelText(panel, demo.ledger);
      expect(title).toBe(panel.name);
      const text = sectionText(sections);
      expect(text.split('\n').filter((it) => it.length > 80)).toEqual([]);
      const flat = text.replace(/\s+/g, ' ');
      for (const metric of METRICS) {
        const { id, name } = metric;
        const it = panel.figures.get(id);
        if (!it || isLeftOut(metric, it)) continue;
        expect(flat).toContain(name);
        if (isFigure(it)) expect(flat).toContain(`${name} ${showFigure(it, demo.ledger.guide.currency).text}`);
      }
      for (const { price } of panel.prices) if (price.paid) expect(flat).toContain('paid');
    }
  });

  test('place, flags and marks', () => {
    const text = sectionText(panelText(demo.panel('quennick-dab'), demo.ledger).sections);
    expect(text).toContain('  † Doubt\n    The calibration of the Silicon handheld ran out');
    expect(text).toMatch(/Mean irradiance +\S+ ± \S+ mW\/cm² †\n/);
    expect(text).toMatch(/Place\n {2}Light in the frame\n? +3rd of 3 in the class Desk\./);
  });

  test('an earlier session has its own figures, and no place', () => {
    const panel = demo.panel('kelpwright-cormorant');
    const [newest, earlier] = panel.sessions;
    expect(earlier).toBeDefined();
    const of = (session: typeof newest) => sectionText(panelText(panel, demo.ledger, session).sections);
    const power = earlier?.figures.get('optical-power');
    expect(of(earlier)).toContain(isFigure(power) ? showFigure(power, 'EUR').text : 'none');
    expect(of(earlier)).not.toContain('Place\n');
    expect(of(earlier)).toMatch(new RegExp(`${earlier?.date}\\s[\\s\\S]*shown here`));
    expect(of(newest)).not.toBe(of(earlier));
  });
});

test('as JSON it has what panels.json has, to the last digit', () => {
  const file = expandPanels(JSON.parse([...panelsJson(demo.ledger)].join('')));
  for (const published of file.panels) {
    const panel = demo.panel(published.slug);
    panel.sessions.forEach((session, i) => {
      const own = JSON.parse(JSON.stringify(panelJson(panel, demo.ledger, session)));
      const wanted = published.sessions[i];
      expect(Object.keys(own.figures)).toEqual(Object.keys(wanted.figures));
      for (const [metric, figure] of Object.entries<Record<string, unknown>>(wanted.figures)) {
        const { id: _id, bound = null, notes = [], flags = [], uncertainty_absent = null, ...rest } = figure;
        const full = figure.value === null ? figure : { ...rest, bound, notes, flags, uncertainty_absent };
        expect(own.figures[metric]).toEqual(full);
      }
      expect(own.flags).toEqual(wanted.flags);
      expect(own.claims).toEqual(wanted.claims);
    });
    expect(panelJson(panel, demo.ledger).prices).toEqual(published.prices);
  }
});

describe('a panel that is none', () => {
  const refusal = (slug: string) => {
    try {
      return panelNamed(slug, demo.ledger).name;
    } catch (error) {
      return (error as Error).message;
    }
  };
  test.each([
    ['kelpwright-gannet', 'Kelpwright Gannet'],
    ['kelpwright-ganet', 'no panel is called "kelpwright-ganet"; did you mean "kelpwright-gannet"?'],
    ['Gannet', 'no panel is called "Gannet"; did you mean "kelpwright-gannet"?'],
  ])('%s', (slug, answer) => {
    expect(refusal(slug)).toBe(answer);
  });
  test('and is near none: all are named', () => {
    expect(refusal('zzz')).toMatch(/^no panel is called "zzz"; there are: .*kelpwright-gannet, /);
  });
});
