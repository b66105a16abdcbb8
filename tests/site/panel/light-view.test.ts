import { beforeAll, describe, expect, test } from 'vitest';
import { figureFinder, isFigure } from '../../../src/measure/figure.ts';
import { distanceCalculation } from '../../../src/site/calculation/distance-calculation.ts';
import { type LightView, lightView } from '../../../src/site/panel/light-view.ts';
import { metricNamed } from '../../measure/make.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger('ruddlestone-r150');
});
const view = (slug: string): LightView => lightView(demo.panel(slug), 'EUR') as LightView;

describe('corrected figures', () => {
  test('stand beside the common ones, which stay', () => {
    const { corrections } = view('fennimarsh-reed');
    expect(corrections.map((it) => [it.common.metric, it.corrected.metric])).toEqual([
      ['optical-power', 'emitted-power'],
      ['price-per-watt', 'price-per-emitted-watt'],
      ['efficiency-combined', 'efficiency-emitted'],
    ]);
    for (const { common, corrected } of corrections) {
      expect(common.shown?.text).toMatch(/ ± /);
      expect(corrected.shown?.text).toMatch(/ ± | to /);
    }
  });

  test('where the beam is withheld they are gaps with the reason, and there is no table', () => {
    const { corrections, source, table, plot, warnings } = view('ruddlestone-r150');
    expect(corrections.map((it) => [it.common.gap, it.corrected.gap])).toEqual(
      corrections.map(() => [undefined, 'no beam that we know of explains the readings']),
    );
    expect(source).toMatch(/^The corrected figures are withheld: no beam .*\. The common ones stand\.$/);
    expect([table, plot]).toEqual([undefined, undefined]);
    expect(warnings).toHaveLength(1);
  });

  test('the sentence says what the light that misses the frame rests on', () => {
    expect(view('fennimarsh-sedge').source).toMatch(
      /^Here it (was measured: readings past the edges|is taken from the shape of the beam: the grid)/,
    );
    for (const { slug } of demo.ledger.panels.values()) {
      const source = demo.panel(slug).current?.light.source;
      if (!source) continue;
      const words = {
        beyond: 'Here it was measured:',
        sweep: 'the grid and a sweep of',
        grid: 'the grid says which beams',
      }[source];
      expect(view(slug).source, slug).toContain(words);
    }
  });
});

describe('the table by distance', () => {
  test('has cm and inches, intervals, and the time for each 1 J/cm² by 1000 H / E', () => {
    const rows = view('fennimarsh-reed').table ?? [];
    expect(rows.map((it) => it.distance)).toEqual(['5 cm', '10 cm', '15 cm', '30 cm', '45 cm', '60 cm']);
    expect(rows.map((it) => it.inches)).toEqual(['2.0 in', '3.9 in', '5.9 in', '11.8 in', '17.7 in', '23.6 in']);
    const find = figureFinder(demo.panel('fennimarsh-reed').figures);
    const mean = find('mean-irradiance-at-30-cm');
    const time = rows[3]?.time;
    expect(time?.value).toBeCloseTo(1000 / (mean?.value ?? Number.NaN), 9);
    expect(time?.low).toBeLessThan(time?.value ?? 0);
    expect(time?.high).toBeGreaterThan(time?.value ?? 0);
  });

  test('light falls with the distance, and the peak is above the mean', () => {
    for (const { slug, figures } of demo.ledger.panels.values()) {
      const find = figureFinder(figures);
      const means = [5, 10, 15, 30, 45, 60].map((cm) => find(`mean-irradiance-at-${cm}-cm`)?.value);
      if (means[0] === undefined) continue;
      expect(means, slug).toEqual((means as number[]).toSorted((a, b) => b - a));
      for (const cm of [5, 10, 15, 30, 45, 60]) {
        const peak = find(`peak-irradiance-at-${cm}-cm`)?.value;
        // Near by, single LEDs may show, and nobody knows where they are.
        if (peak === undefined && cm < 15) continue;
        if (peak === undefined) throw new Error(`${slug}: no peak at ${cm} cm`);
        expect(peak, slug).toBeGreaterThan(find(`mean-irradiance-at-${cm}-cm`)?.value ?? Number.NaN);
      }
    }
  });
});

describe('the plot', () => {
  test('has both curves, an interval at each distance and every kept reading of the sweep', () => {
    const plot = view('ostrel-lill').plot;
    expect(plot?.curves.map((it) => it.name)).toEqual(['peak', 'mean']);
    expect(plot?.intervals).toHaveLength(12);
    expect(plot?.measured.map((it) => it.kind)).toEqual(['mean', ...Array(7).fill('centre')]);
    const { left, right, top, bottom } = plot?.frame ?? { left: 0, right: 0, top: 0, bottom: 0 };
    for (const { x, y } of plot?.measured ?? []) {
      expect(x).toBeGreaterThan(left);
      expect(x).toBeLessThanOrEqual(right);
      expect(y).toBeGreaterThanOrEqual(top);
      expect(y).toBeLessThan(bottom);
    }
    for (const { from, to } of plot?.intervals ?? []) expect(from).toBeGreaterThan(to);
  });

  test('labels of the two curves do not cross', () => {
    for (const { slug } of demo.ledger.panels.values()) {
      const [peak, mean] = lightView(demo.panel(slug), 'EUR')?.plot?.curves ?? [];
      if (peak && mean) expect(mean.label.y - peak.label.y, slug).toBeGreaterThanOrEqual(13.9);
    }
  });

  test('says in words what it shows', () => {
    expect(view('ostrel-lill').plot?.description).toMatch(
      /^Irradiance against distance as modelled, from 5\.0 to 90 cm: mean .* measured: the mean of the grid and 7 readings before the middle$/,
    );
  });
});

describe('the working of the table by distance', () => {
  test('has every value with its interval and an anchor, and a budget that makes up the whole', () => {
    const panel = demo.panel('fennimarsh-sedge');
    const session = panel.current as NonNullable<typeof panel.current>;
    const calculation = distanceCalculation(panel, session, 'EUR');
    expect(calculation?.figures.map((it) => it.anchor)).toHaveLength(18);
    for (const { anchor, shown } of calculation?.figures ?? []) {
      expect(panel.figures.get(metricNamed(anchor))).toBeDefined();
      expect(shown.text).toMatch(/ ± | to /);
    }
    calculation?.budgets.forEach(({ lines }, q) => {
      calculation.heads.forEach((_, d) => {
        const figure = panel.figures.get(metricNamed(calculation.figures[6 * q + d]?.anchor ?? ''));
        if (!isFigure(figure)) throw new Error('no figure');
        const whole = Math.hypot(...lines.map((it) => Number(it.shares[d]))) / 100;
        expect(whole / ((figure.standardUncertainty ?? 0) / figure.value)).toBeGreaterThan(0.9);
        expect(whole / ((figure.standardUncertainty ?? 0) / figure.value)).toBeLessThan(1.1);
      });
    });
  });

  test('there is none where the beam is withheld', () => {
    const panel = demo.panel('ruddlestone-r150');
    expect(distanceCalculation(panel, panel.current as NonNullable<typeof panel.current>, 'EUR')).toBeUndefined();
  });
});
