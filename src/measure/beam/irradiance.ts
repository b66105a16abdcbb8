import { MILLI } from '../unit-factors.ts';
import { checkExponent } from './beam.ts';
import type { PlacedLed } from './emitter.ts';

/** A place before the panel, cm: x and y as for LEDs, z the distance from the LED plane. */
export interface Place {
  x: number;
  y: number;
  z: number;
}

/** The direction of a sensor that looks straight at the panel's plane. */
const FACING = { x: 0, y: 0, z: -1 } as const;

/**
 * Irradiance at a place, mW/cm2, on a receiver that looks in any direction: the sum over the LEDs of
 * I0 cos^m(a) cos(b) / r^2, with a the angle from the LED's axis and b the one from the receiver's normal. Light
 * from behind the receiver does not count.
 *
 * Exact but slow, and at a few places only; for whole planes see plane-map.ts.
 *
 * @param order of the LEDs' beams
 * @param power of all LEDs together, W
 * @param normal unit vector out of the receiver's face; straight at the panel where left out
 * @throws RangeError for a place that is not before the panel, a normal that is not of length 1, or an order that
 *   is not above zero
 */
export function irradianceAt(
  leds: readonly PlacedLed[],
  exponent: number,
  power: number,
  place: Place,
  normal: Place = FACING,
): number {
  checkExponent(exponent);
  if (!(place.z > 0)) throw new RangeError(`a place before the panel is more than 0 cm away; found ${place.z} cm`);
  if (!(Math.abs(Math.hypot(normal.x, normal.y, normal.z) - 1) < 1e-6)) {
    throw new RangeError('a normal has the length 1');
  }
  let sum = 0;
  for (const led of leds) {
    const x = place.x - led.x;
    const y = place.y - led.y;
    const square = x * x + y * y + place.z * place.z;
    const r = Math.sqrt(square);
    const received = -(x * normal.x + y * normal.y + place.z * normal.z) / r;
    if (received > 0) sum += (led.share * (place.z / r) ** exponent * received) / square;
  }
  return (MILLI * power * (exponent + 1) * sum) / (2 * Math.PI);
}
