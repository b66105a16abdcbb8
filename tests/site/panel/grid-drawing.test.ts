import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import type { PanelEntry, SessionEntry } from '../../../src/ledger/ledger.ts';
import { type GridDrawing, gridDrawing } from '../../../src/site/panel/grid-drawing.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

const PLOVER = 'panels/plover/index.md';
let content: ContentFolder;
let original: string;
let demo: Demo;
beforeAll(() => {
  content = tinyContent();
  original = content.read(PLOVER);
  demo = demoLedger();
});
afterAll(() => content.delete());

/** The drawing of the plover, with some of its file replaced. */
function drawing(...edits: Array<[from: string, to: string]>): GridDrawing | undefined {
  content.write(PLOVER, original);
  for (const [from, to] of edits) content.edit(PLOVER, from, to);
  const panel = buildLedger(content.content(), { today: TODAY }).panels.get('plover') as PanelEntry;
  return gridDrawing(panel, panel.current as SessionEntry);
}

function drawn(...edits: Array<[from: string, to: string]>): GridDrawing {
  const it = drawing(...edits);
  if (!it) throw new Error('nothing is drawn');
  return it;
}

/** The rows as they stand in the file. */
const ROWS = `        - [31.0, 38.2, 30.8]
        - [40.1, 50.0, 39.9]
        - - 30.6
          - 37.8
          - [31.2, { value: 61.0, struck: The rod had slipped. }]
`;

describe('geometry', () => {
  test('points lie where they were read: an inch inside the edges, and in the middle', () => {
    const { points, width, height } = drawn();
    expect([width, height]).toEqual([20, 30]);
    const xs = [2.54, 10, 17.46];
    const ys = [2.54, 15, 27.46];
    expect(points.map((it) => [it.x, it.y])).toEqual(ys.flatMap((y) => xs.map((x) => [x, y])));
  });

  test('another inset, and another number of points', () => {
    const { points } = drawn(['inset: 1 in', 'inset: 3 cm'], [ROWS, '        - [31, 38]\n        - [40, 50]\n']);
    expect(points.map((it) => [it.x, it.y])).toEqual([
      [3, 3],
      [17, 3],
      [3, 27],
      [17, 27],
    ]);
  });

  test('one point is in the middle', () => {
    expect(drawn([ROWS, '        - [31]\n']).points.map((it) => [it.x, it.y])).toEqual([[10, 15]]);
  });

  test('one row runs across the middle, one column down it', () => {
    const row = drawn([ROWS, '        - [31, 32, 33]\n']);
    expect(row.points.map((it) => [it.x, it.y])).toEqual([
      [2.54, 15],
      [10, 15],
      [17.46, 15],
    ]);
    const column = drawn([ROWS, '        - [31]\n        - [32]\n        - [33]\n']);
    expect(column.points.map((it) => [it.x, it.y])).toEqual([
      [10, 2.54],
      [10, 15],
      [10, 27.46],
    ]);
  });

  test('the housing lies around the field, centred, to the same scale', () => {
    expect(drawn().housing).toEqual({ x: -2, y: -2, width: 24, height: 34 });
    expect(drawn(['housing:\n  width: 24 cm\n  height: 34 cm\n', ''])).not.toHaveProperty('housing');
  });

  test('the view holds all of it with a margin, and one centimetre is as long across as down', () => {
    for (const panel of demo.ledger.panels.values()) {
      const it = panel.current && gridDrawing(panel, panel.current);
      if (!it) continue;
      const [x, y, width, height] = it.viewBox.split(' ').map(Number) as [number, number, number, number];
      const outer = it.housing ?? { x: 0, y: 0, width: it.width, height: it.height };
      for (const box of [outer, { x: 0, y: 0, width: it.width, height: it.height }]) {
        expect(x).toBeLessThan(box.x);
        expect(y).toBeLessThan(box.y);
        expect(x + width).toBeGreaterThan(box.x + box.width);
        expect(y + height).toBeGreaterThan(box.y + box.height);
      }
      // Whole pixels: half of one is the most that either side may be off.
      const scale = Math.max(it.pixelWidth, it.pixelHeight) / Math.max(width, height);
      expect(Math.abs(it.pixelWidth - scale * width)).toBeLessThan(1);
      expect(Math.abs(it.pixelHeight - scale * height)).toBeLessThan(1);
      expect(Math.max(it.pixelWidth, it.pixelHeight)).toBe(480);
    }
  });
});

describe('dots', () => {
  test('have areas in proportion to the readings', () => {
    const { points } = drawn();
    const means = [31, 38.2, 30.8, 40.1, 50, 39.9, 30.6, 37.8, 31.2];
    const largest = points[4]?.radius ?? Number.NaN;
    points.forEach((it, i) => {
      expect((it.radius / largest) ** 2).toBeCloseTo((means[i] as number) / 50, 1);
      // Rounded to a tenth of a millimetre.
      expect(it.radius).toBeCloseTo(largest * Math.sqrt((means[i] as number) / 50), 1);
    });
    expect(points.map((it) => it.text)).toEqual(means.map((it) => it.toFixed(1)));
  });

  test('never touch one another or leave the field', () => {
    for (const panel of demo.ledger.panels.values()) {
      const it = panel.current && gridDrawing(panel, panel.current);
      for (const [i, a] of (it?.points ?? []).entries()) {
        for (const b of it?.points.slice(i + 1) ?? [])
          expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(a.radius + b.radius);
        expect(Math.min(a.x, a.y)).toBeGreaterThan(0);
        expect(a.x).toBeLessThan(it?.width ?? 0);
        expect(a.y).toBeLessThan(it?.height ?? 0);
      }
    }
  });

  test('of several readings show their mean, of a hundred and more no decimals', () => {
    const { points } = drawn([ROWS, '        - [[30, 31], [150.4, 150.6]]\n']);
    expect(points.map((it) => it.text)).toEqual(['30.5', '151']);
  });

  test('of a point whose readings were all struck out say so', () => {
    const struck = drawn(['[31.0, 38.2,', '[{ value: 61, struck: Slipped. }, 38.2,']);
    expect(struck.points.map((it) => it.isRejected)).toEqual([true, ...Array(8).fill(false)]);
    expect(struck.points[0]?.text).toBe('struck');
    expect(struck.points[0]?.radius).toBeGreaterThan(0);
  });

  test('are drawn when every point was struck out, too', () => {
    const { points } = drawn([ROWS, '        - [{ value: 61, struck: Off. }, { value: 62, struck: Off. }]\n']);
    for (const it of points) {
      expect(it.isRejected).toBe(true);
      expect(Number.isFinite(it.radius)).toBe(true);
    }
  });
});

describe('words', () => {
  test('the table beside it has every reading, struck ones with their reason', () => {
    expect(drawn().rows).toEqual([
      ['31.0', '38.2', '30.8'],
      ['40.1', '50.0', '39.9'],
      ['30.6', '37.8', '31.2; 61.0 struck out: The rod had slipped.'],
    ]);
  });

  test('the description says in words what is drawn', () => {
    const { description } = drawn();
    expect(description).toContain('LED field 20 by 30 cm, housing 24 by 34 cm');
    expect(description).toContain('3 by 3 readings in mW/cm²');
    expect(description).toContain('1 in inside the edges');
  });

  test('the type stays within its cell', () => {
    for (const panel of demo.ledger.panels.values()) {
      const it = panel.current && gridDrawing(panel, panel.current);
      if (!it) continue;
      expect(it.typeSize).toBeGreaterThan(0);
      expect(it.typeSize).toBeLessThan(it.height / 3);
    }
  });
});

describe('nothing is drawn', () => {
  test.each([
    ['without a field', [['field:\n  width: 20 cm\n  height: 30 cm\n', '']]],
    ['without a grid', [[`    grid:\n      inset: 1 in\n      rows:\n${ROWS}`, '']]],
    ['where the points would cross', [['width: 20 cm', 'width: 4 cm']]],
  ] as Array<[string, Array<[string, string]>]>)('%s', (_name, edits) => {
    expect(drawing(...edits)).toBeUndefined();
  });
});
