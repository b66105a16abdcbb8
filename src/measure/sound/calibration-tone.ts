import { powerOfTwo, powerSpectrum, type Samples } from './power-spectrum.ts';

/** A calibrator's tone holds at least this share of all above 20 Hz, or it was not on the microphone. Our own choice. */
export const SMALLEST_TONE_SHARE = 0.9;

/** The tone of a calibration clip. */
export interface CalibrationTone {
  /** Hz */
  frequency: number;
  /** Its level, dB of full scale. */
  level: number;
  /** Its share of the clip's power. */
  share: number;
}

/** The strongest tone of a clip; undefined where the clip is too short. */
export function calibrationTone(sound: Samples): CalibrationTone | undefined {
  const spectrum = powerSpectrum(sound, powerOfTwo(Math.min(sound.samples.length / 2, 0.25 * sound.rate)));
  if (!spectrum) return undefined;
  const { step, powers } = spectrum;
  const lowest = Math.max(2, Math.ceil(20 / step));
  let peak = lowest;
  let all = 0;
  for (let i = lowest; i < powers.length; i += 1) {
    all += powers[i] ?? 0;
    if ((powers[i] ?? 0) > (powers[peak] ?? 0)) peak = i;
  }
  let tone = 0;
  let middle = 0;
  for (let i = Math.max(0, peak - 4); i <= peak + 4; i += 1) {
    tone += powers[i] ?? 0;
    middle += i * (powers[i] ?? 0);
  }
  if (!(tone > 0)) return undefined;
  return { frequency: (middle / tone) * step, level: 10 * Math.log10(tone), share: Math.min(1, tone / all) };
}
