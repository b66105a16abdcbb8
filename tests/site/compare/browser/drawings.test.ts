import { beforeAll, describe, expect, test } from 'vitest';
import type { Difference } from '../../../../src/measure/difference.ts';
import { isFigure } from '../../../../src/measure/figure.ts';
import { USUAL_HEIGHT } from '../../../../src/measure/person.ts';
import type { ComparedPanel } from '../../../../src/site/compare/browser/compared-panel.ts';
import { curvesPlot, DASHES } from '../../../../src/site/compare/browser/curves-plot.ts';
import {
  type DrawnDifference,
  differenceLine,
  placeDifference,
} from '../../../../src/site/compare/browser/difference-line.ts';
import { fieldsDrawing } from '../../../../src/site/compare/browser/fields-drawing.ts';
import { comparedPanel } from '../../../../src/site/compare/compare-data.ts';
import type { PieceElement } from '../../../../src/site/shared/browser/pieces.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';
import { cornersOf } from '../../../support/path-corners.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger('ruddlestone-r150');
});
const file = (slug: string): ComparedPanel => comparedPanel(demo.panel(slug), demo.ledger);
const FIVE = ['ostrel-lill', 'kelpwright-gannet', 'quennick-dab', 'kelpwright-limpet', 'fennimarsh-sedge'];

describe('LED fields to one scale', () => {
  const draw = (panels: readonly ComparedPanel[]) =>
    fieldsDrawing(panels.map((panel) => ({ panel, name: panel.model })));
  const parts = (drawing: PieceElement | undefined, tag: string, className?: string) => {
    if (!drawing) throw new Error('nothing is drawn');
    return drawing.pieces.flatMap((it) =>
      typeof it !== 'string' && it.tag === tag && (className === undefined || it.attributes.class === className)
        ? [it]
        : [],
    );
  };
  const numbers = ({ attributes }: PieceElement) => ({
    x: Number(attributes.x),
    y: Number(attributes.y),
    width: Number(attributes.width),
    height: Number(attributes.height),
  });
  const floorOf = (drawing: PieceElement | undefined) =>
    Number(/M0 ([\d.]+)H/.exec(String(parts(drawing, 'path', 'floor')[0]?.attributes.d))?.[1]);

  test('are as large as they are beside the figure, a unit for a centimetre', () => {
    const panels = FIVE.map(file);
    const drawing = draw(panels);
    const [head] = parts(drawing, 'ellipse');
    expect(floorOf(drawing) - (Number(head?.attributes.cy) - Number(head?.attributes.ry))).toBeCloseTo(USUAL_HEIGHT, 0);
    expect(
      parts(drawing, 'rect', 'leds')
        .map((it) => numbers(it))
        .map(({ width, height }) => ({ width, height })),
    ).toEqual(panels.map((it) => it.field));
    expect(parts(drawing, 'rect', 'housing')).toHaveLength(panels.filter((it) => it.housing).length);
  });

  test('stay within the drawing and do not overlap', () => {
    const tall = { ...file('kelpwright-gannet'), field: { width: 90, height: 210 }, housing: null };
    const drawing = draw([...FIVE.slice(0, 4).map(file), tall]);
    let right = 60;
    for (const box of parts(drawing, 'rect', 'leds').map(numbers)) {
      expect(box.x).toBeGreaterThan(right);
      expect(box.y).toBeGreaterThan(0);
      expect(box.y + box.height).toBeLessThanOrEqual(floorOf(drawing) + 0.1);
      right = box.x + box.width;
    }
    expect(right).toBeLessThan(Number(drawing?.attributes.width));
  });

  test('are named under the floor, long names cut, and told in words', () => {
    const long = { ...file('quennick-dab'), model: 'A name far too long' };
    expect(parts(draw([file('kelpwright-gannet'), long]), 'text').map((it) => it.pieces.join(''))).toEqual([
      'Gannet',
      'A name far …',
    ]);
    expect(draw([file('kelpwright-gannet'), file('quennick-dab')])?.attributes['aria-label']).toBe(
      'LED fields to one scale beside a standing figure of 170 cm: Kelpwright Gannet 36.0 × 120.0 cm in a housing of 40.0 × 130.0 cm; Quennick Dab 20.0 × 20.0 cm',
    );
  });

  test('are none where none was measured', () => {
    expect(draw([{ ...file('quennick-dab'), field: null }])).toBeUndefined();
  });
});

describe('a difference as a line', () => {
  const ratio = (value: number, low: number, high: number): Difference => ({
    kind: 'apart',
    value,
    interval95: [low, high],
  });

  test('lies on one scale from 40 % less to 40 % more, whatever it is', () => {
    expect(placeDifference(ratio(1, 0.6, 1.4), false)).toEqual({
      from: 10,
      at: 110,
      to: 210,
      isPastLow: false,
      isPastHigh: false,
    });
    // 20 % more lies half of the way from nought to the end.
    expect(placeDifference(ratio(1.2, 1.2, 1.2), false)).toMatchObject({ from: 160, at: 160, to: 160 });
  });

  test('has an arrow past the end that it reaches over, and no place where none of it is in between', () => {
    expect(placeDifference(ratio(1.5, 1.3, 1.7), false)).toEqual({
      from: 185,
      to: 210,
      isPastLow: false,
      isPastHigh: true,
    });
    expect(placeDifference(ratio(0.2, 0.1, 0.3), false)).toEqual({
      from: 10,
      to: 10,
      isPastLow: true,
      isPastHigh: false,
    });
    const classes = (drawn: DrawnDifference | undefined, isTie = false) =>
      differenceLine(drawn, isTie).pieces.map((it) => (typeof it === 'string' ? it : it.attributes.class));
    expect(classes(placeDifference(ratio(1.5, 1.3, 1.7), false))).toEqual(['axis', 'nought', 'interval', 'past']);
    expect(classes(placeDifference(ratio(0.2, 0.1, 0.3), false))).toEqual(['axis', 'nought', 'past']);
    expect(classes(placeDifference(ratio(1.05, 0.9, 1.2), false), true)).toContain('interval tie');
    expect(classes(undefined)).toEqual(['axis', 'nought']);
  });

  test('is none where figures are subtracted, or nothing is known', () => {
    expect(placeDifference(ratio(3, 1, 5), true)).toBeUndefined();
    expect(placeDifference({ kind: 'unknown', reason: { code: 'not-measured' } }, false)).toBeUndefined();
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
      const points = cornersOf(plot.curves[i]?.path ?? '');
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

  test('fit a phone, where names leave room for them', () => {
    const plot = curvesPlot(
      drawn(['ostrel-lill', 'quennick-dab']).map((it) => ({ ...it, name: 'Lill' })),
      true,
    );
    expect(plot?.width).toBe(350);
    expect((plot?.frame.right ?? 0) - (plot?.frame.left ?? 0)).toBeGreaterThan(180);
    for (const { label } of plot?.curves ?? []) expect(label.x + 34 + 7.5 * label.text.length).toBeLessThanOrEqual(350);
  });

  test('are none where no beam is known', () => {
    expect(curvesPlot([])).toBeUndefined();
  });
});
