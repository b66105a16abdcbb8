import { expect, test } from 'vitest';
import { fieldDrawing, scaleFor } from '../../../../src/site/bench/browser/sheet-drawing.ts';
import { BEYOND_PLACES, sheetPoints } from '../../../../src/site/bench/browser/sheet-points.ts';
import { sheetGrid, usualSetup } from '../../../../src/site/bench/browser/sheet-setup.ts';

const of = (width: number, height: number, more = {}) => {
  const [one, other] = [width, height].map((cm) => ({ cm, written: `${cm} cm` }));
  return sheetGrid(
    { ...usualSetup(), ...(one && { width: one }), ...(other && { height: other }), ...more },
    undefined,
  );
};

test('points have their field of the content file and their place from the corner', () => {
  const { points, travel } = sheetPoints(of(20, 60));
  expect(points[0]).toMatchObject({
    number: 1,
    path: 'grid.rows[0][0]',
    across: '2.54 cm (1.00 in)',
    down: '2.54 cm (1.00 in)',
  });
  expect(points[3]).toMatchObject({
    path: 'grid.rows[1][2]',
    across: '17.46 cm (6.87 in)',
    down: '30.00 cm (11.81 in)',
  });
  expect(new Set(points.map((it) => it.path)).size).toBe(9);
  // Three rows of 14.92 cm, and 54.92 cm down.
  expect(travel?.shortest).toBeCloseTo(3 * 14.92 + 54.92, 9);
});

test('without a field the places are formulas', () => {
  const { points, travel } = sheetPoints(sheetGrid({ ...usualSetup(), rows: 4 }, undefined));
  expect(points.map((it) => it.across).slice(0, 3)).toEqual(['1 in', '½ width', 'width − 1 in']);
  expect(points.find((it) => it.path === 'grid.rows[1][0]')?.down).toBe('1 in + 1/3 (height − 2 × 1 in)');
  expect(travel).toBeUndefined();
});

test('the six places of the procedure, the farthest last at each edge', () => {
  expect(BEYOND_PLACES.map((it) => `${it.edge} ${it.past}`)).toEqual([
    ...['right 8', 'right 20', 'right 40'],
    ...['top 8', 'top 20', 'top 40'],
  ]);
});

test.each([
  [5, 5, 1],
  [36, 120, 20],
  [60, 200, 40],
])('%i × %i cm is drawn to 1 : %i, with its points where they are', (width, height, scale) => {
  const { points } = sheetPoints(of(width, height));
  const drawing = fieldDrawing({ width, height }, points);
  expect(drawing.scale).toBe(scale);
  const pieces = drawing.picture.pieces.filter((it) => typeof it !== 'string');
  const [field] = pieces;
  expect(field?.attributes.width).toBeCloseTo((10 * width) / scale, 2);
  const circles = pieces.filter((it) => it.tag === 'circle');
  expect(circles).toHaveLength(9);
  const [x, y] = [Number(field?.attributes.x), Number(field?.attributes.y)];
  expect(Number(circles[0]?.attributes.cx) - x).toBeCloseTo((10 * (points[0]?.place?.x ?? 0)) / scale, 1);
  expect(Number(circles[8]?.attributes.cy) - y).toBeCloseTo((10 * (points[8]?.place?.y ?? 0)) / scale, 1);
});

test('no field is too large for a scale', () => {
  expect(scaleFor({ width: 400, height: 400 }, { width: 72, height: 64 })).toBe(100);
  expect(scaleFor({ width: 1200, height: 10 }, { width: 72, height: 64 })).toBe(200);
});
