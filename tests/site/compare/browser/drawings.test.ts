import { beforeAll, describe, expect, test } from 'vitest';
import { isFigure } from '../../../../src/measure/figure.ts';
import { USUAL_HEIGHT } from '../../../../src/measure/person.ts';
import type { ComparedPanel } from '../../../../src/site/compare/browser/compared-panel.ts';
import { curvesPlot, DASHES } from '../../../../src/site/compare/browser/curves-plot.ts';
import { fieldsDrawing } from '../../../../src/site/compare/browser/fields-drawing.ts';
import { comparedPanel } from '../../../../src/site/compare/compare-data.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger('ruddlestone-r150');
});
const file = (slug: string): ComparedPanel => comparedPanel(demo.panel(slug), demo.ledger);
const FIVE = ['ostrel-lill', 'kelpwright-gannet', 'quennick-dab', 'kelpwright-limpet', 'fennimarsh-sedge'];

describe('LED fields to one scale', () => {
  test('are as many times larger than each other, and than the figure, as they are', () => {
    const panels = FIVE.map(file);
    const drawing = fieldsDrawing(panels);
    if (!drawing) throw new Error('nothing is drawn');
    const scale = (drawing.floor - (drawing.person.head.cy - drawing.person.head.ry)) / USUAL_HEIGHT;
    panels.forEach((panel, i) => {
      const it = drawing.fields[i];
      expect((it?.leds.width ?? 0) / scale).toBeCloseTo(panel.field?.width ?? -1, 0);
      expect((it?.leds.height ?? 0) / scale).toBeCloseTo(panel.field?.height ?? -1, 0);
      expect(it?.housing === undefined).toBe(panel.housing === null);
    });
    const ticks = drawing.rule.ticks;
    expect((drawing.floor - (ticks.find((it) => it.text === '150')?.y ?? 0)) / scale).toBeCloseTo(150, 6);
    expect(ticks[0]?.text).toBe('0');
  });

  test('stay within the drawing and do not overlap', () => {
    const tall = { ...file('kelpwright-gannet'), field: { width: 90, height: 210 }, housing: null };
    const drawing = fieldsDrawing([...FIVE.slice(0, 4).map(file), tall]);
    if (!drawing) throw new Error('nothing is drawn');
    let right = drawing.person.head.cx;
    for (const { leds, housing } of drawing.fields) {
      const box = housing ?? leds;
      expect(box.x).toBeGreaterThan(right);
      expect(box.y).toBeGreaterThan(0);
      expect(box.y + box.height).toBeLessThanOrEqual(drawing.floor + 0.1);
      right = box.x + box.width;
    }
    expect(right).toBeLessThan(drawing.width);
  });

  test('are told in words', () => {
    expect(fieldsDrawing([file('kelpwright-gannet'), file('quennick-dab')])?.description).toBe(
      'LED fields to one scale beside a standing figure of 170 cm: Kelpwright Gannet 36.0 × 120.0 cm in a housing of 40.0 × 130.0 cm; Quennick Dab 20.0 × 20.0 cm',
    );
  });

  test('are none where none was measured', () => {
    expect(fieldsDrawing([{ ...file('quennick-dab'), field: null }])).toBeUndefined();
  });
});

describe('curves by distance', () => {
  const drawn = (slugs: readonly string[]) =>
    slugs.flatMap((slug, place) => {
      const { name, light } = file(slug);
      return 'absent' in light ? [] : [{ name, light, place }];
    });

  test('go through the values of the table by distance', () => {
    const plot = curvesPlot(drawn(FIVE));
    if (!plot) throw new Error('nothing is drawn');
    const [zero, top] = [plot.y[0], plot.y.at(-1)] as [{ at: number; text: string }, { at: number; text: string }];
    const valueAt = (y: number) => (Number(top.text) * (zero.at - y)) / (zero.at - top.at);
    FIVE.forEach((slug, i) => {
      const points = (plot.curves[i]?.path ?? '')
        .slice(1)
        .split('L')
        .map((it) => it.split(',').map(Number));
      expect(points).toHaveLength(56);
      for (const cm of [5, 10, 15, 30, 45, 60]) {
        const it = demo.panel(slug).figures.get(`mean-irradiance-at-${cm}-cm`);
        if (!isFigure(it)) throw new Error(`no figure at ${cm} cm`);
        // A tenth of a pixel is what places are rounded to.
        const pixel = Number(top.text) / (zero.at - top.at);
        expect(Math.abs(valueAt(points[cm - 5]?.[1] ?? 0) - it.value), `${slug} ${cm}`).toBeLessThan(0.1 * pixel);
      }
    });
  });

  test('have a dash pattern and a name each, and no two names on one another', () => {
    const plot = curvesPlot(drawn(FIVE));
    expect(new Set(plot?.curves.map((it) => it.dash)).size).toBe(FIVE.length);
    expect(new Set(DASHES).size).toBe(DASHES.length);
    const labels = (plot?.curves ?? []).map((it) => it.label.y).toSorted((a, b) => a - b);
    labels.slice(1).forEach((y, i) => {
      expect(y - (labels[i] as number)).toBeGreaterThanOrEqual(17.9);
    });
    expect(plot?.description).toContain('Ostrel Lill from 25 to 1.2 mW/cm²');
  });

  test('keep a panel’s pattern where one before it has none', () => {
    const plot = curvesPlot(drawn(['ostrel-lill', 'ruddlestone-r150', 'quennick-dab']));
    expect(plot?.curves.map((it) => it.place)).toEqual([0, 2]);
    expect(plot?.curves[1]?.dash).toBe(DASHES[2]);
  });

  test('are none where no beam is known', () => {
    expect(curvesPlot([])).toBeUndefined();
  });
});
