import { at, valueAt } from '../at.ts';
import { MILLI } from '../unit-factors.ts';
import { distanceCurve, placeValues } from './distance-curve.ts';
import type { Readings } from './error-sources.ts';
import type { PanelModel } from './panel-model.ts';
import type { Layout, PanelSums } from './panel-sums.ts';
import { gridSpots } from './plane-spots.ts';

/** Places of a panel's results in their list. */
export const RESULT_HALF_ANGLE = 0;
export const RESULT_EMITTED = 1;
export const RESULT_CAPTURE = 2;
export const RESULT_BIAS = 3;
const FIRST_TARGET = 4;
/** Results of each target: mean, peak, and the dimmest place over the mean. */
const EACH_TARGET = 3;

/** Place of a target's first result. */
export const firstOfTarget = (target: number): number => FIRST_TARGET + EACH_TARGET * target;

/** What one trial comes to. */
export interface Trial {
  halfAngle: number;
  power: number;
  values: Float64Array;
  gridRows: Float64Array;
  area: number;
  sums: PanelSums;
}

/** One result, as it follows from a trial. */
export interface Result {
  name: string;
  /** Whether an instrument that reads high makes it higher. */
  isGained: boolean;
  of(trial: Trial): number;
}

/** All results of a layout, in the order of their places: those of the panel, then three for each target. */
export function resultList(layout: Layout, isGrid: boolean): Result[] {
  return [
    { name: 'half-angle', isGained: false, of: (it) => it.halfAngle },
    { name: 'emitted', isGained: true, of: (it) => it.power },
    { name: 'capture', isGained: false, of: (it) => valueAt(it.values, 0) * it.area },
    { name: 'bias', isGained: false, of: (it) => (isGrid ? average(it.gridRows) / valueAt(it.values, 0) : 1) },
    ...layout.targets.flatMap((_, t): Result[] => {
      const first = (sums: PanelSums) => 1 + t * sums.targetRows;
      return [
        { name: `mean-${t}`, isGained: true, of: ({ power, values, sums }) => power * valueAt(values, first(sums)) },
        {
          name: `peak-${t}`,
          isGained: true,
          of: ({ power, values, sums }) => {
            const from = first(sums) + 1;
            return power * extreme(values, from, from + sums.targets.peaks, 1);
          },
        },
        {
          name: `lowest-${t}`,
          isGained: false,
          of: ({ values, sums }) => {
            const from = first(sums) + 1 + sums.targets.peaks;
            // Errors are taken to move a place in a straight line, which near the panel can lead past what there is.
            const lowest = extreme(values, from, from + sums.targets.dims, -1) / valueAt(values, first(sums));
            return Math.min(1, Math.max(0, lowest));
          },
        },
      ];
    }),
  ];
}

function extreme(values: Float64Array, from: number, to: number, sign: 1 | -1): number {
  let best = valueAt(values, from);
  for (let i = from + 1; i < to; i++) {
    const it = valueAt(values, i);
    if (sign * (it - best) > 0) best = it;
  }
  return best;
}

/** The values that are stated: those of the mean of the allowed beams, each as heavy as the root of its power. */
export function statedValues(
  model: PanelModel,
  layout: Layout,
  grid: Readings | undefined,
  halfAngles: Float64Array,
): { values: number[]; gridMean: number } {
  const one = { ...model, power: 1 };
  const spots = layout.grid ? (gridSpots(layout.grid.shape, layout.field) ?? []) : [];
  const accepted = (layout.grid?.accepted ?? []).map((index) => spots[index] ?? { x: 0, y: 0 });
  const [mean = 0, ...points] = placeValues(one, accepted)(layout.distance);
  const { power } = model;
  const values: number[] = [];
  values[RESULT_HALF_ANGLE] = middle(halfAngles);
  values[RESULT_EMITTED] = power;
  values[RESULT_CAPTURE] = (mean * layout.field.width * layout.field.height) / MILLI;
  values[RESULT_BIAS] = grid ? average(points) / mean : 1;
  distanceCurve({ ...model, power }, layout.targets).forEach((it, t) => {
    const first = firstOfTarget(t);
    values[first] = it.mean;
    values[first + 1] = it.peak ?? 0;
    values[first + 2] = (it.lowest ?? 0) / it.mean;
  });
  return { values, gridMean: average(points) };
}

function middle(values: Float64Array): number {
  const sorted = values.toSorted();
  return valueAt(sorted, Math.floor(sorted.length / 2));
}

/** Mean of some numbers. */
export function average(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += at(values, i);
  return sum / values.length;
}
