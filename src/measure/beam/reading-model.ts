import { at, valueAt } from '../at.ts';
import { MILLI } from '../unit-factors.ts';
import { angularRows } from './angular-sums.ts';
import type { Supposed } from './beam-prior.ts';
import { PATTERNS } from './drive.ts';
import type { Readings, SharedError } from './error-sources.ts';
import { GEOMETRY, type PanelSums, type Rows } from './panel-sums.ts';
import { BASIS, squaredWeights, WeightedRows } from './profile-basis.ts';

/** What was read, in the order of a panel's rows: grid, past the edges, sweep. */
export interface AllReadings {
  /** mW/cm2; half of the first step where a reading is below it. */
  values: Float64Array;
  /** Standard uncertainty of each on its own from scatter and from resolution of the display, mW/cm2. */
  own: Float64Array;
  /** Whether the instrument's offset is in it; what the instrument shows with the panel off takes it away. */
  isOffset: readonly boolean[];
  /** Standard uncertainty of the distance of each on its own, cm: a sweep is set anew for each reading. */
  ownDistance: Float64Array;
}

/** Readings of several kinds as one list, in the order of the kinds. */
export function allReadings(kinds: readonly Readings[]): AllReadings {
  const all = kinds.flatMap(({ values, scatter, rounding, isOffTaken, ownDistance = 0 }) =>
    values.map((value, j) => ({
      value,
      own: Math.hypot(scatter[j] ?? 0, rounding[j] ?? 0),
      isOffset: !isOffTaken?.[j],
      ownDistance,
    })),
  );
  return {
    values: Float64Array.from(all, (it) => it.value),
    own: Float64Array.from(all, (it) => it.own),
    isOffset: all.map((it) => it.isOffset),
    ownDistance: Float64Array.from(all, (it) => it.ownDistance),
  };
}

/** Relative standard uncertainty of a reading from where the probe stands and how the panel wavers: our own choice. */
export const PLACE_UNCERTAINTY = 0.005;

/**
 * What a reading past an edge may be off from any beam that is tried, relative standard uncertainty: out there each
 * reading looks at one part of the beam alone, and lenses have rings and steps. Our own choice, from simulated panels.
 */
export const PAST_UNCERTAINTY = 0.04;

/**
 * The same, relative to the mean over the frame's readings: where a beam ends steeply, a reading of next to nothing says
 * that its edge is not there, and no more; how lenses end differs by far more than a share of that. Our own choice, from
 * simulated panels.
 */
export const PAST_FLOOR = 0.004;

/**
 * Light that walls and floor give back, on every reading alike, over the mean of the readings in the frame: usual size
 * and standard uncertainty. Our own choice.
 */
export const USUAL_STRAY = 0.006;
export const STRAY = 0.012;

/** The readings' probability for some beam, and what follows for the power. */
export interface Likelihood {
  /** Natural logarithm, less a constant. */
  log: number;
  chiSquare: number;
}

/** Readings, and all errors that they share. */
export interface ReadingModel {
  count: number;
  /** Errors that move readings against one another: the shared ones that are no mere gain, patterns of drive, stray. */
  directions: number;
  likelihood(supposed: Supposed): Likelihood;
  /**
   * After `likelihood`, for the same beam: the power and the errors, in units of their standard uncertainty, that go
   * with readings that are off by what is drawn (Matheron's rule: draw from what was thought before, and move it by
   * what the readings say against it).
   *
   * @param scores drawn errors, replaced by those that go with the readings
   * @param own drawn errors of each reading on its own, in its standard uncertainty
   * @returns emitted power, W, before the gain of the instrument
   */
  draw(scores: Float64Array, own: Float64Array): number;
}

/** @param errors those that are a mere gain are left aside */
export function readingModel(sums: PanelSums, readings: AllReadings, errors: readonly SharedError[]): ReadingModel {
  const { values, own, isOffset, ownDistance } = readings;
  const of = sums.readings;
  const n = values.length;
  // What gives the scale to start from: the grid, or what there is.
  const scaled = of.grid > 0 ? of.grid : n;
  let total = 0;
  for (let j = 0; j < scaled; j++) total += at(values, j);
  const stray = (STRAY * total) / scaled;
  const usual = (USUAL_STRAY * total) / scaled;

  // Columns: each of them rows to be multiplied with the weights, or a constant in mW/cm2.
  const angular = new Map<object, Rows>();
  const columns = errors.map(({ effect }) => {
    const rows = new Float64Array(n * BASIS);
    let isUsed = false;
    const add = (by: number, what: Rows) => {
      isUsed = true;
      for (let i = 0; i < rows.length; i++) rows[i] = valueAt(rows, i) + by * valueAt(what, i);
    };
    for (const it of GEOMETRY) if (effect[it]) add(effect[it], of.geometry[it]);
    if (effect.angular) {
      const known = angular.get(effect.angular) ?? angularRows(of.base, effect.angular);
      angular.set(effect.angular, known);
      add(1, known);
    }
    const offset = effect.offset ?? 0;
    return {
      rows: isUsed ? rows : undefined,
      constant: isOffset.map((it) => (it ? -offset : 0)),
      hasConstant: offset !== 0,
    };
  });
  const D = columns.length + PATTERNS.length + 1;

  const a = new Float64Array(n);
  const H = new Float64Array(D * n);
  const variance = new Float64Array(n);
  const L = new Float64Array(n * n);
  const r = new Float64Array(n);
  const u = new Float64Array(n);
  const v = new Float64Array(n);
  let power = 0;
  let vv = 0;

  const light = new WeightedRows();
  const square = new WeightedRows();
  const solve = (from: Float64Array, to: Float64Array) => {
    for (let i = 0; i < n; i++) {
      let sum = from[i] as number;
      for (let j = 0, at = i * n; j < i; j++, at++) sum -= (L[at] as number) * (to[j] as number);
      to[i] = sum / (L[i * n + i] as number);
    }
  };

  const squares = new Float64Array(BASIS);
  const scale = of.planes.map((z) => MILLI / (2 * Math.PI * z * z));
  return {
    count: n,
    directions: D,
    likelihood({ weights, difference, drive }) {
      light.take(weights);
      let predicted = 0;
      for (let j = 0; j < n; j++) {
        a[j] = Math.max(1e-12, light.sum(of.base, j));
        if (j < scaled) predicted += a[j] as number;
      }
      power = (total - scaled * usual) / predicted;
      squaredWeights(weights, squares);
      square.take(squares);
      for (let j = 0; j < n; j++) {
        const there = a[j] as number;
        // Of positive parts with one sum, the squares sum to no less than if all were alike.
        const grain =
          difference * Math.sqrt(Math.max(there * there, (scale[j] as number) * square.sum(of.base, j)) / sums.leds);
        const ripple = of.ripple ? Math.min(there, Math.max(0, light.sum(of.ripple, j))) : 0;
        const isPast = j >= of.grid && j < of.grid + of.beyond;
        const placed = isPast
          ? Math.hypot(PAST_UNCERTAINTY * there, (PAST_FLOOR * predicted) / scaled)
          : PLACE_UNCERTAINTY * there;
        const set = ownDistance[j] as number;
        const moved = set > 0 ? set * light.sum(of.geometry.distance, j) : 0;
        variance[j] =
          (own[j] as number) ** 2 + power ** 2 * (grain * grain + ripple * ripple + placed * placed + moved * moved);
        r[j] = (values[j] as number) - usual - power * (a[j] as number);
      }
      let d = 0;
      for (const { rows, constant, hasConstant } of columns) {
        for (let j = 0; j < n; j++) {
          H[d * n + j] = (rows ? power * light.sum(rows, j) : 0) + (hasConstant ? (constant[j] as number) : 0);
        }
        d++;
      }
      for (let p = 0; p < PATTERNS.length; p++, d++) {
        const size = power * (drive[p] as number);
        for (let j = 0; j < n; j++) H[d * n + j] = size * light.sum(of.patterns[p] as Rows, j);
      }
      for (let j = 0; j < n; j++) H[d * n + j] = stray;

      // Cholesky's decomposition of the covariance.
      let logRoot = 0;
      for (let i = 0; i < n; i++) {
        for (let j = 0; j <= i; j++) {
          let sum = i === j ? (variance[i] as number) : 0;
          for (let e = 0, at = 0; e < D; e++, at += n) sum += (H[at + i] as number) * (H[at + j] as number);
          for (let k = 0; k < j; k++) sum -= (L[i * n + k] as number) * (L[j * n + k] as number);
          if (i === j) {
            const root = Math.sqrt(Math.max(1e-18, sum));
            L[i * n + i] = root;
            logRoot += Math.log(root);
          } else {
            L[i * n + j] = sum / (L[j * n + j] as number);
          }
        }
      }
      solve(r, u);
      solve(a, v);
      let uu = 0;
      let uv = 0;
      vv = 0;
      for (let j = 0; j < n; j++) {
        uu += (u[j] as number) ** 2;
        uv += (u[j] as number) * (v[j] as number);
        vv += (v[j] as number) ** 2;
      }
      const chiSquare = Math.max(0, uu - (uv * uv) / vv);
      return { log: -chiSquare / 2 - logRoot - Math.log(vv) / 2 - Math.log(power), chiSquare };
    },
    draw(scores, drawn) {
      // What the readings would be with these errors, and what is left to explain.
      for (let j = 0; j < n; j++) {
        let sum = (drawn[j] as number) * Math.sqrt(variance[j] as number);
        for (let e = 0, at = j; e < D; e++, at += n) sum += (scores[e] as number) * (H[at] as number);
        u[j] = (r[j] as number) - sum;
      }
      solve(u, u);
      let uv = 0;
      for (let j = 0; j < n; j++) uv += (u[j] as number) * (v[j] as number);
      const change = uv / vv;
      for (let j = 0; j < n; j++) u[j] = (u[j] as number) - change * (v[j] as number);
      // Backwards through the transposed root.
      for (let i = n - 1; i >= 0; i--) {
        let sum = u[i] as number;
        for (let j = i + 1; j < n; j++) sum -= (L[j * n + i] as number) * (u[j] as number);
        u[i] = sum / (L[i * n + i] as number);
      }
      for (let e = 0; e < D; e++) {
        let sum = 0;
        for (let j = 0; j < n; j++) sum += (H[e * n + j] as number) * (u[j] as number);
        scores[e] = (scores[e] as number) + sum;
      }
      return Math.max(1e-3 * power, power + change);
    },
  };
}
