import { describe, expect, test } from 'vitest';
import { distanceCurve } from '../../../src/measure/beam/distance-curve.ts';
import { drawnLight } from '../../../src/measure/beam/drawn-light.ts';
import { estimatePanel } from '../../../src/measure/beam/estimate.ts';
import { modelledOver } from '../../../src/measure/beam/field-map.ts';
import type { PanelModel } from '../../../src/measure/beam/panel-model.ts';
import { exactBench, lightSource, opticsInput } from './make.ts';

const input = opticsInput(exactBench(lightSource(), { grid: [3, 5] }));
const { estimates } = estimatePanel(input);
if (!estimates) throw new Error('the beam is withheld');
const { model, drawn } = estimates;

describe('the curve', () => {
  test('goes through the table’s distances, in small steps, as far as somebody has read', () => {
    const { curve } = drawnLight(model, { ...input.layout, sweep: [4, 90] });
    expect([curve.distances[0], curve.distances.at(-1)]).toEqual([4, 90]);
    expect([...curve.distances]).toEqual(expect.arrayContaining([5, 10, 15, 30, 45, 60]));
    curve.distances.forEach((it, i) => {
      const before = curve.distances[i - 1];
      if (before === undefined) return;
      expect(it).toBeGreaterThan(before);
      expect(it / before).toBeLessThan(1.09);
    });
  });

  test('has the model’s values', () => {
    const { distances, mean, peak } = drawn.curve;
    const at = distanceCurve(model, [...distances]);
    expect([...mean]).toEqual(at.map((it) => it.mean));
    expect([...peak]).toEqual(at.map((it) => it.peak));
  });

  test('has a peak from where one can be told, and that distance itself', () => {
    const near: PanelModel = { ...model, peakFrom: 12.5 };
    const { distances, peak } = drawnLight(near, input.layout).curve;
    const first = peak.findIndex((it) => !Number.isNaN(it));
    expect(distances[first]).toBe(12.5);
    expect([...peak.subarray(first)].every((it) => it > 0)).toBe(true);
  });
});

describe('the field', () => {
  test('is cut into cells that are nearly square, the brightest before its middle', () => {
    const { field } = drawn;
    expect([field?.columns, field?.rows]).toEqual([7, 16]);
    expect(field?.cells).toHaveLength(7 * 16);
    const brightest = [...(field?.cells ?? [])].indexOf(Math.max(...(field?.cells ?? [])));
    expect([brightest % 7, Math.floor(brightest / 7)].join()).toMatch(/^3,[78]$/);
  });

  test('has the points of the grid, row by row from the top', () => {
    const { grid, field, distance } = input.layout;
    if (!grid) throw new Error('no grid');
    const { inset } = grid.shape;
    const [x, y] = [field.width / 2 - inset, field.height / 2 - inset];
    const found = [...(drawn.field?.atPoints ?? [])];
    const expected = modelledOver(model, distance, [-x, 0, x], [y, y / 2, 0, -y / 2, -y]);
    expect(found).toHaveLength(15);
    found.forEach((it, i) => {
      expect(it).toBeCloseTo(expected[i] ?? Number.NaN, 9);
    });
  });

  test('is left out without a grid', () => {
    const { grid: _, ...layout } = input.layout;
    expect(drawnLight(model, layout).field).toBeUndefined();
  });
});
