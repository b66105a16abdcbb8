import { type Bound, type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import { type Statement, statementKey } from '../statement.ts';
import { makeFigure, propagate } from '../uncertainty.ts';
import { BOUND_BELOW, backgroundCorrection, levelSensitivities, NO_CORRECTION_ABOVE } from './background-sound.ts';
import { cautiousEnd } from './cautious-end.ts';
import type { HeldFigure } from './limit.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** The reading with the panel on, dB(A). */
    'sound-on-a-bound': { level: number; bound: Bound };
    'sound-room-unknown': { because: Statement };
    'sound-room-beyond-reach': object;
    'sound-room-too-quiet': object;
    'sound-room-too-loud': object;
    /** What the panel gives at most, dB(A). */
    'sound-not-told-from-room': { atMost: number };
    /** The equation where the room is below a bound: both levels, dB(A). */
    'sound-quiet-room-equation': { on: number; room: number };
  }
}

const METRIC = 'sound-of-panel';

/** Levels read with the panel on and off, dB(A), and where. */
export interface SoundReading {
  on: FigureOrGap;
  off: FigureOrGap;
  /** The distance as the tester wrote it: "1 m". */
  distance: string | undefined;
}

/**
 * The panel's own sound level at the place of the reading: the level read, less what the room adds.
 *
 * @param metric what it is called: that of the meter's readings, or of clips
 */
export function soundFigure(
  session: string,
  { on, off }: SoundReading,
  metric: 'sound-of-panel' | 'sound-clip-panel' = METRIC,
): FigureOrGap {
  if (!isFigure(on)) return gap(metric, on.reason);
  if (on.bound) return gap(metric, { code: 'sound-on-a-bound', level: on.value, bound: on.bound });
  if (!isFigure(off)) return gap(metric, { code: 'sound-room-unknown', because: off.reason });
  if (off.bound === 'above') return gap(metric, { code: 'sound-room-beyond-reach' });
  const identity = {
    ...identityOf(metric, session),
    basis: 'derived',
    // A level in decibels may lie below zero.
    lowest: Number.NEGATIVE_INFINITY,
  } as const;
  const upperBound = (value: number, calculation: Figure['calculation'] & {}, absent: Statement) =>
    makeFigure(
      {
        ...identity,
        bound: 'below',
        inputs: [on.id, off.id],
        notes: [...new Map([...on.notes, ...off.notes].map((it) => [statementKey(it), it])).values()],
        calculation,
      },
      value,
      { absent },
    );

  if (off.bound === 'below') {
    return upperBound(
      on.value,
      { code: 'sound-quiet-room-equation', on: on.value, room: off.value },
      { code: 'sound-room-too-quiet' },
    );
  }
  // 45.2 less 30.2 is 15 dB, not the 15.000000000000004 of floating point, which is another row.
  const margin = Number((on.value - off.value).toFixed(9));
  if (!(margin > 0)) {
    return gap(metric, { code: 'sound-not-told-from-room', atMost: on.value });
  }
  const { correction, isUpperBound } = backgroundCorrection(margin);
  const value = on.value - correction;
  const difference = `${number(on.value)} dB(A) − ${number(correction)} dB = ${number(value)} dB(A)`;
  if (isUpperBound) {
    return upperBound(value, `ΔL = ${number(margin)} dB < ${BOUND_BELOW} dB: L ≤ ${difference}`, {
      code: 'sound-room-too-loud',
    });
  }
  const calculation =
    correction === 0
      ? `ΔL = ${number(margin)} dB > ${NO_CORRECTION_ABOVE} dB: L = ${difference}`
      : `L = 10 lg(10^(${number(on.value)}/10) − 10^(${number(off.value)}/10)) = ${difference}`;
  const { on: onSensitivity, off: offSensitivity } = correction === 0 ? { on: 1, off: 0 } : levelSensitivities(margin);
  return propagate({ ...identity, calculation }, value, [
    { figure: on, sensitivity: onSensitivity },
    { figure: off, sensitivity: offSensitivity },
  ]);
}

/** The panel's sound. It is held against no limit. */
export interface SoundResult extends HeldFigure {
  hazard: 'sound';
  reading: SoundReading;
  /**
   * What an upper bound comes to at the cautious end of the reading with the panel on, dB(A): a bound carries no interval,
   * but how far the reading itself may be off moves it all the same. Undefined where that is not known, or no bound.
   */
  atMost: number | undefined;
}

/** The panel's own sound as a result. */
export function soundResult(session: string, reading: SoundReading): SoundResult {
  const figure = soundFigure(session, reading);
  const { on } = reading;
  const end = isFigure(on) && on.interval95 ? cautiousEnd(on, 'high') : undefined;
  const atMost =
    isFigure(figure) && figure.bound && isFigure(on) && end !== undefined ? figure.value + (end - on.value) : undefined;
  return { hazard: 'sound', id: METRIC, figure, reading, atMost, limit: undefined };
}
