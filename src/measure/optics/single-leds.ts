import type { Layout } from './panel-sums.ts';

/**
 * Below this height of a plane over the pitch, times the tangent of the half angle, LEDs show singly: each lights a
 * spot of its own. Found on simulated panels.
 */
export const SINGLE_BELOW = 0.65;

/** Largest usual pitch, cm, for panels whose LEDs are not counted: our own choice. */
export const LARGEST_PITCH = 4;

/**
 * Whether single LEDs may show on a plane while nobody knows where they are, so that nothing can be said of its
 * brightest and dimmest place.
 *
 * @param distance cm
 * @param narrowest half angle that the readings allow, degrees
 */
export function singleLedsShow({ emitter }: Pick<Layout, 'emitter'>, distance: number, narrowest: number): boolean {
  if (emitter.kind === 'leds') return false;
  return distance * Math.tan((narrowest * Math.PI) / 180) < SINGLE_BELOW * LARGEST_PITCH;
}
