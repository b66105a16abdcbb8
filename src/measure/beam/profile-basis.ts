import { valueAt } from '../at.ts';
import { beamHalfAngle, lambertianExponent } from './beam.ts';
import { type ExponentNodes, exponentNodes } from './gaussian-sum.ts';

/**
 * Beams of any shape as sums of powers of the cosine. Each LED's intensity is
 *
 *   I(theta) = sum over k of w_k (m_k + 1) / (2 pi) cos^(m_k) theta,
 *
 * so that w_k is the power in part k and all that a panel does is linear in the weights. A part may be negative where
 * the whole is not: that gives a dip on the axis, a flat top or a ring. Any other power of the cosine is spread over
 * the four nearest of the basis by Lagrange's cubic in ln m; the intensity is then off by less than 1e-3 of its
 * highest value (tested).
 */

/** Half angles at the ends of the basis, degrees. */
const NARROWEST = 3.1;
const WIDEST = 84;
/** Parts of a profile. */
export const BASIS = 22;

/**
 * Sums of rows of a basis under the weights of one beam. Most weights of a beam are nought, and those are passed over:
 * the sums are the same to the last digit.
 */
export class WeightedRows {
  private readonly used = new Int32Array(BASIS);
  private count = 0;
  private weights: Float64Array = new Float64Array(BASIS);

  /** Takes the weights of a beam; they are read again at each sum, so they must not change in between. */
  take(weights: Float64Array): void {
    this.weights = weights;
    this.count = 0;
    for (let k = 0; k < BASIS; k++) if (weights[k] !== 0) this.used[this.count++] = k;
  }

  /** @param row of rows that lie one after the other, BASIS numbers each */
  sum(rows: Float64Array, row: number): number {
    const { used, weights, count } = this;
    const start = row * BASIS;
    let sum = 0;
    for (let i = 0; i < count; i++) {
      const k = used[i] as number;
      sum += (rows[start + k] as number) * (weights[k] as number);
    }
    return sum;
  }
}

const LOWEST_X = Math.log(lambertianExponent(WIDEST));
const STEP = (Math.log(lambertianExponent(NARROWEST)) - LOWEST_X) / (BASIS - 1);

/** Exponents of the parts, from the widest to the narrowest. */
export const BASIS_EXPONENTS: readonly ExponentNodes[] = Array.from({ length: BASIS }, (_, k) =>
  exponentNodes(Math.exp(LOWEST_X + k * STEP)),
);

/** Powers of the parts of a beam, W for each W of the whole or for the panel. */
export type Weights = ArrayLike<number>;

/** Adds a part of any exponent to some weights; an exponent outside of the basis is taken for its end. */
export function addPart(weights: Float64Array, exponent: number, power: number): void {
  const at = Math.min(BASIS - 1, Math.max(0, (Math.log(exponent) - LOWEST_X) / STEP));
  const first = Math.min(BASIS - 4, Math.max(0, Math.floor(at) - 1));
  const d = at - first;
  const into = (i: number, share: number) => {
    weights[first + i] = (weights[first + i] as number) + power * share;
  };
  into(0, (-(d - 1) * (d - 2) * (d - 3)) / 6);
  into(1, (d * (d - 2) * (d - 3)) / 2);
  into(2, (-d * (d - 1) * (d - 3)) / 2);
  into(3, (d * (d - 1) * (d - 2)) / 6);
}

/** Adds `coefficient` times cos^exponent, as an intensity in W/sr. */
export function addCosine(weights: Float64Array, exponent: number, coefficient: number): void {
  addPart(weights, exponent, (coefficient * 2 * Math.PI) / (exponent + 1));
}

/** For each pair of parts, the place of their product among the parts and what it has there. */
const PRODUCTS = (() => {
  const first: number[] = [];
  const shares: number[] = [];
  const part = new Float64Array(BASIS);
  for (let k = 0; k < BASIS; k++) {
    for (let l = 0; l <= k; l++) {
      const [m, n] = [BASIS_EXPONENTS[k] as ExponentNodes, BASIS_EXPONENTS[l] as ExponentNodes].map(
        (it) => it.exponent,
      ) as [number, number];
      const exponent = m + n + 3;
      part.fill(0);
      addPart(part, exponent, ((k === l ? 1 : 2) * (m + 1) * (n + 1)) / (exponent + 1));
      const at = Math.min(
        BASIS - 4,
        Math.max(
          0,
          part.findIndex((it) => it !== 0),
        ),
      );
      first.push(at);
      shares.push(...part.subarray(at, at + 4));
    }
  }
  return { first: Uint8Array.from(first), shares: Float64Array.from(shares) };
})();

/**
 * Weights of the square of a beam: on a plane, the light of one LED of exponent m times that of exponent n falls off like
 * exponent m + n + 3. The sum of squares over LEDs that have equal shares of the power is that of these weights, as if
 * they were a beam's, times 1000 / (2 pi z^2), over the number of LEDs.
 */
export function squaredWeights(weights: Weights, out: Float64Array): void {
  out.fill(0);
  const { first, shares } = PRODUCTS;
  for (let k = 0, pair = 0; k < BASIS; k++) {
    const one = weights[k] as number;
    for (let l = 0; l <= k; l++, pair++) {
      const product = one * (weights[l] as number);
      if (product === 0) continue;
      const at = first[pair] as number;
      for (let i = 0; i < 4; i++) out[at + i] = (out[at + i] as number) + product * (shares[4 * pair + i] as number);
    }
  }
}

/** Radiant intensity at an angle from the axis, W/sr. */
export function intensityAt(weights: Weights, degrees: number): number {
  const logCosine = Math.log(Math.cos((degrees * Math.PI) / 180));
  let sum = 0;
  for (let k = 0; k < BASIS; k++) {
    const { exponent } = BASIS_EXPONENTS[k] as ExponentNodes;
    sum += ((weights[k] as number) * (exponent + 1) * Math.exp(exponent * logCosine)) / (2 * Math.PI);
  }
  return sum;
}

/** Step of the search for the half angle, degrees. */
const ANGLE_STEP = 1;
const ANGLES = 89;
const SHAPES = Float64Array.from({ length: (ANGLES + 1) * BASIS }, (_, i) => {
  const { exponent } = BASIS_EXPONENTS[i % BASIS] as ExponentNodes;
  const angle = (Math.floor(i / BASIS) * ANGLE_STEP * Math.PI) / 180;
  return ((exponent + 1) / (2 * Math.PI)) * Math.cos(angle) ** exponent;
});

/**
 * The widest angle from the axis at which the intensity is half of its highest value, degrees: for one power of the
 * cosine its half angle, for a ring or a beam with a dip the outer side.
 */
export function profileHalfAngle(weights: Weights): number {
  const values = new Float64Array(ANGLES + 1);
  let highest = 0;
  for (let i = 0; i <= ANGLES; i++) {
    let sum = 0;
    for (let k = 0; k < BASIS; k++) sum += (weights[k] as number) * (SHAPES[i * BASIS + k] as number);
    values[i] = sum;
    highest = Math.max(highest, sum);
  }
  let i = ANGLES - 1;
  while (i > 0 && valueAt(values, i) < highest / 2) i--;
  let [low, high] = [i * ANGLE_STEP, (i + 1) * ANGLE_STEP];
  for (let halving = 0; halving < 20; halving++) {
    const middle = (low + high) / 2;
    if (intensityAt(weights, middle) >= highest / 2) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Half angle of each part, degrees. */
export const BASIS_HALF_ANGLES: readonly number[] = BASIS_EXPONENTS.map((it) => beamHalfAngle(it.exponent));
