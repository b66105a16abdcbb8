import { mean } from 'simple-statistics';
import { gridGeometry } from '../irradiance/grid-geometry.ts';
import { MILLI } from '../unit-factors.ts';
import { type Emitter, type EmitterPart, emitterParts, type Field, isEven, placeLeds } from './emitter.ts';
import { irradianceOver } from './plane-map.ts';
import { planeModel, type Spot } from './plane-model.ts';

/** The n x m points of a grid whose outer ones lie `inset` cm inside the edges of the LED field. */
export interface GridShape {
  columns: number;
  rows: number;
  inset: number;
}

/** An irradiance, mW/cm2, and where it is. */
export interface SpotValue extends Spot {
  value: number;
}

/** What a plane parallel to the panel gets, over the LED-area rectangle. */
export interface PlaneValues {
  /** mW/cm2 */
  mean: number;
  peak: SpotValue;
  minimum: SpotValue;
  /** Mean of the grid's points, mW/cm2; undefined without a grid. */
  gridMean?: number;
  /** What the grid's points say over the true mean; undefined without a grid. */
  samplingBias?: number;
  /** Power through the rectangle, W. */
  through: number;
  /** That power over the emitted power. */
  capture: number;
}

/**
 * The points of a grid, row by row from the top, from the left; undefined where the field is too small for the
 * inset.
 */
export function gridSpots(grid: GridShape, field: Field): Spot[] | undefined {
  const geometry = gridGeometry(grid.columns, grid.rows, field.width, field.height, grid.inset);
  return geometry?.y.flatMap((y) => geometry.x.map((x) => ({ x: x - field.width / 2, y: field.height / 2 - y })));
}

/**
 * Mean, extremes and grid value over the LED-area rectangle on the plane at a distance, and the share of the power
 * that passes through it.
 *
 * @param power emitted, W
 * @param distance cm
 * @throws RangeError for an order, a distance, an emitter or a grid that cannot be
 */
export function planeValues(
  emitter: Emitter,
  field: Field,
  exponent: number,
  power: number,
  distance: number,
  grid?: GridShape,
): PlaneValues {
  const terms = emitterParts(emitter, field);
  const spots = grid ? gridSpots(grid, field) : [];
  if (!spots) throw new RangeError('the LED field is too small for the inset of the grid');
  const [perWatt = 0, ...points] = planeModel(terms, field, spots).values(exponent, distance);
  const average = power * perWatt;
  const through = (average * field.width * field.height) / MILLI;
  const gridMean = grid && power * mean(points);
  return {
    mean: average,
    ...extremes(emitter, terms, field, exponent, power, distance),
    ...(gridMean !== undefined && { gridMean, samplingBias: gridMean / average }),
    through,
    capture: through / power,
  };
}

/** Halvings of the step around the best place of the raster; the last step is a few micrometres. */
const HALVINGS = 12;

function extremes(
  emitter: Emitter,
  terms: readonly EmitterPart[],
  field: Field,
  exponent: number,
  power: number,
  distance: number,
): { peak: SpotValue; minimum: SpotValue } {
  const a = field.width / 2;
  const b = field.height / 2;
  const at = (x: ArrayLike<number>, y: ArrayLike<number>) => irradianceOver(terms, exponent, power, distance, x, y);
  if (emitter.kind === 'continuous') {
    // An even rectangle seen through a bell is highest in the middle and falls all the way to the corners.
    const [centre = 0, corner = 0] = [at([0], [0])[0], at([a], [b])[0]];
    return { peak: { x: 0, y: 0, value: centre }, minimum: { x: a, y: b, value: corner } };
  }
  const leds = placeLeds(emitter, field);
  const xs = landmarks(
    leds.map((led) => led.x),
    a,
  );
  const ys = landmarks(
    leds.map((led) => led.y),
    b,
  );
  const values = at(xs, ys);
  const search = (sign: 1 | -1): SpotValue => {
    let best = 0;
    for (let i = 1; i < values.length; i++) {
      if (sign * ((values[i] as number) - (values[best] as number)) > 0) best = i;
    }
    let spot: SpotValue = {
      x: xs[best % xs.length] as number,
      y: ys[Math.floor(best / xs.length)] as number,
      value: values[best] as number,
    };
    const around = (centre: number, step: number, limit: number) =>
      [-1, 0, 1].map((k) => Math.min(limit, Math.max(-limit, centre + k * step)));
    for (let halving = 0, step = Math.max(a / xs.length, b / ys.length); halving < HALVINGS; halving++, step /= 2) {
      const x = around(spot.x, step, a);
      const y = around(spot.y, step, b);
      at(x, y).forEach((value, i) => {
        if (sign * (value - spot.value) > 0) {
          spot = { x: x[i % 3] as number, y: y[Math.floor(i / 3)] as number, value };
        }
      });
    }
    return spot;
  };
  return { peak: search(1), minimum: search(-1) };
}

/** Where light may be highest or lowest along one axis: before LEDs, between them, in the middle, at the edges. */
function landmarks(places: readonly number[], edge: number): number[] {
  const leds = [...new Set(places)].sort((p, q) => p - q);
  const between = leds.slice(1).map((it, i) => (it + (leds[i] as number)) / 2);
  return [...new Set([-edge, ...leds, ...between, 0, edge])].sort((p, q) => p - q);
}

/**
 * Places among which the brightest is to be sought, whatever the beam: before an LED and between LEDs, in the middle of
 * the field and half-way to its edges, where an unevenly driven panel may be brighter; or a raster over the field of a
 * panel whose groups differ. Their number depends on the layout alone.
 */
export function peakCandidates(emitter: Emitter, field: Field): Spot[] {
  if (!isEven(emitter)) {
    const raster = Array.from({ length: 9 }, (_, i) => (i - 4) / 9);
    return raster.flatMap((y) => raster.map((x) => ({ x: x * field.width, y: y * field.height })));
  }
  const leds = emitter.kind === 'leds' ? emitter : undefined;
  /** Places along one axis: those of the middle, and all. */
  const along = (count: number | undefined, side: number): [middle: number[], all: number[]] => {
    if (!leds || count === undefined) return [[0], [0, -side / 4, side / 4]];
    if (count === 1) return [[0], [0]];
    const half = (side - leds.ledSize) / (count - 1) / 2;
    const aside = half * Math.max(1, 2 * Math.round(side / 8 / half) + (count % 2));
    return [
      [0, half],
      [0, half, -aside, aside],
    ];
  };
  const [middleX, allX] = along(leds?.columns, field.width);
  const [middleY, allY] = along(leds?.rows, field.height);
  // A cross: the middle both ways, and each way on from there.
  const spots = [
    ...allY.flatMap((y) => middleX.map((x) => ({ x, y }))),
    ...allX.flatMap((x) => middleY.map((y) => ({ x, y }))),
  ];
  return [...new Map(spots.map((it) => [`${it.x}:${it.y}`, it])).values()];
}

/**
 * Places among which the dimmest is to be sought, whatever the beam: the corners of the field, and where narrow beams
 * leave gaps, the middle of the gaps next to them.
 */
export function dimCandidates(emitter: Emitter, field: Field): Spot[] {
  const [a, b] = [field.width / 2, field.height / 2];
  if (emitter.kind === 'continuous') return [{ x: a, y: b }];
  const gap = (count: number, edge: number) => {
    const outer = edge - emitter.ledSize / 2;
    return count > 1 ? [edge, outer * ((count - 2) / (count - 1))] : [edge];
  };
  // Both in the corner, or both in the gap next to it: what lies between is no darker than the darker of the two.
  const [across, down] = [gap(emitter.columns, a), gap(emitter.rows, b)];
  return across.flatMap((x, i) => {
    const y = down[Math.min(i, down.length - 1)] as number;
    return [x, -x].flatMap((at) => [
      { x: at, y },
      { x: at, y: -y },
    ]);
  });
}
