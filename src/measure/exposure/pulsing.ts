import { type Figure, isFigure } from '../figure.ts';
import { PULSE_FREQUENCIES, PULSE_TOLERANCE, ROW_EDGE, SLOW_DEPTH, SLOW_FLICKER } from './flicker-lines.ts';
import { FLICKER_MODES, type FlickerMode, type FlickerReading } from './flicker-results.ts';
import { cited, type LimitResult, worded } from './limit.ts';
import { amount, cautiousEnd, outcome } from './words.ts';

/** What a slow modulation looks like. */
export type Pulsing = 'deliberate' | 'slow';

/**
 * Names modulation that people can see or that may set off seizures: "deliberate" within 1 Hz of 10 Hz or 40 Hz,
 * else "slow" below 90 Hz; undefined where it is shallower than 5 % or faster.
 *
 * @param frequency Hz
 * @param depth modulation depth, %, at its cautious end
 * @example pulsing(10.2, 60) // 'deliberate'
 */
export function pulsing(frequency: number, depth: number): Pulsing | undefined {
  if (!(depth >= SLOW_DEPTH) || !(frequency < ROW_EDGE)) return undefined;
  return PULSE_FREQUENCIES.some((it) => Math.abs(frequency - it) <= PULSE_TOLERANCE) ? 'deliberate' : 'slow';
}

/** A result for each mode that pulses; none for the others. The figure is the modulation depth as it was read. */
export function pulsingResults(readings: (mode: FlickerMode) => FlickerReading): LimitResult[] {
  return FLICKER_MODES.flatMap(([mode, words]) => {
    const { depth, frequency } = readings(mode);
    if (!isFigure(depth) || !isFigure(frequency)) return [];
    // What lies above a bound is at least as deep as the bound.
    const kind = pulsing(frequency.value, cautiousEnd(depth, 'high') ?? depth.value);
    return kind ? [pulsingResult(mode, words, depth, frequency, kind)] : [];
  });
}

function pulsingResult(mode: FlickerMode, words: string, depth: Figure, frequency: Figure, kind: Pulsing): LimitResult {
  const isInvisible = mode === 'near-infrared';
  const what =
    kind === 'deliberate' ? 'which looks like deliberate pulsing' : `which is slow modulation, below ${ROW_EDGE} Hz`;
  return {
    id: `pulsing-${mode}`,
    title: `Pulsing ${words}`,
    figure: depth,
    ...worded(
      [`The output changes ${words} at ${amount(frequency.value, 'Hz')} by ${outcome(depth, 'high')}, ${what}.`],
      'Light that pulses can trigger seizures in photosensitive epilepsy and headaches in people with migraine: who is at risk, or lives with somebody who is, should ask a doctor first and keep pulsed modes off.',
      isInvisible
        ? 'Near-infrared is invisible, so that nobody notices its pulsing; the rule speaks of visible light and is not held against it.'
        : `For comparison, below ${ROW_EDGE} Hz the modulation should stay under ${SLOW_DEPTH} %, by the ${cited(SLOW_FLICKER)}.`,
    ),
    limit: isInvisible ? undefined : SLOW_FLICKER,
    caution: 'flicker',
  };
}
