import type { Layout } from './panel-sums.ts';

/**
 * Below this height of a plane over the pitch, times the tangent of the half angle, LEDs show singly: each lights a
 * spot of its own. Found on simulated panels.
 */
export const SINGLE_BELOW = 0.65;

/** Largest usual pitch, cm, for panels whose LEDs are not counted: our own choice. */
export const LARGEST_PITCH = 4;

/**
 * The nearest distance, cm, at which the brightest and the dimmest place are known: nearer, single LEDs may show, and
 * where LEDs are not counted nobody knows where they are. 0 where they are counted.
 *
 * @param narrowest half angle that the readings allow, degrees
 */
export function peaksKnownFrom({ emitter }: Pick<Layout, 'emitter'>, narrowest: number): number {
  if (emitter.kind === 'leds') return 0;
  return (SINGLE_BELOW * LARGEST_PITCH) / Math.tan((narrowest * Math.PI) / 180);
}
