import { type FigureOrGap, isFigure } from '../figure.ts';
import { flickerLines } from './flicker-lines.ts';
import { cautiousEnd } from './words.ts';

/**
 * Whether one mode's flicker lies no higher than the line of no observable effect (IEEE Std 1789-2015, Practice 2), at
 * the cautious end of its interval. Above 3,000 Hz there is no such line. A meter that found no modulation, and so no
 * frequency, counts as no higher.
 *
 * @returns undefined where the readings do not tell
 */
export function isUnderNoEffectLine(depth: FigureOrGap, frequency: FigureOrGap): boolean | undefined {
  if (!isFigure(depth)) return undefined;
  if (!isFigure(frequency)) return depth.bound === 'below' || depth.value === 0 ? true : undefined;
  const line = flickerLines(frequency.value).noEffect;
  if (line === 'no limit') return true;
  const end = cautiousEnd(depth, 'high');
  return end === undefined ? false : end <= line;
}
