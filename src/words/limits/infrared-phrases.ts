/** Sentences about infrared at the eye that the pages and the planner's script share. No statements here. */
import { roundedTo } from '../../measure/exposure/cautious-end.ts';
import { LONG_EXPOSURE } from '../../measure/exposure/infrared.ts';
import { timeWords } from '../time-words.ts';

/** The limit that shares are taken of. */
export const LONG_EXPOSURE_LIMIT = `of the limit for long exposures, ${LONG_EXPOSURE} W/m²`;

/** Statement where a budget has no component for the instrument's error in near-infrared: nothing then makes the share a strict one. */
export const SPECTRAL_UNKNOWN = 'How the meter errs in near-infrared is not known, and the true share may be higher.';

/** Where it was not read, but farther away. */
export const UNKNOWN_NEARER = 'not known nearer than near-infrared was read; it is not less than there';

/** "Looking towards the panel from 30 cm". */
export const lookingFrom = (cm: number | string) => `Looking towards the panel from ${cm} cm`;

/** A share that was read. */
export function shareSentence(cm: number | string, share: string): string {
  return `${lookingFrom(cm)}, near-infrared alone gives ${share}.`;
}

/** A share that was not read there: the ends of its range, %, as they are written, and the limit. */
export function rangeSentence(cm: number | string, [low, high]: readonly [string, string], of: string): string {
  return shareSentence(cm, `somewhere from ${low} % to ${high} % ${of}: it was not read there`);
}

/** Seconds until the limit is used up, no longer than they are. */
export const limitTime = (seconds: number) => timeWords(roundedTo(seconds, 'low'));

/**
 * What a share means in time, by its cautious end.
 *
 * @param seconds Infinity where the share is no higher than the limit for long exposures
 * @param limit what that limit is called here
 */
export function timeSentence(seconds: number, limit: string): string {
  return Number.isFinite(seconds)
    ? `At the cautious end, the limit would be used up after ${limitTime(seconds)}.`
    : `At the cautious end, it lies no higher than ${limit}, up to which the standard limits no time.`;
}
