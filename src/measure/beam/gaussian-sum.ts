import { checkExponent } from './beam.ts';

/**
 * A beam as a sum of Gaussians. On a plane at distance z, the light of one LED of exponent m falls with the lateral
 * distance rho as
 *
 *   K(rho) = z^(m+1) / (rho^2 + z^2)^((m+3)/2).
 *
 * By the integral of the gamma function, a^(-s) = 1/Gamma(s) * integral of tau^(s-1) exp(-a tau) d tau, with
 * s = (m+3)/2 and a = 1 + rho^2/z^2, this is a mixture of Gaussians,
 *
 *   K(rho) = 1/z^2 * integral of p(tau) exp(-tau rho^2 / z^2) d tau,   p the gamma density of shape s.
 *
 * A Gaussian is a product of one in x and one in y, so that sums and integrals over rectangles fall apart into
 * products of one-dimensional ones with closed forms; only the integral over tau is left. Taken over ln tau with
 * equal steps, it converges faster than any power of the step (trapezoidal rule on the whole line).
 *
 * Sources: gamma integral, NIST Digital Library of Mathematical Functions 5.9.1; trapezoidal rule, Trefethen and
 * Weideman 2014, SIAM Review 56(3), 385 (both from memory); the reduction is worked out here.
 *
 * Relative error against K: below 3e-7 wherever K is above 1e-9 of its value on the axis.
 */

/** The lattice of ln t, t = tau / z^2 in 1/cm2: all exponents and distances share its points. */
const POINTS_EACH_E = 16;
const LOWEST = -36;
const HIGHEST = 14;
export const LATTICE_SIZE = (HIGHEST - LOWEST) * POINTS_EACH_E + 1;

/** t of each point of the lattice, 1/cm2, and its root, 1/cm. */
export const LATTICE_T = Float64Array.from({ length: LATTICE_SIZE }, (_, i) => Math.exp(LOWEST + i / POINTS_EACH_E));
export const LATTICE_ROOT = LATTICE_T.map(Math.sqrt);

/** Distances that fit on the lattice, cm. */
export const NEAREST_PLANE = 0.1;
export const FARTHEST_PLANE = 10_000;

/** The narrowest beam that the lattice is fine enough for: a half angle of 3 degrees. */
export const HIGHEST_EXPONENT = 500;

/** Terms smaller than exp(-TAIL) of the largest are left out. */
const TAIL = 23;

/** What the lattice has to do with one exponent; worth keeping where an exponent is used for several distances. */
export interface ExponentNodes {
  exponent: number;
  shape: number;
  /** Every how many-th point of the lattice is used. */
  stride: number;
  /** Where the terms begin and end, in ln tau. */
  from: number;
  to: number;
  /** ln of the largest term. */
  top: number;
}

/** @throws RangeError unless the exponent is above zero and at most HIGHEST_EXPONENT */
export function exponentNodes(exponent: number): ExponentNodes {
  checkExponent(exponent);
  if (exponent > HIGHEST_EXPONENT)
    throw new RangeError(`an exponent of at most ${HIGHEST_EXPONENT}; found ${exponent}`);
  const shape = (exponent + 3) / 2;
  const middle = Math.log(shape);
  // A narrow beam is a narrow bell over ln tau, of width 1/sqrt(shape). This step keeps the error below 3e-7.
  // Powers of two, so that the coarser ones share their points with the finer ones.
  const stride = 2 ** Math.max(0, Math.floor(Math.log2(POINTS_EACH_E / Math.sqrt(shape + 2.3))));
  return {
    exponent,
    shape,
    stride,
    from: middle + tailEnd(-(TAIL / shape + 1), shape),
    to: middle + tailEnd(Math.sqrt((2 * TAIL) / shape), shape),
    top: shape * middle - shape,
  };
}

/** Where exp(y) - 1 - y = TAIL / shape, by Newton's way from a point outside: it comes nearer from that side only. */
function tailEnd(outside: number, shape: number): number {
  let y = outside;
  for (let i = 0; i < 6; i++) {
    const e = Math.exp(y);
    y -= (e - 1 - y - TAIL / shape) / (e - 1);
  }
  return y;
}

/** Points of the lattice that make up a beam, with weights that sum to 1: so K on the axis is exact. */
export interface Nodes {
  count: number;
  index: Uint16Array;
  weight: Float64Array;
}

/** Room for the nodes of any exponent and distance. */
export function emptyNodes(): Nodes {
  return { count: 0, index: new Uint16Array(LATTICE_SIZE), weight: new Float64Array(LATTICE_SIZE) };
}

/**
 * Fills `nodes` for one exponent at one distance.
 *
 * @param distance cm
 * @param reach largest lateral distance that matters, cm
 * @throws RangeError for a distance that is not between NEAREST_PLANE and FARTHEST_PLANE
 */
export function fillNodes(nodes: Nodes, of: ExponentNodes, distance: number, reach: number): void {
  if (!(distance >= NEAREST_PLANE && distance <= FARTHEST_PLANE)) {
    throw new RangeError(`a plane lies ${NEAREST_PLANE} cm to ${FARTHEST_PLANE} cm away; found ${distance} cm`);
  }
  const logSquare = 2 * Math.log(distance);
  const square = distance * distance;
  // Far off the axis the bell moves to smaller tau, until what is there is nothing beside the axis.
  const shift = Math.min(Math.log1p((reach * reach) / square), TAIL / of.shape);
  const begin = Math.max(0, (of.from - shift - logSquare - LOWEST) * POINTS_EACH_E);
  const first = Math.ceil(begin / of.stride) * of.stride;
  const last = Math.min(LATTICE_SIZE - 1, Math.floor((of.to - logSquare - LOWEST) * POINTS_EACH_E));
  const { index, weight } = nodes;
  let count = 0;
  let sum = 0;
  for (let i = first; i <= last; i += of.stride) {
    const tau = (LATTICE_T[i] as number) * square;
    const term = Math.exp(of.shape * (LOWEST + i / POINTS_EACH_E + logSquare) - tau - of.top);
    index[count] = i;
    weight[count] = term;
    sum += term;
    count++;
  }
  for (let i = 0; i < count; i++) weight[i] = (weight[i] as number) / sum;
  nodes.count = count;
}
