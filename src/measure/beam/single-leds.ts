import { itemAt } from '../at.ts';
import type { Layout } from './panel-sums.ts';
import { isOpen, type Spread } from './spread.ts';

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

/**
 * Why the brightest and the dimmest place can't be told at a layout's targets, and from which distance on they can: what
 * is told at a distance is told at all larger ones.
 *
 * @param narrowest half angle that the readings allow, degrees
 * @param peaks spread of the peak at each target
 * @returns a reason for each target, undefined where they are told; and a distance, cm, 0 for everywhere
 */
export function peakAbsences(
  layout: Layout,
  narrowest: number,
  peaks: readonly Spread[],
): { absences: Array<string | undefined>; knownFrom: number } {
  const counted = peaksKnownFrom(layout, narrowest);
  const absences = layout.targets.map((distance, t) => {
    if (distance < counted) return 'LEDs may show singly this near, and nobody counted them';
    return distance < layout.distance && isOpen(itemAt(peaks, t))
      ? 'the readings leave open how single LEDs show this near'
      : undefined;
  });
  const knownFrom = layout.targets.reduce(
    (from, distance, t) => (absences[t] === undefined ? from : Math.max(from, distance + 1e-6)),
    counted,
  );
  return { absences, knownFrom };
}
