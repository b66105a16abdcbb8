/**
 * The error function, to an absolute and relative error of 1e-11: the library's own is good to 1e-7 only, which is
 * too coarse for differences of it. A table of nodes, and between them the Taylor series about the nearest.
 *
 * Sources: definition and series, NIST Digital Library of Mathematical Functions 7.2.1 and 7.6.2; derivatives by
 * Hermite polynomials, 7.10.1 (numbers from memory).
 */

const STEPS = 32;
/** From here on the function is 1 to the last digit. */
const END = 6;
const SLOPE = 2 / Math.sqrt(Math.PI);

const values = new Float64Array(END * STEPS + 1);
const slopes = new Float64Array(END * STEPS + 1);
for (let i = 0; i < values.length; i++) {
  const x = i / STEPS;
  slopes[i] = SLOPE * Math.exp(-x * x);
  // Every term is positive, so that nothing cancels.
  let term = x;
  let sum = 0;
  for (let n = 1; term > sum * 1e-18; n++) {
    sum += term;
    term *= (2 * x * x) / (2 * n + 1);
  }
  values[i] = (slopes[i] as number) * sum;
}

/** erf(x) = 2 / sqrt(pi) times the integral of exp(-u^2) from 0 to x. */
export function erf(x: number): number {
  const size = Math.abs(x);
  if (!(size < END)) return Math.sign(x);
  const at = (size * STEPS + 0.5) | 0;
  const c = at / STEPS;
  const d = size - c;
  const cc = c * c;
  const series =
    1 - d * (c - d * ((2 * cc - 1) / 3 - d * ((c * (2 * cc - 3)) / 6 - (d * (4 * cc * (cc - 3) + 3)) / 30)));
  const value = (values[at] as number) + (slopes[at] as number) * d * series;
  return x < 0 ? -value : value;
}

/** Share of a normal distribution with mean 0 and standard deviation 1 that lies below x. */
export function normalShare(x: number): number {
  return (1 + erf(x * Math.SQRT1_2)) / 2;
}
