/**
 * What a plane before a panel gets, its brightest and dimmest places searched for over the whole rectangle: the model
 * looks at a few places only (plane-spots.ts) and is held against this.
 */

import { mean } from 'simple-statistics';
import { type Emitter, type EmitterPart, emitterParts, type Field, placeLeds } from '../../src/measure/beam/emitter.ts';
import { irradianceOver } from '../../src/measure/beam/plane-map.ts';
import type { Spot } from '../../src/measure/beam/plane-model.ts';
import { type GridShape, gridSpots } from '../../src/measure/beam/plane-spots.ts';
import { MILLI } from '../../src/measure/unit-factors.ts';
import { oneExponent } from '../support/one-exponent.ts';
import { planeValuesOf } from '../support/plane-values-of.ts';

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
  const [perWatt = 0, ...points] = planeValuesOf(terms, field, spots)(exponent, distance);
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
  const at = (x: ArrayLike<number>, y: ArrayLike<number>) =>
    irradianceOver(terms, oneExponent(exponent, power), distance, x, y);
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
