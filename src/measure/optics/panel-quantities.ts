import { type Emitter, emitterTerms, type Field, widened } from './emitter.ts';
import type { OrderNodes } from './gaussian-sum.ts';
import { planeModel } from './plane-model.ts';
import { dimCandidates, type GridShape, gridSpots, peakCandidates } from './plane-values.ts';

/** Where a panel was read, and where it is to be worked out. */
export interface Layout {
  field: Field;
  emitter: Emitter;
  /** Reference plane, cm: that of the grid. */
  distance: number;
  /** The grid, and which of its points (row by row from the top) have a reading. */
  grid?: { shape: GridShape; kept: readonly number[] };
  /** Distances of the readings on the axis, cm. */
  sweep?: readonly number[];
  /** Distances of the table for readers, cm. */
  targets: readonly number[];
}

/** Where each of a panel's quantities is in the arrays below. All are mW/cm2 for each W given off. */
export interface QuantityPlaces {
  count: number;
  /** True mean over the LED-area rectangle on the reference plane. */
  mean: number;
  /** Mean of the grid's points with a reading, and those points. */
  gridMean: number;
  grid: readonly number[];
  /** Mean of the sweep's readings, and those readings. */
  sweepMean: number;
  sweep: readonly number[];
}

/** What is told of each target: mean and peak, mW/cm2 for each W given off, and the dimmest place over the mean. */
export const TARGET_VALUES = 3;
export const [TARGET_MEAN, TARGET_PEAK, TARGET_EVENNESS] = [0, 1, 2];

/** Which of the candidates is brightest at a target, and which dimmest. */
export interface Extremes {
  brightest: number;
  dimmest: number;
}

/** A panel as the quantities that readings are held against, and those that readers are told. */
export interface PanelQuantities {
  places: QuantityPlaces;
  /** @param shift how far the sensor really was further away than it was set, cm */
  readings(of: OrderNodes, shift: number, out: Float64Array): void;
  /** The values of each target in turn, its extremes where `extremes` says. */
  targets(of: OrderNodes, out: Float64Array, extremes: readonly Extremes[]): void;
  /** Where each target is brightest and dimmest. */
  extremes(of: OrderNodes): Extremes[];
}

/** @throws RangeError where emitter, field, grid and distances do not fit one another */
export function panelQuantities(layout: Layout): PanelQuantities {
  const { field, emitter, distance, grid, sweep = [], targets } = layout;
  const spots = grid ? gridSpots(grid.shape, field) : [];
  if (!spots) throw new RangeError('the LED field is too small for the inset of the grid');
  const kept = grid?.kept ?? [];
  const peaks = peakCandidates(emitter, field);
  const dims = dimCandidates(emitter, field);
  const model = planeModel(emitterTerms(emitter, field), field, [
    ...kept.map((index) => {
      const spot = spots[index];
      if (!spot) throw new RangeError(`the grid has no point ${index}`);
      return spot;
    }),
    { x: 0, y: 0 },
    ...peaks,
    ...dims,
  ]);
  const n = kept.length;
  const plane = new Float64Array(n + 2 + peaks.length + dims.length);
  const axis = 1 + n;
  const firstPeak = 2 + n;
  const firstDim = firstPeak + peaks.length;
  const places: QuantityPlaces = {
    count: 3 + n + sweep.length,
    mean: 0,
    gridMean: 1,
    sweepMean: 2,
    grid: kept.map((_, j) => 3 + j),
    sweep: sweep.map((_, j) => 3 + n + j),
  };
  const best = (first: number, count: number, sign: 1 | -1) => {
    let at = 0;
    for (let i = 1; i < count; i++) {
      if (sign * ((plane[first + i] as number) - (plane[first + at] as number)) > 0) at = i;
    }
    return at;
  };
  return {
    places,
    readings(of, shift, out) {
      model.fill(of, distance + shift, plane);
      const mean = plane[0] as number;
      out[0] = mean;
      let sum = 0;
      for (let j = 0; j < n; j++) {
        const value = plane[1 + j] as number;
        out[3 + j] = value;
        sum += value;
      }
      // Without a grid or a sweep nothing asks for their means; a value above zero keeps their logarithm finite.
      out[1] = n > 0 ? sum / n : mean;
      sum = 0;
      for (let j = 0; j < sweep.length; j++) {
        model.fill(of, (sweep[j] as number) + shift, plane);
        out[3 + n + j] = plane[axis] as number;
        sum += plane[axis] as number;
      }
      out[2] = sweep.length > 0 ? sum / sweep.length : mean;
    },
    targets(of, out, extremes) {
      for (let i = 0; i < targets.length; i++) {
        model.fill(of, targets[i] as number, plane);
        const { brightest, dimmest } = extremes[i] as Extremes;
        const first = TARGET_VALUES * i;
        out[first + TARGET_MEAN] = plane[0] as number;
        out[first + TARGET_PEAK] = plane[firstPeak + brightest] as number;
        out[first + TARGET_EVENNESS] = (plane[firstDim + dimmest] as number) / (plane[0] as number);
      }
    },
    extremes(of) {
      return targets.map((target) => {
        model.fill(of, target, plane);
        return { brightest: best(firstPeak, peaks.length, 1), dimmest: best(firstDim, dims.length, -1) };
      });
    },
  };
}

/** What may be off in a layout, cm. */
export const GEOMETRY = ['distance', 'width', 'height', 'edge'] as const;
export type Geometry = (typeof GEOMETRY)[number];

/** How the logarithms of a panel's quantities answer to 1 cm of each. */
export type Answers = Readonly<Record<Geometry, Float64Array>>;

/** Step of the one-sided differences, cm: the answers are off by less than a thousandth of themselves. */
const STEP = 0.02;

/**
 * How a panel's quantities answer to its geometry, for any order. The grid keeps its inset from the field's edges,
 * since its points were found from them. The targets are wanted at their very distances, so that an error of the
 * distance does not touch them.
 */
export function answersOf(
  layout: Layout,
  base: PanelQuantities,
): { readings(of: OrderNodes): Answers; targets(of: OrderNodes, extremes: readonly Extremes[]): Answers } {
  const { field, emitter } = layout;
  const varied = {
    width: panelQuantities({ ...layout, field: { ...field, width: field.width + STEP } }),
    height: panelQuantities({ ...layout, field: { ...field, height: field.height + STEP } }),
    // Inwards, since an LED may already have no size.
    edge: panelQuantities({ ...layout, emitter: widened(emitter, -STEP) }),
  };
  const compare = (count: number, fill: (from: PanelQuantities, out: Float64Array, shift: number) => void): Answers => {
    const before = new Float64Array(count);
    fill(base, before, 0);
    const answer = (from: PanelQuantities, shift: number, step: number) => {
      const after = new Float64Array(count);
      fill(from, after, shift);
      return after.map((value, q) => Math.log(value / (before[q] as number)) / step);
    };
    return {
      distance: answer(base, STEP, STEP),
      width: answer(varied.width, 0, STEP),
      height: answer(varied.height, 0, STEP),
      edge: answer(varied.edge, 0, -STEP),
    };
  };
  return {
    readings: (of) => compare(base.places.count, (from, out, shift) => from.readings(of, shift, out)),
    targets: (of, extremes) =>
      compare(TARGET_VALUES * layout.targets.length, (from, out) => from.targets(of, out, extremes)),
  };
}
