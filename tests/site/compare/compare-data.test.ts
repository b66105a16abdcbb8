import { beforeAll, describe, expect, test } from 'vitest';
import { isFigure } from '../../../src/measure/figure.ts';
import { metricById } from '../../../src/measure/metrics.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { COMPARE_GROUPS, COMPARE_METRICS } from '../../../src/site/compare/browser/compare-rows.ts';
import { comparedPanel, listedPanels } from '../../../src/site/compare/compare-data.ts';
import { rowWords } from '../../../src/site/compare/row-words.ts';
import { unpackFigures } from '../../../src/site/shared/browser/figure-pack.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger('ruddlestone-r150');
});
const file = (slug: string) => comparedPanel(demo.panel(slug), demo.ledger);

describe('the rows', () => {
  const rows = COMPARE_GROUPS.flatMap((it) => it.rows);

  test('are of registered metrics, each once, with the metric’s own method and a name of its own', () => {
    expect(new Set(COMPARE_METRICS).size).toBe(COMPARE_METRICS.length);
    const words = rowWords();
    expect(Object.keys(words)).toEqual(COMPARE_METRICS);
    for (const { metric } of rows) expect(words[metric]?.method, metric).toBe(metricById(metric).method);
    expect(new Set(Object.values(words).map((it) => it.name)).size).toBe(rows.length);
    expect(words['optical-power']?.name).toBe('light');
    expect(words['price-per-watt']?.name).toBe('a watt of light');
    // Within a sentence as in the head of a row.
    for (const { name } of Object.values(words)) expect(name).toMatch(/^([a-z]|LED )/);
  });

  test('subtract what is in degrees, decibels or nanometres, and call modelled what is', () => {
    for (const row of rows) {
      const { unit } = metricById(row.metric);
      if (unit === '°' || unit === 'dB(A)' || unit === 'nm') expect(row.difference, row.metric).toBeDefined();
      else if (unit !== '%') expect(row.difference, row.metric).toBeUndefined();
      const figures = [...demo.ledger.panels.values()].flatMap((it) => {
        const own = it.figures.get(row.metric);
        return isFigure(own) ? [own] : [];
      });
      expect(figures.length, row.metric).toBeGreaterThan(5);
      for (const it of figures) {
        // Prices per emitted watt are derived, from a modelled figure.
        if (it.basis === 'modelled') expect(row.isModelled, it.id).toBe(true);
        expect(it.method.id).toBe(metricById(row.metric).method);
      }
    }
  });
});

describe('a panel’s file', () => {
  test('has the figures of the ledger, the size, the conditions and the model', () => {
    const it = file('fennimarsh-sedge');
    const panel = demo.panel('fennimarsh-sedge');
    const figures = unpackFigures(it);
    for (const metric of [
      ...COMPARE_METRICS,
      'field-width',
      'mean-irradiance-at-5-cm',
      'mean-irradiance-at-60-cm',
    ] as const) {
      const [own, sent] = [panel.figures.get(metric), figures.get(metric)];
      if (!isFigure(own) || !isFigure(sent)) throw new Error(`no figure: ${metric}`);
      expect(Math.abs(sent.value / own.value - 1)).toBeLessThan(1e-5);
    }
    expect(it).toMatchObject({
      slug: 'fennimarsh-sedge',
      name: panel.name,
      sizeClass: 'Torso',
      currency: 'EUR',
      tested: panel.current?.date,
      conditions: panel.current?.conditions,
      field: { width: panel.data.field?.width.value, height: panel.data.field?.height.value },
    });
    const model = panel.current?.light.model;
    if (!model || !('weights' in it.light)) throw new Error('no model');
    for (const [i, weight] of model.weights.entries()) expect(it.light.weights[i]).toBeCloseTo(weight, 6);
    const { emitter } = it.light;
    const size = (of: typeof emitter) => ('ledSize' in of ? of.ledSize : Number.NaN);
    expect(it.light).toMatchObject({ emitter: { ...model.emitter, ledSize: size(emitter) }, field: model.field });
    expect(size(emitter) / size(model.emitter)).toBeCloseTo(1, 5);
    expect(it.light.power / model.power).toBeCloseTo(1, 5);
  });

  test('gives the reason where the beam is withheld, and for every gap', () => {
    const it = file('ruddlestone-r150');
    expect(it.light).toEqual({ absent: 'no beam that we know of explains the readings' });
    expect(unpackFigures(it).get('emitted-power')).toMatchObject({
      gap: true,
      reason: verbatim('no beam that we know of explains the readings'),
    });
    expect(it.field).not.toBeNull();
  });

  test('carries the marks of doubt', () => {
    expect(file('quennick-dab').marks['optical-power']).toEqual({ mark: '†', label: 'in doubt, see the flags' });
    expect(file('fennimarsh-sedge').marks).toEqual({});
  });

  test('has the distances of the readings that have their own', () => {
    expect(file('ostrel-vagg').distances.magnetic).toMatchObject({ value: 30 });
    expect(file('fennimarsh-sedge').distances.magnetic).toEqual({ value: 15.24, written: '6 in' });
    expect(file('quennick-dab').distances.magnetic).toBeNull();
  });

  test('says once what its figures have alike', () => {
    const it = file('fennimarsh-sedge');
    const day = demo.panel('fennimarsh-sedge').current?.date;
    expect(it.owner).toBe(`fennimarsh-sedge/${day}/`);
    expect(it.lines.filter((one) => String(one).startsWith(it.owner))).toEqual([]);
    for (const list of [it.kinds, it.lines, it.texts]) expect(new Set(list.map(String)).size).toBe(list.length);
    expect(unpackFigures(it).get('optical-power')).toMatchObject({ id: `${it.owner}optical-power` });
    for (const slug of demo.ledger.panels.keys()) expect(JSON.stringify(file(slug)).length, slug).toBeLessThan(9500);
  });

  test('is plain JSON', () => {
    for (const slug of demo.ledger.panels.keys()) {
      const it = file(slug);
      expect(JSON.parse(JSON.stringify(it)), slug).toEqual(it);
    }
  });
});

describe('the lists', () => {
  test('the short one names every panel with a page, withdrawn ones too', () => {
    const list = listedPanels(demo.ledger);
    expect(list.map((it) => it.slug).toSorted()).toEqual([...demo.ledger.panels.keys()].toSorted());
    // By class, as the guide has them, and by name in each.
    const classes = list.map((it) => it.class);
    expect(classes.filter((it, i) => it !== classes[i - 1])).toEqual(
      demo.ledger.classes.map((it) => it.sizeClass?.name),
    );
    const desk = list.filter((it) => it.class === 'Desk').map((it) => it.name);
    expect(desk).toEqual(desk.toSorted());
    expect(list.find((it) => it.slug === 'ostrel-bord')?.status).toBe('withdrawn');
    expect(list.find((it) => it.slug === 'fennimarsh-sedge')).toMatchObject({ class: 'Torso', status: 'published' });
  });
});
