import { type Figure, isFigure } from '../figure.ts';
import { MODES_COMBINED_FIRST, type Mode } from '../modes.ts';
import { cautiousEnd } from './cautious-end.ts';
import { PULSE_FREQUENCIES, PULSE_TOLERANCE, ROW_EDGE, SLOW_DEPTH } from './flicker-lines.ts';
import type { FlickerReading } from './flicker-results.ts';
import type { HeldFigure } from './limit.ts';

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

/** A mode that pulses. */
export interface PulsingResult extends HeldFigure {
  hazard: 'pulsing';
  /** The modulation depth as it was read, %. */
  figure: Figure;
  mode: Mode;
  pulsing: Pulsing;
  /** Hz */
  frequency: Figure;
}

/** A result for each mode that pulses; none for the others. The rule against seizures speaks of visible light. */
export function pulsingResults(readings: (mode: Mode) => FlickerReading): PulsingResult[] {
  return MODES_COMBINED_FIRST.flatMap((mode): PulsingResult[] => {
    const { depth, frequency } = readings(mode);
    if (!isFigure(depth) || !isFigure(frequency)) return [];
    // What lies above a bound is at least as deep as the bound.
    const kind = pulsing(frequency.value, cautiousEnd(depth, 'high') ?? depth.value);
    if (!kind) return [];
    return [
      {
        hazard: 'pulsing',
        id: `pulsing-${mode}`,
        figure: depth,
        mode,
        pulsing: kind,
        frequency,
        limit: mode === 'near-infrared' ? undefined : 'flicker-seizures',
      },
    ];
  });
}
