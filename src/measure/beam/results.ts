import { MILLI } from '../unit-factors.ts';
import { distanceCurve, placeValues } from './distance-curve.ts';
import type { Readings } from './error-sources.ts';
import type { PanelModel } from './panel-model.ts';
import type { Layout, PanelSums } from './panel-sums.ts';
import { gridSpots } from './plane-values.ts';

/** Places of a panel's results in their list. */
export const RESULT_HALF_ANGLE = 0;
export const RESULT_EMITTED = 1;
export const RESULT_CAPTURE = 2;
export const RESULT_BIAS = 3;
export const FIRST_TARGET = 4;

/** What one draw comes to. */
export interface Drawn {
  halfAngle: number;
  power: number;
  values: Float64Array;
  gridRows: Float64Array;
  area: number;
  sums: PanelSums;
}

/** One result, as it follows from a draw. */
export interface Result {
  name: string;
  /** Whether a meter that reads high makes it higher. */
  isGained: boolean;
  of(drawn: Drawn): number;
}

/** All results of a layout, in the order of their places: those of the panel, then three for each target. */
export function resultList(layout: Layout, isGrid: boolean): Result[] {
  return [
    { name: 'half-angle', isGained: false, of: (it) => it.halfAngle },
    { name: 'emitted', isGained: true, of: (it) => it.power },
    { name: 'capture', isGained: false, of: (it) => (it.values[0] as number) * it.area },
    { name: 'bias', isGained: false, of: (it) => (isGrid ? average(it.gridRows) / (it.values[0] as number) : 1) },
    ...layout.targets.flatMap((_, t): Result[] => {
      const first = (sums: PanelSums) => 1 + t * sums.targetRows;
      return [
        { name: `mean-${t}`, isGained: true, of: ({ power, values, sums }) => power * (values[first(sums)] as number) },
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
            const lowest = extreme(values, from, from + sums.targets.dims, -1) / (values[first(sums)] as number);
            return Math.min(1, Math.max(0, lowest));
          },
        },
      ];
    }),
  ];
}

function extreme(values: Float64Array, from: number, to: number, sign: 1 | -1): number {
  let best = values[from] as number;
  for (let i = from + 1; i < to; i++) {
    const it = values[i] as number;
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
    values[FIRST_TARGET + 3 * t] = it.mean;
    values[FIRST_TARGET + 3 * t + 1] = it.peak ?? 0;
    values[FIRST_TARGET + 3 * t + 2] = (it.lowest ?? 0) / it.mean;
  });
  return { values, gridMean: average(points) };
}

function middle(values: Float64Array): number {
  const sorted = values.toSorted();
  return sorted[Math.floor(sorted.length / 2)] as number;
}

/** Mean of some numbers. */
export function average(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] as number;
  return sum / values.length;
}
