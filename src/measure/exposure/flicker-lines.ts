/*
 * IEEE Std 1789-2015, 8.1.1. The line of low risk (Practice 1) and that of no observable effect (Practice 2) were seen in a
 * public implementation that cites the clause; the rule against seizures (Practice 3) is from memory.
 */

/** Below this frequency, Hz, the lower row holds; 90 Hz itself is of the upper row. */
export const ROW_EDGE = 90;
/** Highest frequency with a low-risk line, Hz, the frequency itself included. */
export const LOW_RISK_TO = 1250;
/** Highest frequency with a line of no observable effect, Hz, the frequency itself included. */
export const NO_EFFECT_TO = 3000;
/** Practice 3: below 90 Hz keep the modulation under this depth, %. From memory. */
export const SLOW_DEPTH = 5;

/** Frequencies at which panels are often made to flash, Hz. Common practice, no source. */
export const PULSE_FREQUENCIES = [10, 40] as const;
/** How far a reading may be from them, Hz. Our own choice. */
export const PULSE_TOLERANCE = 1;

/** Modulation depth in % for each Hz. */
const LOWER_ROW = { lowRisk: 0.025, noEffect: 0.01 };
const UPPER_ROW = { lowRisk: 0.08, noEffect: 0.0333 };

export interface FlickerLines {
  /** Modulation depth (percent flicker), %. */
  lowRisk: number | 'no-limit';
  noEffect: number | 'no-limit';
}

/**
 * Modulation depths at the lines of IEEE Std 1789-2015, 8.1.1 (from secondary sources), %. For visible light only;
 * for waves of several frequencies it is meant for each component (from memory). At 90 Hz the lines step up by a
 * factor of more than three: that frequency belongs to the upper row, "below 90 Hz" being the wording of the lower.
 *
 * @param frequency Hz, above zero; else a RangeError
 * @example flickerLines(100) // { lowRisk: 8, noEffect: 3.33 }
 */
export function flickerLines(frequency: number): FlickerLines {
  if (!(frequency > 0)) throw new RangeError(`no frequency of flicker: ${frequency} Hz`);
  const row = frequency < ROW_EDGE ? LOWER_ROW : UPPER_ROW;
  return {
    lowRisk: frequency > LOW_RISK_TO ? 'no-limit' : row.lowRisk * frequency,
    noEffect: frequency > NO_EFFECT_TO ? 'no-limit' : row.noEffect * frequency,
  };
}
