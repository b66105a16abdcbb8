import { type AngularResponse, angularError } from '../instrument/angular-response.ts';
import { addPart, BASIS, BASIS_EXPONENTS } from './profile-basis.ts';

/**
 * What a instrument's error at oblique light does to a beam. On a plane parallel to the panel, light from an LED comes in at
 * the angle at which it left, so an error that is a sum of 1 - cos^l makes of a part of exponent m the part itself less
 * one of exponent m + l: no sums over LEDs but those of the basis are needed.
 */
export const POWERS: readonly number[] = [0.5, 2, 6, 16];

/** Angles at which the error is matched, degrees, and how much of a wide panel's light comes from there. */
const ANGLES = Array.from({ length: 17 }, (_, i) => 5 * i);
const weightAt = (degrees: number) => Math.sin((2 * degrees * Math.PI) / 180) + 0.02;

/**
 * Coefficients of 1 - cos^l, l in POWERS, that come nearest to an error over the angles; by least squares.
 */
export function angularCoefficients(response: AngularResponse): number[] {
  const rows = ANGLES.map((angle) => {
    const cosine = Math.cos((angle * Math.PI) / 180);
    const weight = weightAt(angle);
    return { terms: POWERS.map((l) => weight * (1 - cosine ** l)), value: weight * angularError(response, angle) };
  });
  const n = POWERS.length;
  // Normal equations with a touch of ridge, so that powers that look alike do not cancel each other in large numbers.
  const system = Array.from({ length: n }, (_, i) => [
    ...Array.from({ length: n }, (_, j) =>
      rows.reduce((sum, it) => sum + (it.terms[i] as number) * (it.terms[j] as number), i === j ? 1e-6 : 0),
    ),
    rows.reduce((sum, it) => sum + (it.terms[i] as number) * it.value, 0),
  ]);
  for (let i = 0; i < n; i++) {
    const pivot = system[i] as number[];
    for (let k = i + 1; k < n; k++) {
      const row = system[k] as number[];
      const factor = (row[i] as number) / (pivot[i] as number);
      for (let j = i; j <= n; j++) row[j] = (row[j] as number) - factor * (pivot[j] as number);
    }
  }
  const found = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const row = system[i] as number[];
    let value = row[n] as number;
    for (let j = i + 1; j < n; j++) value -= (row[j] as number) * (found[j] as number);
    found[i] = value / (row[i] as number);
  }
  return found;
}

/**
 * The error as a matrix: what the instrument adds to the light of a beam is that of a beam whose part `to` has the sum over
 * `from` of `matrix[to * BASIS + from]` times the weights.
 */
export function angularMatrix(response: AngularResponse): Float64Array {
  const coefficients = angularCoefficients(response);
  const matrix = new Float64Array(BASIS * BASIS);
  const column = new Float64Array(BASIS);
  BASIS_EXPONENTS.forEach(({ exponent }, from) => {
    column.fill(0);
    POWERS.forEach((l, i) => {
      const c = coefficients[i] as number;
      column[from] = (column[from] as number) + c;
      addPart(column, exponent + l, (-c * (exponent + 1)) / (exponent + l + 1));
    });
    for (let to = 0; to < BASIS; to++) matrix[to * BASIS + from] = column[to] as number;
  });
  return matrix;
}

/** Rows of what the instrument adds to some rows: the rows times the matrix. */
export function angularRows(rows: Float64Array, response: AngularResponse): Float64Array {
  const matrix = angularMatrix(response);
  const out = new Float64Array(rows.length);
  for (let row = 0; row < rows.length / BASIS; row++) {
    for (let from = 0; from < BASIS; from++) {
      let sum = 0;
      for (let to = 0; to < BASIS; to++) {
        sum += (rows[row * BASIS + to] as number) * (matrix[to * BASIS + from] as number);
      }
      out[row * BASIS + from] = sum;
    }
  }
  return out;
}
