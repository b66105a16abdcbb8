import { describe, expect, test } from 'vitest';
import { widened } from '../../../src/measure/optics/emitter.ts';
import { orderNodes } from '../../../src/measure/optics/gaussian-sum.ts';
import {
  answersOf,
  type Extremes,
  GEOMETRY,
  type Layout,
  panelQuantities,
  TARGET_EVENNESS,
  TARGET_MEAN,
  TARGET_PEAK,
  TARGET_VALUES,
} from '../../../src/measure/optics/panel-quantities.ts';
import { planeValues } from '../../../src/measure/optics/plane-values.ts';
import { SIX_INCHES } from './make.ts';

const shape = { columns: 3, rows: 3, inset: 2.54 };
const layout: Layout = {
  field: { width: 20, height: 34 },
  emitter: { kind: 'leds', columns: 8, rows: 13, ledSize: 0.6 },
  distance: SIX_INCHES,
  grid: { shape, kept: [0, 1, 2, 3, 4, 5, 6, 7, 8] },
  sweep: [10, 40],
  targets: [12, 60],
};
const of = orderNodes(7);
const readings = (it: Layout, shift = 0) => {
  const panel = panelQuantities(it);
  const out = new Float64Array(panel.places.count);
  panel.readings(of, shift, out);
  return out;
};
const targets = (it: Layout, extremes: readonly Extremes[]) => {
  const out = new Float64Array(TARGET_VALUES * it.targets.length);
  panelQuantities(it).targets(of, out, extremes);
  return out;
};

describe('quantities of a panel', () => {
  test('mean, grid and targets are those of its planes', () => {
    const { places, extremes } = panelQuantities(layout);
    const found = readings(layout);
    const plane = planeValues(layout.emitter, layout.field, 7, 1, SIX_INCHES, shape);
    expect(found[places.mean]).toBeCloseTo(plane.mean, 10);
    expect(found[places.gridMean]).toBeCloseTo(plane.gridMean ?? Number.NaN, 10);
    const points = places.grid.map((q) => found[q] as number);
    expect(points.reduce((sum, it) => sum + it, 0) / 9).toBeCloseTo(plane.gridMean ?? Number.NaN, 10);
    const [near = 0, far = 0] = places.sweep.map((q) => found[q] as number);
    expect((near + far) / 2).toBeCloseTo(found[places.sweepMean] as number, 12);
    layout.targets.forEach((distance, i) => {
      const at = planeValues(layout.emitter, layout.field, 7, 1, distance);
      const out = targets(layout, extremes(of)).subarray(TARGET_VALUES * i);
      expect(out[TARGET_MEAN]).toBeCloseTo(at.mean, 10);
      expect((out[TARGET_PEAK] as number) / at.peak.value).toBeCloseTo(1, 3);
      expect((out[TARGET_EVENNESS] as number) / (at.minimum.value / at.mean)).toBeCloseTo(1, 3);
    });
  });

  test('no targets, no grid and no sweep are as good', () => {
    const { grid: _, sweep: __, ...rest } = layout;
    expect(readings({ ...rest, targets: [] })).toHaveLength(3);
    expect(targets({ ...rest, targets: [] }, [])).toHaveLength(0);
  });

  test('a grid point that there is not is refused', () => {
    expect(() => panelQuantities({ ...layout, grid: { shape, kept: [9] } })).toThrow(RangeError);
  });

  test('they answer to each part of the geometry as they do when it is laid out otherwise', () => {
    const base = panelQuantities(layout);
    const extremes = base.extremes(of);
    const found = answersOf(layout, base);
    const { field, emitter } = layout;
    const by = 0.1;
    const moved: Record<(typeof GEOMETRY)[number], (step: number) => [Layout, number]> = {
      distance: (step) => [layout, step],
      width: (step) => [{ ...layout, field: { ...field, width: field.width + step } }, 0],
      height: (step) => [{ ...layout, field: { ...field, height: field.height + step } }, 0],
      edge: (step) => [{ ...layout, emitter: widened(emitter, step) }, 0],
    };
    for (const side of GEOMETRY) {
      const [up, down] = [by, -by].map((step) => moved[side](step)) as [[Layout, number], [Layout, number]];
      const answer = found.readings(of)[side];
      const [above, below] = [readings(...up), readings(...down)];
      answer.forEach((it, q) => {
        const slope = Math.log((above[q] as number) / (below[q] as number)) / (2 * by);
        expect(Math.abs(it - slope)).toBeLessThan(0.02 * Math.abs(slope) + 5e-4);
      });
      if (side === 'distance') continue;
      const [higher, lower] = [targets(up[0], extremes), targets(down[0], extremes)];
      found.targets(of, extremes)[side].forEach((it, q) => {
        const slope = Math.log((higher[q] as number) / (lower[q] as number)) / (2 * by);
        expect(Math.abs(it - slope)).toBeLessThan(0.02 * Math.abs(slope) + 5e-4);
      });
    }
  });
});
