import { erf } from './error-function.ts';

/**
 * Probability that chi-square with whole degrees of freedom exceeds a value: finite sums of Abramowitz and Stegun
 * 26.4.4 and 26.4.5 (numbers from memory). Absolute error below 1e-10.
 *
 * @param degreesOfFreedom a whole number from 1
 * @throws RangeError for other degrees of freedom
 * @example chiSquareExceeds(3.841, 1) // 0.05
 */
export function chiSquareExceeds(value: number, degreesOfFreedom: number): number {
  if (!(Number.isInteger(degreesOfFreedom) && degreesOfFreedom >= 1)) {
    throw new RangeError(`whole degrees of freedom from 1; found ${degreesOfFreedom}`);
  }
  if (!(value > 0)) return 1;
  const half = value / 2;
  const isOdd = degreesOfFreedom % 2 === 1;
  // Terms half^k / Gamma(k + 1) for k = 0, 1, ... or for k = 1/2, 3/2, ...
  let term = isOdd ? 2 * Math.sqrt(half / Math.PI) : 1;
  let sum = 0;
  for (let k = isOdd ? 0.5 : 0; k < degreesOfFreedom / 2 - 0.25; k++) {
    sum += term;
    term *= half / (k + 1);
  }
  return (isOdd ? 1 - erf(Math.sqrt(half)) : 0) + Math.exp(-half) * sum;
}
