import { beforeAll, describe, expect, test } from 'vitest';
import type { PanelEntry } from '../../../src/ledger/ledger.ts';
import { type GridDrawing, gridDrawing } from '../../../src/site/panel/grid-drawing.ts';
import { standingDrawing } from '../../../src/site/panel/standing-drawing.ts';
import type { PieceElement } from '../../../src/site/shared/browser/pieces.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

const gridOf = (panel: PanelEntry) => panel.current && gridDrawing(panel, panel.current);

/** A panel with other sizes, cm. */
function sized(slug: string, width: number, height: number, housing?: [number, number]): PanelEntry {
  const panel = demo.panel(slug);
  const side = (value: number) => ({ value, written: `${value} cm` });
  const { field: _field, housing: _housing, ...data } = panel.data;
  return {
    ...panel,
    data: {
      ...data,
      field: { width: side(width), height: side(height) },
      ...(housing && { housing: { width: side(housing[0]), height: side(housing[1]) } }),
    } as PanelEntry['data'],
  };
}

function drawn(panel: PanelEntry, grid: GridDrawing | 'none' | undefined = gridOf(panel)) {
  const it = standingDrawing(panel, grid === 'none' ? undefined : grid);
  if (!it) throw new Error('nothing is drawn');
  const elements = (it.drawing.pieces as PieceElement[]).filter((one) => typeof one !== 'string');
  const ofClass = (tag: string, name?: string) =>
    elements.filter((one) => one.tag === tag && (name === undefined || one.attributes.class === name));
  const box = (one: PieceElement | undefined) => {
    const { x, y, width, height } = (one?.attributes ?? {}) as Record<string, number>;
    return { x, y, width, height } as { x: number; y: number; width: number; height: number };
  };
  return { ...it, ofClass, box, label: String(it.drawing.attributes['aria-label']) };
}

/** Units of the drawing for a centimetre, by the figure of 170 cm. */
function scaleOf(it: ReturnType<typeof drawn>): number {
  const [head] = it.ofClass('ellipse', 'body');
  const top = Number(head?.attributes.cy) - Number(head?.attributes.ry);
  const floor = Number(/M0 ([\d.]+)/.exec(String(it.ofClass('path', 'floor')[0]?.attributes.d))?.[1]);
  return (floor - top) / 170;
}

test('the field, the housing and the person have one scale, and all of it lies in the drawing', () => {
  for (const panel of demo.ledger.panels.values()) {
    const it = drawn(panel);
    const scale = scaleOf(it);
    const field = it.box(it.ofClass('rect', 'leds')[0]);
    expect(field.width / (panel.data.field?.width.value ?? 0), panel.slug).toBeCloseTo(scale, 1);
    expect(field.height / (panel.data.field?.height.value ?? 0), panel.slug).toBeCloseTo(scale, 1);
    const { width = 0, height = 0 } = it.drawing.attributes as { width: number; height: number };
    for (const rect of it.ofClass('rect').map(it.box)) {
      expect(Math.min(rect.x, rect.y), panel.slug).toBeGreaterThanOrEqual(0);
      expect(rect.x + rect.width, panel.slug).toBeLessThanOrEqual(width);
      expect(rect.y + rect.height, panel.slug).toBeLessThanOrEqual(height);
    }
  }
});

test.each([
  ['as wide as a bed is long', 200, 90],
  ['taller than any person', 60, 260],
  ['ten metres square', 1000, 1000],
  ['of a fingernail', 1, 1],
])('a panel %s fits with the person', (_name, width, height) => {
  const it = drawn(sized('kelpwright-gannet', width, height), 'none');
  const size = it.drawing.attributes as { width: number; height: number };
  const [head] = it.ofClass('ellipse', 'body');
  expect(Number(head?.attributes.cy)).toBeGreaterThan(0);
  const rect = it.box(it.ofClass('rect', 'leds')[0]);
  expect(rect.x).toBeGreaterThan(0);
  expect(rect.x + rect.width).toBeLessThanOrEqual(size.width);
  expect(rect.y).toBeGreaterThanOrEqual(0);
  expect(rect.y + rect.height).toBeLessThanOrEqual(size.height);
  expect(JSON.stringify(it.drawing)).not.toMatch(/NaN|Infinity|null/);
});

test('what stands on the floor does not sink into it', () => {
  for (const panel of demo.ledger.panels.values()) {
    const it = drawn(panel);
    const floor = Number(/M0 ([\d.]+)/.exec(String(it.ofClass('path', 'floor')[0]?.attributes.d))?.[1]);
    for (const rect of it.ofClass('rect').map(it.box)) expect(rect.y + rect.height).toBeLessThanOrEqual(floor + 0.1);
  }
});

describe('the readings', () => {
  test('stand beside their points where the panel is large enough, and in an enlargement where it is not', () => {
    expect(drawn(demo.panel('kelpwright-gannet')).isEnlarged).toBe(false);
    expect(drawn(demo.panel('kelpwright-gannet')).ofClass('rect', 'leds')).toHaveLength(1);
    const small = drawn(demo.panel('kelpwright-limpet'));
    expect(small.isEnlarged).toBe(true);
    const [own, large] = small.ofClass('rect', 'leds').map(small.box);
    expect(large?.width).toBeGreaterThan(3 * (own?.width ?? 0));
    expect((large?.width ?? 0) / (large?.height ?? 1)).toBeCloseTo(8.2 / 12, 1);
  });

  test('are all there, of every panel, and none over another', () => {
    for (const panel of demo.ledger.panels.values()) {
      const it = drawn(panel);
      const grid = gridOf(panel);
      const [group] = it.ofClass('g');
      const texts = (group?.pieces ?? []).filter((one) => typeof one !== 'string');
      expect(texts.map((one) => one.pieces[0])).toEqual(grid?.points.map((one) => one.text));
      const boxes = texts.map(({ attributes: { x, y } }, i) => {
        const anchor = group?.attributes.class === 'three' ? ['end', 'middle', 'start'][i % 3] : 'middle';
        const left = Number(x) - (anchor === 'end' ? 24 : anchor === 'middle' ? 12 : 0);
        return { left, right: left + 24, top: Number(y) - 9, bottom: Number(y) };
      });
      for (const [i, a] of boxes.entries()) {
        for (const b of boxes.slice(i + 1)) {
          const isApart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
          expect(isApart, `${panel.slug}: ${i}`).toBe(true);
        }
      }
    }
  });

  test('have dots whose areas are in proportion, and never touch', () => {
    for (const panel of demo.ledger.panels.values()) {
      const it = drawn(panel);
      const dots = it
        .ofClass('circle')
        .map(({ attributes: { cx, cy, r } }) => ({ x: Number(cx), y: Number(cy), r: Number(r) }));
      const shares = gridOf(panel)?.points.map((one) => one.share ?? 0) ?? [];
      const largest = Math.max(...dots.map((one) => one.r));
      dots.forEach((one, i) => {
        expect((one.r / largest) ** 2, panel.slug).toBeCloseTo(shares[i] ?? 0, 1);
        for (const other of dots.slice(i + 1)) {
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(one.r + other.r);
        }
      });
    }
  });

  test('of points that were all struck out are hollow', () => {
    const panel = demo.panel('kelpwright-gannet');
    const grid = gridOf(panel) as GridDrawing;
    const points = grid.points.map((it, i) => (i === 4 ? { ...it, share: undefined, text: 'struck' } : it));
    const it = drawn(panel, { ...grid, points });
    expect(it.ofClass('circle', 'struck')).toHaveLength(1);
    expect(it.label).toContain('50.2, struck, 50.0');
  });

  test('of many points are left to the table where numbers have no room', () => {
    const panel = demo.panel('kelpwright-limpet');
    const columns = 12;
    const points = Array.from({ length: columns * columns }, (_, i) => ({
      x: 0.5 * (1 + (i % columns)),
      y: 0.5 * (1 + Math.floor(i / columns)),
      share: 1,
      text: '20.0',
    }));
    const it = drawn(panel, { ...(gridOf(panel) as GridDrawing), columns, gapX: 0.5, gapY: 0.5, points });
    expect(it.ofClass('circle')).toHaveLength(144);
    expect(it.ofClass('text').filter((one) => one.attributes.class !== 'length')).toHaveLength(0);
  });
});

test('the label says sizes and readings in words', () => {
  expect(drawn(demo.panel('kelpwright-gannet')).label).toMatch(
    /^LED field 36\.0 by 120\.0 cm, housing 40\.0 by 130\.0 cm, to scale beside a standing figure of 170 cm; readings in mW\/cm², row by row: 40\.\d, /,
  );
  expect(drawn(sized('kelpwright-gannet', 10, 10), 'none').label).toMatch(/of 170 cm$/);
});

test('the enlargement tells its scale by a length', () => {
  const it = drawn(demo.panel('kelpwright-limpet'));
  const [rule] = it.ofClass('path', 'rule');
  const drawnLength = Number(/h([\d.]+)m/.exec(String(rule?.attributes.d))?.[1]);
  const told = Number.parseFloat(String(it.ofClass('text', 'length')[0]?.pieces[0]));
  const large = it.ofClass('rect', 'leds').map(it.box)[1];
  expect(drawnLength / told).toBeCloseTo((large?.width ?? 0) / 8.2, 0);
});

test('nothing is drawn of a panel whose sizes nobody measured', () => {
  const panel = demo.panel('kelpwright-gannet');
  const { field: _field, housing: _housing, ...data } = panel.data;
  expect(standingDrawing({ ...panel, data: data as PanelEntry['data'] }, undefined)).toBeUndefined();
});
