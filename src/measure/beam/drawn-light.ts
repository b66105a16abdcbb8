import { gridGeometry } from '../irradiance/grid-geometry.ts';
import { distanceCurve } from './distance-curve.ts';
import { modelledOver } from './field-map.ts';
import type { PanelModel } from './panel-model.ts';
import type { Layout } from './panel-sums.ts';
import { TABLE_DISTANCES } from './table-distances.ts';

/** Irradiance against distance, mW/cm2; the lists go together. */
export interface DrawnCurve {
  /** cm, the nearest first. */
  distances: Float64Array;
  mean: Float64Array;
  /** Not a number where single LEDs may show and nobody knows where they are. */
  peak: Float64Array;
}

/** Irradiance over the LED field in the reference plane, mW/cm2, row by row from the top, from the left. */
export interface DrawnField {
  /** In the middles of as many cells as the field is cut into, all alike. */
  columns: number;
  rows: number;
  cells: Float64Array;
  /** At the points of the grid, read or not. */
  atPoints: Float64Array;
}

/**
 * A panel's light as it is drawn, finer than any table has it. It rests on nothing but the model and where the panel was
 * read, and costs several times as much as the drawing: so it is worked out with the model, and kept with it.
 */
export interface DrawnLight {
  curve: DrawnCurve;
  /** Left out where no grid was read. */
  field?: DrawnField;
}

/** Steps of the curve, each so much of its distance: close to the panel the light changes fast. */
const STEP = 0.08;
/** Cells that the field is cut into on its longer side, and on the other one at least. */
const CELLS = 16;
const FEWEST_CELLS = 4;

/**
 * Works out what is drawn of a panel's light.
 *
 * @throws RangeError for a distance or an emitter that cannot be
 */
export function drawnLight(model: PanelModel, layout: Layout): DrawnLight {
  const field = drawnField(model, layout);
  return { curve: drawnCurve(model, layout), ...(field && { field }) };
}

function drawnCurve(model: PanelModel, { distance, sweep = [] }: Layout): DrawnCurve {
  const nearest = Math.min(TABLE_DISTANCES[0], ...sweep);
  const farthest = Math.max(...TABLE_DISTANCES, distance, ...sweep);
  const distances = curveDistances(nearest, farthest, model.peakFrom);
  const curve = distanceCurve(model, distances, { isLowestWanted: false });
  return {
    distances: Float64Array.from(distances),
    mean: Float64Array.from(curve, (it) => it.mean),
    peak: Float64Array.from(curve, (it) => it.peak ?? Number.NaN),
  };
}

/** In even steps of the distance's logarithm, and where the table or the peak begins. */
function curveDistances(nearest: number, farthest: number, peakFrom = nearest): number[] {
  const steps = Math.ceil(Math.log(farthest / nearest) / STEP);
  const even = Array.from({ length: steps + 1 }, (_, i) => nearest * (farthest / nearest) ** (i / steps));
  const all = [...even.slice(1, -1), nearest, farthest, peakFrom, ...TABLE_DISTANCES];
  return [...new Set(all)].filter((it) => it >= nearest && it <= farthest).toSorted((a, b) => a - b);
}

function drawnField(model: PanelModel, { distance, field: { width, height }, grid }: Layout): DrawnField | undefined {
  if (!grid) return undefined;
  const { columns: across, rows: down, inset } = grid.shape;
  const points = gridGeometry(across, down, width, height, inset);
  if (!points) return undefined;
  const longer = Math.max(width, height);
  const cellsAlong = (side: number) => Math.max(FEWEST_CELLS, Math.round((CELLS * side) / longer));
  const [columns, rows] = [cellsAlong(width), cellsAlong(height)];
  const middles = (count: number, side: number) =>
    Array.from({ length: count }, (_, i) => side * ((i + 0.5) / count - 0.5));
  const up = (it: number) => -it;
  return {
    columns,
    rows,
    cells: modelledOver(model, distance, middles(columns, width), middles(rows, height).map(up)),
    atPoints: modelledOver(
      model,
      distance,
      points.x.map((it) => it - width / 2),
      points.y.map((it) => height / 2 - it),
    ),
  };
}
