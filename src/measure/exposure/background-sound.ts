/** Above this margin, dB, the room is left out of account. */
export const NO_CORRECTION_ABOVE = 15;
/** Below this margin, dB, the correction is held at its largest, and the level is an upper bound. */
export const BOUND_BELOW = 6;
/**
 * Largest correction, dB: the formula's 1.256 dB at a margin of 6 dB, rounded up by the standard. Between margins of
 * 5.87 dB and 6 dB the upper bound so had is up to 0.04 dB too low, far less than any sound instrument resolves.
 */
export const LARGEST_CORRECTION = 1.3;

/** The correction in dB, and whether what is left after it is only an upper bound. */
export interface BackgroundCorrection {
  correction: number;
  isUpperBound: boolean;
}

/**
 * K1 = -10 lg(1 - 10^(-0.1 dL)), the part of a level that the room adds, dB (ISO 3744:2010, from secondary
 * sources). Above 15 dB it is nought; under 6 dB it is 1.3 dB and gives an upper bound. Margins of 6 dB and 15 dB
 * take the formula.
 *
 * @param margin level with the panel on less level with it off, dB; up to zero the panel can't be told from the
 *   room, which is a RangeError
 * @example backgroundCorrection(10) // { correction: 0.4576, isUpperBound: false }
 */
export function backgroundCorrection(margin: number): BackgroundCorrection {
  if (!(margin > 0)) throw new RangeError(`no correction for a margin of ${margin} dB`);
  if (margin > NO_CORRECTION_ABOVE) return { correction: 0, isUpperBound: false };
  if (margin < BOUND_BELOW) return { correction: LARGEST_CORRECTION, isUpperBound: true };
  return { correction: energyCorrection(margin), isUpperBound: false };
}

/**
 * The formula itself, dB, for any margin above zero; else a RangeError.
 *
 * @example energyCorrection(3) // 3.0206
 */
export function energyCorrection(margin: number): number {
  if (!(margin > 0)) throw new RangeError(`no correction for a margin of ${margin} dB`);
  return -10 * Math.log10(1 - 10 ** (-margin / 10));
}

/**
 * How far the corrected level moves with the level read, on and off: dL/dL_on = 1 / (1 - 10^(-0.1 dL)), and
 * dL/dL_off what is missing to one.
 */
export function levelSensitivities(margin: number): { on: number; off: number } {
  const on = 1 / (1 - 10 ** (-margin / 10));
  return { on, off: 1 - on };
}
