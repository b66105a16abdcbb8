import { nonlinearFit } from './nonlinear-fit.ts';
import { at, type Bin } from './series.ts';

/** `settled + excess · exp(-t / constant)`, as fitted. */
export interface ExponentialFit {
  settled: number;
  /** Standard uncertainty: of the fit, widened by what of the residuals has a shape. */
  settledUncertainty: number;
  /** How far above the settled value it was at time zero; negative where it rises. */
  excess: number;
  excessUncertainty: number;
  /** Time constant, s. */
  constant: number;
  constantUncertainty: number;
  degreesOfFreedom: number;
  /** The part of the residuals' deviation that is not scatter but shape, in the series' unit. */
  shape: number;
}

/** Why there is no fit. */
export type NoFit =
  /** Fewer points than a curve of three parameters needs to be doubted. */
  | 'too-few'
  /** It moves by no more than it scatters. */
  | 'flat'
  /** The log ends before the curve has come to an end. */
  | 'ends-early'
  /** Another shape: two time constants, a step, a drift. */
  | 'not-exponential';

/** Points, at least, for three parameters. */
export const FEWEST_POINTS = 12;
/** Time constants that a log has to hold, at least. Our own choice: after three, a twentieth of the change is left. */
export const FEWEST_CONSTANTS = 3;
/** Share of the change that residuals may have as a shape of their own. Our own choice. */
export const LARGEST_SHAPE = 0.03;
/** Uncertainties of the change, of which it has to be larger than so many. */
const SEEN = 3;

const MODEL = {
  curve:
    ([settled = 0, excess = 0, constant = 1]: readonly number[]) =>
    (t: number) =>
      settled + excess * Math.exp(-t / constant),
  derivatives:
    ([, excess = 0, constant = 1]: readonly number[]) =>
    (t: number) => {
      const decay = Math.exp(-t / constant);
      return [1, decay, (excess * decay * t) / constant ** 2];
    },
};

/** Fits one exponential to means over stretches of time, or says why it would say nothing. */
export function exponentialFit(points: readonly Bin[]): ExponentialFit | NoFit {
  if (points.length < FEWEST_POINTS) return 'too-few';
  const times = points.map((it) => it.time);
  const values = points.map((it) => it.mean);
  const length = at(times, times.length - 1) - at(times, 0);
  const fit = nonlinearFit(times, values, MODEL, initial(times, values));
  if (!fit) return isFlat(values) ? 'flat' : 'not-exponential';
  const [settled, excess, constant] = fit.parameters as [number, number, number];
  const { shape, widening } = shapeOf(fit.residuals);
  const [ofSettled, ofExcess, ofConstant] = fit.standardErrors.map((it) => it * widening) as [number, number, number];
  const isSeen = Math.abs(excess) > SEEN * ofExcess && constant > 0;
  if (!isSeen) return isFlat(values) ? 'flat' : 'not-exponential';
  if (shape > LARGEST_SHAPE * Math.abs(excess)) return 'not-exponential';
  if (length < FEWEST_CONSTANTS * constant) return 'ends-early';
  return {
    settled,
    settledUncertainty: Math.hypot(ofSettled, shape),
    excess,
    excessUncertainty: Math.hypot(ofExcess, shape),
    constant,
    constantUncertainty: ofConstant,
    degreesOfFreedom: fit.degreesOfFreedom,
    shape,
  };
}

function initial(times: readonly number[], values: readonly number[]): number[] {
  const tail = Math.max(1, Math.floor(values.length / 10));
  const settled = values.slice(-tail).reduce((sum, it) => sum + it, 0) / tail;
  const excess = at(values, 0) - settled || Number.EPSILON;
  const length = at(times, times.length - 1) - at(times, 0);
  const fallen = times.find((_, i) => Math.abs(at(values, i) - settled) < Math.abs(excess) / Math.E);
  return [settled, excess, Math.max((fallen ?? 0) - at(times, 0), length / 200)];
}

/**
 * Residuals that scatter change sign from point to point; those that have a shape don't. Half the mean square of their
 * steps is the scatter alone (J. von Neumann 1941; from memory), and what is left of their mean square is the shape: none where
 * the ratio of the two lies within what chance gives. Standard errors are widened as the neighbours depend on one another.
 */
function shapeOf(residuals: readonly number[]): { shape: number; widening: number } {
  const n = residuals.length;
  const square = residuals.reduce((sum, it) => sum + it * it, 0) / n;
  if (square === 0) return { shape: 0, widening: 1 };
  let steps = 0;
  let together = 0;
  for (let i = 1; i < n; i++) {
    steps += (at(residuals, i) - at(residuals, i - 1)) ** 2;
    together += at(residuals, i) * at(residuals, i - 1);
  }
  const scatter = steps / (n - 1) / 2;
  const dependence = Math.min(0.99, Math.max(0, together / n / square));
  // Of independent residuals the ratio scatter / square has mean 1 and a deviation of about 1 / √n.
  const isShaped = scatter / square < 1 - 3 / Math.sqrt(n);
  return {
    shape: isShaped ? Math.sqrt(square - scatter) : 0,
    widening: Math.sqrt((1 + dependence) / (1 - dependence)),
  };
}

/** True where first and last tenths lie within the scatter of neighbours. */
function isFlat(values: readonly number[]): boolean {
  const n = values.length;
  const part = Math.max(1, Math.floor(n / 10));
  const mean = (all: readonly number[]) => all.reduce((sum, it) => sum + it, 0) / all.length;
  let steps = 0;
  for (let i = 1; i < n; i++) steps += (at(values, i) - at(values, i - 1)) ** 2;
  const scatter = Math.sqrt(steps / (n - 1) / 2);
  return Math.abs(mean(values.slice(0, part)) - mean(values.slice(-part))) <= (4 * scatter) / Math.sqrt(part);
}
