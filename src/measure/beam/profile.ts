import { at, valueAt } from '../at.ts';
import { erf } from './error-function.ts';

/** How a row of LEDs, or a band of light, is spread along one axis; its weights sum to 1. Lengths in cm. */
export interface Profile {
  /**
   * Seen through a Gaussian: the sum of weight * exp(-t (x - x')^2) over the places x' of the profile.
   *
   * @param t 1/cm2
   * @param root its root, 1/cm
   */
  at(t: number, root: number, x: number): number;
  /** The integral of `at` over x, cm. */
  over(t: number, root: number, from: number, to: number): number;
  /** Furthest place from the middle. */
  reach: number;
  /** Whether left and right are alike. */
  isSymmetric: boolean;
}

const HALF_ROOT_PI = Math.sqrt(Math.PI) / 2;

/** Evenly spread over `length`, about the middle. */
export function evenProfile(length: number): Profile {
  const a = length / 2;
  /** Integral of erf(root u) from 0 to u: u erf(root u) + (exp(-t u^2) - 1) / (root sqrt pi). */
  const ramp = (t: number, root: number, u: number) =>
    u * erf(root * u) + Math.expm1(-t * u * u) / (root * 2 * HALF_ROOT_PI);
  return {
    at: (_, root, x) => ((erf(root * (x + a)) - erf(root * (x - a))) * HALF_ROOT_PI) / (root * length),
    over(t, root, from, to) {
      const sides =
        from === -to
          ? 2 * (ramp(t, root, to + a) - ramp(t, root, to - a))
          : ramp(t, root, to + a) - ramp(t, root, to - a) - ramp(t, root, from + a) + ramp(t, root, from - a);
      return (sides * HALF_ROOT_PI) / (root * length);
    },
    reach: a,
    isSymmetric: true,
  };
}

/**
 * Bands of light side by side, in order: the light between two edges is spread evenly. Weights as they are, of either
 * sign.
 *
 * @param edges one more than there are bands, cm
 */
export function bandProfile(edges: readonly number[], weights: readonly number[]): Profile {
  const density = weights.map((it, i) => it / (at(edges, i + 1) - at(edges, i)));
  const x = Float64Array.from(edges);
  const steps = Float64Array.from(edges, (_, i) => (density[i] ?? 0) - (density[i - 1] ?? 0));
  const ramp = (t: number, root: number, u: number) =>
    u * erf(root * u) + Math.expm1(-t * u * u) / (root * 2 * HALF_ROOT_PI);
  const isAlike = (a: number | undefined, b: number | undefined) => Math.abs((a ?? 0) - (b ?? 0)) < 1e-9;
  const n = edges.length;
  return {
    at(_, root, at) {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += (steps[i] as number) * erf(root * (at - (x[i] as number)));
      return (sum * HALF_ROOT_PI) / root;
    },
    over(t, root, from, to) {
      let sum = 0;
      for (let i = 0; i < n; i++) {
        const edge = x[i] as number;
        sum += (steps[i] as number) * (ramp(t, root, to - edge) - ramp(t, root, from - edge));
      }
      return (sum * HALF_ROOT_PI) / root;
    },
    reach: Math.max(...x.map(Math.abs)),
    isSymmetric:
      edges.every((it, i) => isAlike(it, -valueAt(x, n - 1 - i))) &&
      density.every((it, i) => isAlike(it, density[n - 2 - i])),
  };
}

/** Points with weights as they are, of either sign, in order of place. */
export function rawPointProfile(places: readonly number[], weights: readonly number[]): Profile {
  const x = Float64Array.from(places);
  const w = Float64Array.from(weights);
  const n = x.length;
  const isAlike = (a: number | undefined, b: number | undefined) => Math.abs((a ?? 0) - (b ?? 0)) < 1e-9;
  const isSymmetric = places.every((it, i) => isAlike(it, -valueAt(x, n - 1 - i)) && isAlike(w[i], w[n - 1 - i]));
  return {
    at(t, _, at) {
      let sum = 0;
      for (let i = 0; i < n; i++) {
        const d = at - (x[i] as number);
        sum += (w[i] as number) * Math.exp(-t * d * d);
      }
      return sum;
    },
    over(_, root, from, to) {
      let sum = 0;
      if (isSymmetric && from === -to) {
        for (let i = 0; i < n; i++) sum += (w[i] as number) * erf(root * (to - (x[i] as number)));
        return (2 * sum * HALF_ROOT_PI) / root;
      }
      for (let i = 0; i < n; i++) {
        const place = x[i] as number;
        sum += (w[i] as number) * (erf(root * (to - place)) - erf(root * (from - place)));
      }
      return (sum * HALF_ROOT_PI) / root;
    },
    reach: Math.max(...x.map(Math.abs)),
    isSymmetric,
  };
}
