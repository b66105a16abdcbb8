import { type FigureOrGap, isFigure } from '../figure.ts';
import { cautiousEnd } from './cautious-end.ts';
import { flickerLines } from './flicker-lines.ts';

/**
 * How a mode's flicker lies to the line of no observable effect: `under`, no higher than the line at the cautious end
 * of its interval; `above`; or `no-line`, since the frequency is above 3,000 Hz, where the standard has none.
 */
export type BesideNoEffect = 'under' | 'above' | 'no-line';

/**
 * One mode's flicker beside the line of no observable effect (IEEE Std 1789-2015, Practice 2, from a secondary source).
 *
 * @returns undefined where it is not known: without a reading, or without a known frequency, however small the depth,
 *   for the line falls with the frequency to nought
 */
export function besideNoEffectLine(depth: FigureOrGap, frequency: FigureOrGap): BesideNoEffect | undefined {
  if (!isFigure(depth) || !isFigure(frequency)) return undefined;
  if (frequency.bound || !(frequency.value > 0)) return undefined;
  const line = flickerLines(frequency.value).noEffect;
  if (line === 'no-limit') return 'no-line';
  const end = cautiousEnd(depth, 'high');
  return end !== undefined && end <= line ? 'under' : 'above';
}

/**
 * A panel's visible flicker from that of its modes that were read, both channels together among them: `above` where one
 * is; not known where one is not; `under` where every mode that has a line is under it; `no-line` where none has one.
 *
 * @param combined both channels together
 * @param red red alone; "not-read" where it was not read
 */
export function panelBesideNoEffectLine(
  combined: BesideNoEffect | undefined,
  red: BesideNoEffect | undefined | 'not-read',
): BesideNoEffect | undefined {
  const modes = red === 'not-read' ? [combined] : [combined, red];
  if (modes.includes('above')) return 'above';
  if (modes.includes(undefined)) return undefined;
  return modes.includes('under') ? 'under' : 'no-line';
}
