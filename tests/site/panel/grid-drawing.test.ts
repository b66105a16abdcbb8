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
});

describe('dots', () => {
  test('go by their share of the highest reading', () => {
    const { points } = drawn();
    const means = [31, 38.2, 30.8, 40.1, 50, 39.9, 30.6, 37.8, 31.2];
    points.forEach((it, i) => {
      expect(it.share).toBeCloseTo((means[i] as number) / 50, 10);
    });
    expect(points.map((it) => it.text)).toEqual(means.map((it) => it.toFixed(1)));
  });

  test('lie within the field, with what is between neighbours', () => {
    for (const panel of demo.ledger.panels.values()) {
      const it = panel.current && gridDrawing(panel, panel.current);
      for (const [i, a] of (it?.points ?? []).entries()) {
        for (const b of it?.points.slice(i + 1) ?? [])
          expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(0.99 * Math.min(it?.gapX ?? 0, it?.gapY ?? 0));
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
    expect(struck.points.map((it) => it.share === undefined)).toEqual([true, ...Array(8).fill(false)]);
    expect(struck.points[0]?.text).toBe('struck');
  });

  test('are drawn when every point was struck out, too', () => {
    const { points } = drawn([ROWS, '        - [{ value: 61, struck: Off. }, { value: 62, struck: Off. }]\n']);
    expect(points.map((it) => it.share)).toEqual([undefined, undefined]);
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
