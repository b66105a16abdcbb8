import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { inverse, Matrix } from 'ml-matrix';
import { at } from './series.ts';

/** A curve with parameters. */
export interface Model {
  /** The curve for parameters. */
  curve: (parameters: readonly number[]) => (x: number) => number;
  /** Its derivatives by each parameter. */
  derivatives: (parameters: readonly number[]) => (x: number) => number[];
}

export interface Fit {
  parameters: number[];
  /** One standard error of each parameter, from the residuals. */
  standardErrors: number[];
  /** Standard deviation of the residuals, with n - p degrees of freedom. */
  residualDeviation: number;
  degreesOfFreedom: number;
  residuals: number[];
}

const ITERATIONS = 300;
/** Steps of Gauss and Newton at the end: Levenberg's stop where the sum of squares no longer moves, parameters a little later. */
const LAST_STEPS = 8;

/**
 * Least squares of a curve that is not linear in its parameters (Levenberg-Marquardt), with their standard errors from the
 * covariance s² (JᵀJ)⁻¹ at the end. Points weigh alike. Undefined where there are no more points than parameters, or where
 * they do not tell the parameters apart.
 *
 * @param initial where to begin; parameters may be of any size, since steps are scaled by these
 */
export function nonlinearFit(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  { curve, derivatives }: Model,
  initial: readonly number[],
): Fit | undefined {
  const degreesOfFreedom = x.length - initial.length;
  if (degreesOfFreedom < 1) return undefined;
  // In units of where it began, so that no parameter is lost beside a larger one.
  const scale = initial.map((it) => (it === 0 ? 1 : Math.abs(it)));
  const real = (scaled: readonly number[]) => scaled.map((it, i) => it * at(scale, i));
  try {
    const { parameterValues } = levenbergMarquardt({ x, y }, (scaled) => curve(real(scaled)), {
      initialValues: initial.map((it, i) => it / at(scale, i)),
      damping: 1e-2,
      gradientDifference: 1e-6,
      centralDifference: true,
      maxIterations: ITERATIONS,
      errorTolerance: 0,
      improvementThreshold: 1e-12,
    });
    return polished(x, y, { curve, derivatives }, real(parameterValues), degreesOfFreedom);
  } catch {
    // A matrix that has no inverse, or numbers that have run away: the points do not tell the parameters apart.
    return undefined;
  }
}

function polished(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  { curve, derivatives }: Model,
  from: number[],
  degreesOfFreedom: number,
): Fit | undefined {
  let parameters = from;
  let best = residualsOf(x, y, curve(parameters));
  for (let i = 0; i < LAST_STEPS; i++) {
    const normal = normalInverse(x, derivatives(parameters));
    const step = normal.covariance.mmul(normal.jacobian.transpose().mmul(Matrix.columnVector(best))).to1DArray();
    const next = parameters.map((it, j) => it + at(step, j));
    const residuals = residualsOf(x, y, curve(next));
    if (!(squares(residuals) < squares(best))) break;
    parameters = next;
    best = residuals;
  }
  const residualDeviation = Math.sqrt(squares(best) / degreesOfFreedom);
  const { covariance } = normalInverse(x, derivatives(parameters));
  const standardErrors = parameters.map((_, i) => residualDeviation * Math.sqrt(covariance.get(i, i)));
  if (![...parameters, ...standardErrors].every(Number.isFinite)) return undefined;
  return { parameters, standardErrors, residualDeviation, degreesOfFreedom, residuals: best };
}

function normalInverse(x: ArrayLike<number>, derivatives: (x: number) => number[]) {
  const rows = Array.from(x, derivatives);
  // Columns are brought to one length first: (JᵀJ) of parameters of very different size has no inverse in floating point.
  const lengths = (rows[0] ?? []).map((_, j) => Math.hypot(...rows.map((row) => at(row, j))) || 1);
  const jacobian = new Matrix(rows);
  const even = new Matrix(rows.map((row) => row.map((it, j) => it / at(lengths, j))));
  const covariance = inverse(even.transpose().mmul(even));
  for (let i = 0; i < lengths.length; i++) {
    for (let j = 0; j < lengths.length; j++) {
      covariance.set(i, j, covariance.get(i, j) / (at(lengths, i) * at(lengths, j)));
    }
  }
  return { jacobian, covariance };
}

const residualsOf = (x: ArrayLike<number>, y: ArrayLike<number>, curve: (x: number) => number) =>
  Array.from(x, (it, i) => at(y, i) - curve(it));

const squares = (all: readonly number[]) => all.reduce((sum, it) => sum + it * it, 0);
