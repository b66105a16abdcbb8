/** Sounds of which it is known what is in them, for files and tests. */
import type { Numbers } from '../../measure/random-numbers.ts';

export interface SoundParts {
  rate: number;
  seconds: number;
  /** Root mean square of white noise, of full scale. */
  noise: number;
  /** Amplitudes of pure tones, of full scale, and how far they waver, Hz. */
  tones?: ReadonlyArray<{ frequency: number; amplitude: number; waver?: number }>;
  numbers: Numbers;
}

/** White noise with pure tones. */
export function soundOf({ rate, seconds, noise, tones = [], numbers }: SoundParts): Float32Array {
  const phases = tones.map(() => 2 * Math.PI * numbers.uniform());
  return Float32Array.from({ length: Math.round(rate * seconds) }, (_, i) => {
    let sum = noise > 0 ? noise * numbers.normal() : 0;
    tones.forEach(({ frequency, amplitude, waver = 0 }, k) => {
      phases[k] = (phases[k] ?? 0) + (2 * Math.PI * (frequency + waver * Math.sin((6 * i) / rate))) / rate;
      sum += amplitude * Math.sin(phases[k] ?? 0);
    });
    return sum;
  });
}
