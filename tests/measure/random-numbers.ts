/**
 * Random numbers for simulations that check src/measure from outside: another generator and other ways to
 * the distributions than src/measure/random.ts, so that a fault in one does not hide in the other.
 */
export interface Numbers {
  /** Uniform in (0, 1). */
  uniform(): number;
  /** Uniform within ±1. */
  either(): number;
  normal(): number;
  /** Student's t with a whole number of degrees of freedom. */
  studentT(degreesOfFreedom: number): number;
}

/** Mulberry32 (public domain) with the Box–Muller transform; formulas from memory. */
export function randomNumbers(seed: number): Numbers {
  let state = seed | 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return {
    uniform,
    either: () => 2 * uniform() - 1,
    normal,
    studentT(degreesOfFreedom) {
      let squares = 0;
      for (let i = 0; i < degreesOfFreedom; i++) squares += normal() ** 2;
      return normal() / Math.sqrt(squares / degreesOfFreedom);
    },
  };
}

/** Simpson's rule with `intervals` (even) intervals. */
export function integral(of: (x: number) => number, from: number, to: number, intervals = 2000): number {
  const h = (to - from) / intervals;
  let sum = of(from) + of(to);
  for (let i = 1; i < intervals; i++) sum += (i % 2 === 1 ? 4 : 2) * of(from + i * h);
  return (sum * h) / 3;
}

/** Probability that a standard normal value lies below z; integrated from the density. */
export function normalBelow(z: number): number {
  if (z < 0) return 1 - normalBelow(-z);
  return 0.5 + integral((x) => Math.exp(-x * x * 0.5) / Math.sqrt(2 * Math.PI), 0, Math.min(z, 12));
}
