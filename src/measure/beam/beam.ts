/**
 * An LED as a generalised Lambertian source: its intensity falls as the m-th power of the cosine of the angle
 * from its axis. One number, the Lambertian exponent m, says how narrow the beam is; 1 is a Lambertian surface.
 *
 * Source: Kahn and Barry 1997, Proceedings of the IEEE 85(2), 265 (formulas from memory).
 */

const DEGREE = Math.PI / 180;

/**
 * Lambertian exponent of the beam whose intensity falls to a half at `halfAngle`: m = -ln 2 / ln cos(half angle).
 *
 * @param halfAngle degrees from the axis; data sheets often print twice this, the full beam angle
 * @throws RangeError unless 0 < halfAngle < 90
 * @example lambertianExponent(60) // 1
 */
export function lambertianExponent(halfAngle: number): number {
  if (!(halfAngle > 0 && halfAngle < 90)) {
    throw new RangeError(`a half angle lies between 0° and 90°, both excluded; found ${halfAngle}°`);
  }
  // ln cos by the sine where the cosine is so near 1 that its logarithm would lose digits.
  const angle = halfAngle * DEGREE;
  const logCosine = halfAngle < 45 ? Math.log1p(-(Math.sin(angle) ** 2)) / 2 : Math.log(Math.cos(angle));
  return -Math.LN2 / logCosine;
}

/**
 * Half angle of a beam of exponent m, degrees: arccos(2^(-1/m)); the inverse of `lambertianExponent`.
 *
 * @throws RangeError unless the exponent is above zero and finite
 * @example beamHalfAngle(1) // 60
 */
export function beamHalfAngle(exponent: number): number {
  checkExponent(exponent);
  // By the half-angle formula: the cosine of a narrow beam is so near 1 that its arc cosine would lose digits.
  return (2 * Math.asin(Math.sqrt(-Math.expm1(-Math.LN2 / exponent) / 2))) / DEGREE;
}

/** @throws RangeError unless the exponent is above zero and finite */
export function checkExponent(exponent: number): void {
  if (!(exponent > 0 && Number.isFinite(exponent))) {
    throw new RangeError(`the exponent of a beam is above zero and finite; found ${exponent}`);
  }
}
