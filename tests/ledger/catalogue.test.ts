import { beforeAll, describe, expect, test } from 'vitest';
import { type Figure, isFigure } from '../../src/measure/figure.ts';
import { methodReference, methodText } from '../../src/measure/method-versions.ts';
import { METRICS, metricById } from '../../src/measure/metrics.ts';
import { demoLedger } from '../support/demo-ledger.ts';

let figures: Figure[];
let listed: Set<string>;
beforeAll(() => {
  const panels = [...demoLedger().ledger.panels.values()];
  const all = panels.flatMap((panel) => [panel.figures, ...panel.sessions.map((it) => it.figures)]);
  listed = new Set(all.flatMap((it) => [...it.keys()]));
  figures = all.flatMap((it) => [...it.values()].filter(isFigure));
});

describe('figures and the catalogue', () => {
  test('every figure has the unit and the method of its row', () => {
    const faults = figures.flatMap(({ id, metric, unit, method }) => {
      const row = metricById(metric);
      const wanted = methodReference(row.method);
      return unit === row.unit && method === wanted
        ? []
        : [`${id}: ${unit} by ${methodText(method)}, not ${row.unit} by ${methodText(wanted)}`];
    });
    expect(faults).toEqual([]);
    expect(figures.length).toBeGreaterThan(500);
  });

  test('every row is a figure or a gap of the panels, and nothing else is', () => {
    expect([...listed].toSorted()).toEqual(METRICS.map((it) => it.id).toSorted());
  });

  test('every row is a figure of some panel, but for those that can be none', () => {
    const made = new Set<string>(figures.map((it) => it.metric));
    expect(METRICS.map((it) => it.id).filter((id) => !made.has(id))).toMatchInlineSnapshot(`
      [
        "magnetic-field-frequency",
        "infrared-share-at-15-cm",
        "infrared-stay-at-15-cm",
        "flicker-low-risk-multiple-near-infrared",
        "flicker-no-effect-multiple-near-infrared",
        "sweep-maximum-red",
        "sweep-maximum-near-infrared",
        "sweep-percentile-red",
        "sweep-percentile-near-infrared",
        "flicker-index-red",
        "flicker-index-near-infrared",
      ]
    `);
  });
});
