import { at } from '../at.ts';
import type { Statement } from '../statement.ts';
import type { Layout } from './panel-sums.ts';
import { isOpen, type Spread } from './spread.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** This near single LEDs may show, and nobody knows where they are. */
    'beam-leds-uncounted': object;
    /** The readings do not tell how much light lies between LEDs this near. */
    'beam-single-leds-open': object;
  }
}

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
): { absences: Array<Statement | undefined>; knownFrom: number } {
  const counted = peaksKnownFrom(layout, narrowest);
  const absences = layout.targets.map((distance, t): Statement | undefined => {
    if (distance < counted) return { code: 'beam-leds-uncounted' };
    return distance < layout.distance && isOpen(at(peaks, t)) ? { code: 'beam-single-leds-open' } : undefined;
  });
  const knownFrom = layout.targets.reduce(
    (from, distance, t) => (absences[t] === undefined ? from : Math.max(from, distance + 1e-6)),
    counted,
  );
  return { absences, knownFrom };
}
