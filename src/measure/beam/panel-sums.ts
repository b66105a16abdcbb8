import { valueAt } from '../at.ts';
import { patternDrives } from './drive.ts';
import { type Emitter, type EmitterPart, emitterParts, type Field, placeLeds, widened } from './emitter.ts';
import { planeModel, type Spot } from './plane-model.ts';
import { dimCandidates, type GridShape, gridSpots, peakCandidates } from './plane-spots.ts';
import { BASIS, BASIS_EXPONENTS, BASIS_HALF_ANGLES } from './profile-basis.ts';

/** An edge of the LED field, as one faces the panel. */
export type Edge = 'left' | 'right' | 'top' | 'bottom';

/** A place in the reference plane, past the middle of an edge, cm from it. */
export interface BeyondPlace {
  edge: Edge;
  past: number;
}

/** Where a panel was read, and where it is to be worked out. */
export interface Layout {
  field: Field;
  emitter: Emitter;
  /** Reference plane, cm: that of the grid and of the readings past the edges. */
  distance: number;
  /** The grid, and which of its points (row by row from the top) have a reading. */
  grid?: { shape: GridShape; accepted: readonly number[] };
  /** Readings past the edges. */
  beyond?: readonly BeyondPlace[];
  /** Distances of the readings on the axis, cm. */
  sweep?: readonly number[];
  /** Distances of the table for readers, cm. */
  targets: readonly number[];
}

/** What may be off in a layout, cm. */
export const GEOMETRY = ['distance', 'width', 'height', 'edge'] as const;
export type Geometry = (typeof GEOMETRY)[number];

/**
 * Numbers for each row and each part of a profile, mW/cm2 for each W in the part: `[row * BASIS + part]`. A panel's
 * value in a row is the sum over the parts, times their powers.
 */
export type Rows = Float64Array;

/** Some rows, and their sensitivity coefficients. */
export interface Sums {
  count: number;
  base: Rows;
  /** What one unit of each pattern of drive adds. */
  patterns: Rows[];
  /** What 1 cm of each adds. */
  geometry: Record<Geometry, Rows>;
  /** Distance of each row's plane, cm. */
  planes: Float64Array;
  /** Where LEDs are not counted: what a usual pitch leaves of its ripple in each row. */
  ripple?: Rows;
}

/** A panel's readings and targets as sums over the parts of a profile. */
export interface PanelSums {
  /** Rows: grid, readings past the edges, sweep. */
  readings: Sums & { grid: number; beyond: number; sweep: number };
  /** Rows: mean over the frame on the reference plane, then for each target its mean, its peaks and its dim places. */
  targets: Sums & { peaks: number; dims: number };
  /** Rows of a target, with the mean first. */
  targetRows: number;
  /** LEDs, as counted or as a usual pitch would have them. */
  leds: number;
}

/** Step of the one-sided differences, cm. */
const STEP = 0.02;

/** Where a reading past an edge lies. */
export function beyondSpot({ edge, past }: BeyondPlace, field: Field): Spot {
  switch (edge) {
    case 'left':
      return { x: -field.width / 2 - past, y: 0 };
    case 'right':
      return { x: field.width / 2 + past, y: 0 };
    case 'top':
      return { x: 0, y: field.height / 2 + past };
    case 'bottom':
      return { x: 0, y: -field.height / 2 - past };
  }
}

interface Places {
  spots: Spot[];
  reference: number;
  peaks: number;
  dims: number;
}

/** Reference places first, then the axis, then where targets may be brightest and dimmest. */
function placesOf({ field, emitter, grid, beyond = [] }: Layout): Places {
  const spots = grid ? gridSpots(grid.shape, field) : [];
  if (!spots) throw new RangeError('the LED field is too small for the inset of the grid');
  const accepted = (grid?.accepted ?? []).map((index) => {
    const spot = spots[index];
    if (!spot) throw new RangeError(`the grid has no point ${index}`);
    return spot;
  });
  const reference = [...accepted, ...beyond.map((it) => beyondSpot(it, field))];
  const peaks = peakCandidates(emitter, field);
  const dims = dimCandidates(emitter, field);
  return {
    spots: [...reference, { x: 0, y: 0 }, ...peaks, ...dims],
    reference: reference.length,
    peaks: peaks.length,
    dims: dims.length,
  };
}

/** Fills the rows of readings and targets for a panel that is driven as its terms say. */
function fillRows(layout: Layout, terms: readonly EmitterPart[], shift: number): { readings: Rows; targets: Rows } {
  const { field, distance, sweep = [], targets } = layout;
  const { spots, reference, peaks, dims } = placesOf(layout);
  const model = planeModel(terms, field, spots);
  const out = new Float64Array(spots.length + 1);
  const targetRows = 1 + peaks + dims;
  const rows = {
    readings: new Float64Array((reference + sweep.length) * BASIS),
    targets: new Float64Array((1 + targets.length * targetRows) * BASIS),
  };
  BASIS_EXPONENTS.forEach((of, k) => {
    model.fill(of, distance + shift, out);
    rows.targets[k] = valueAt(out, 0);
    for (let j = 0; j < reference; j++) rows.readings[j * BASIS + k] = valueAt(out, 1 + j);
    sweep.forEach((at, j) => {
      model.fill(of, at + shift, out);
      rows.readings[(reference + j) * BASIS + k] = valueAt(out, 1 + reference);
    });
    // Targets are wanted at their very distances, so that an error of the distance does not touch them.
    if (shift !== 0) return;
    targets.forEach((at, t) => {
      model.fill(of, at, out);
      const first = (1 + t * targetRows) * BASIS + k;
      rows.targets[first] = valueAt(out, 0);
      for (let j = 0; j < peaks + dims; j++) rows.targets[first + (1 + j) * BASIS] = valueAt(out, 2 + reference + j);
    });
  });
  return rows;
}

/** Pitch that is taken for panels whose LEDs are not counted, cm: our own choice. */
export const USUAL_PITCH = 3;

/**
 * Relative size (standard deviation) of the ripple that LEDs of a pitch leave on a plane, for each part of a profile:
 * the first harmonic of a square lattice seen through a bell as wide as the beam there, 2 exp(-2 pi^2 s^2 / p^2) with
 * s = z tan(half angle) / 1.18. Worked out here.
 */
export function rippleOf(distance: number, pitch: number): number[] {
  return BASIS_HALF_ANGLES.map((half) => {
    const s = (distance * Math.tan((half * Math.PI) / 180)) / 1.18;
    return Math.min(1, 2 * Math.exp(-2 * (Math.PI * (s / pitch)) ** 2));
  });
}

/** @throws RangeError where emitter, field, grid and distances do not fit one another */
export function panelSums(layout: Layout): PanelSums {
  const { field, emitter, grid, beyond = [], sweep = [] } = layout;
  const even = emitterParts(emitter, field);
  const base = fillRows(layout, even, 0);
  const patterns = patternDrives(emitter, field).map((drive) =>
    fillRows(layout, emitterParts(emitter, field, drive), 0),
  );
  const compare = (after: { readings: Rows; targets: Rows }, step: number) => ({
    readings: after.readings.map((it, i) => (it - valueAt(base.readings, i)) / step),
    targets: after.targets.map((it, i) => (it - valueAt(base.targets, i)) / step),
  });
  const other = (changed: Layout) => fillRows(changed, emitterParts(changed.emitter, changed.field), 0);
  const nearer = fillRows(layout, even, STEP);
  const geometry = {
    // The reference plane's mean is one of the session's own distance, so it moves too; other targets do not.
    distance: {
      readings: nearer.readings.map((it, i) => (it - valueAt(base.readings, i)) / STEP),
      targets: nearer.targets.map((it, i) => (i < BASIS ? (it - valueAt(base.targets, i)) / STEP : 0)),
    },
    width: compare(other({ ...layout, field: { ...field, width: field.width + STEP } }), STEP),
    height: compare(other({ ...layout, field: { ...field, height: field.height + STEP } }), STEP),
    // Inwards, since an LED may already have no size.
    edge: compare(other({ ...layout, emitter: widened(emitter, -STEP) }), -STEP),
  };
  const { reference, peaks, dims } = placesOf(layout);
  const targetRows = 1 + peaks + dims;
  const planes = {
    readings: Float64Array.from([...new Array<number>(reference).fill(layout.distance), ...sweep]),
    targets: Float64Array.from([
      layout.distance,
      ...layout.targets.flatMap((at) => new Array<number>(targetRows).fill(at)),
    ]),
  };
  const sums = (of: 'readings' | 'targets'): Sums => ({
    count: base[of].length / BASIS,
    base: base[of],
    patterns: patterns.map((it) => it[of]),
    geometry: {
      distance: geometry.distance[of],
      width: geometry.width[of],
      height: geometry.height[of],
      edge: geometry.edge[of],
    },
    planes: planes[of],
    ...(emitter.kind === 'continuous' && { ripple: rippleRows(base[of], planes[of]) }),
  });
  return {
    readings: { ...sums('readings'), grid: grid?.accepted.length ?? 0, beyond: beyond.length, sweep: sweep.length },
    targets: { ...sums('targets'), peaks, dims },
    targetRows,
    leds:
      emitter.kind === 'leds'
        ? placeLeds(emitter, field).length
        : Math.max(1, (field.width * field.height) / USUAL_PITCH ** 2),
  };
}

function rippleRows(base: Rows, planes: Float64Array): Rows {
  const ripples = new Map([...new Set(planes)].map((at) => [at, rippleOf(at, USUAL_PITCH)]));
  return base.map((it, i) => it * (ripples.get(valueAt(planes, Math.floor(i / BASIS)))?.[i % BASIS] ?? 0));
}
