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

  test('where the beam is withheld they are gaps with the reason, and the table has the reading alone', () => {
    const { corrections, source, table, plot } = view('ruddlestone-r150');
    expect(corrections.map((it) => [it.common.gap, it.corrected.gap])).toEqual(
      corrections.map(() => [undefined, 'no beam that we know of explains the readings']),
    );
    expect(source).toMatch(/^What leaves the LEDs is withheld: no beam .*\. The figures of the frame stand\.$/);
    expect(plot).toBeUndefined();
    // What was read stays.
    expect(table.map((it) => [it.distance, it.mean.metric])).toEqual([[15.24, 'mean-irradiance']]);
  });

  test('the sentence says what the light that misses the frame rests on', () => {
    for (const { slug } of demo.ledger.panels.values()) {
      const source = demo.panel(slug).current?.light.source;
      if (!source) continue;
      const words = {
        beyond: 'past the edges was measured',
        sweep: 'from the grid and a sweep of',
        grid: 'from the grid alone',
      }[source];
      expect(view(slug).source, slug).toContain(words);
    }
  });
});

describe('the table by distance', () => {
  test('has intervals, and the time for each 1 J/cm² by 1000 H / E', () => {
    const rows = view('fennimarsh-reed').table;
    expect(rows.map((it) => it.distance)).toEqual([5, 10, 15, 30, 45, 60]);
    const find = figureFinder(demo.panel('fennimarsh-reed').figures);
    const mean = find('mean-irradiance-at-30-cm');
    const time = rows[3]?.time;
    expect(time?.value).toBeCloseTo(1000 / (mean?.value ?? Number.NaN), 9);
    expect(time?.low).toBeLessThan(time?.value ?? 0);
    expect(time?.high).toBeGreaterThan(time?.value ?? 0);
  });

  test('has what was read with the distance that it is nearest to', () => {
    const read = (slug: string) => view(slug).table.flatMap((it) => (it.read ? [[it.distance, it.read.distance]] : []));
    expect(read('fennimarsh-reed')).toEqual([[15, 15.24]]);
    expect(read('ostrel-vagg')).toEqual([[30, 30]]);
    const row = view('fennimarsh-reed').table[2]?.read;
    expect([row?.mean, row?.peak, row?.evenness].map((it) => it?.metric)).toEqual([
      'mean-irradiance',
      'peak-irradiance-combined',
      'uniformity-lowest',
    ]);
    // The heads of the columns have the units.
    expect(row?.mean.shown?.unit).toBe('');
    expect(row?.time?.calculation).toMatch(/#time-per-joule$/);
  });

  test('the measured mean and the modelled one are told apart by the bias of the grid', () => {
    const bias = (slug: string) => {
      const { figure, words } = view(slug).bias;
      return `${figure.shown?.text} ${words}`;
    };
    expect(bias('kelpwright-cormorant')).toBe('17.5 ± 1.6 % below the true mean of the field');
    expect(bias('ostrel-lill')).toBe('3.43 % (3.21 to 3.70) above the true mean of the field');
    expect(bias('quennick-dab')).toBe('3.5 % (2.9 to 4.4) below the true mean of the field');
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

  test('joins the mean of the grid to the curve by the bias', () => {
    const plot = view('kelpwright-cormorant').plot;
    const [mean] = plot?.measured ?? [];
    expect(plot?.bias).toMatchObject({ x: mean?.x, from: mean?.y });
    // The grid reads low, and what is higher has the smaller y.
    expect(plot?.bias?.to).toBeLessThan(plot?.bias?.from ?? 0);
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
