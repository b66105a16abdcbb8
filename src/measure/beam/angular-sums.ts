import { at, valueAt } from '../at.ts';
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
      rows.reduce((sum, it) => sum + at(it.terms, i) * at(it.terms, j), i === j ? 1e-6 : 0),
    ),
    rows.reduce((sum, it) => sum + at(it.terms, i) * it.value, 0),
  ]);
  for (let i = 0; i < n; i++) {
    const pivot = at(system, i);
    for (let k = i + 1; k < n; k++) {
      const row = at(system, k);
      const factor = at(row, i) / at(pivot, i);
      for (let j = i; j <= n; j++) row[j] = at(row, j) - factor * at(pivot, j);
    }
  }
  const found = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const row = at(system, i);
    let value = at(row, n);
    for (let j = i + 1; j < n; j++) value -= at(row, j) * at(found, j);
    found[i] = value / at(row, i);
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
      const c = at(coefficients, i);
      column[from] = valueAt(column, from) + c;
      addPart(column, exponent + l, (-c * (exponent + 1)) / (exponent + l + 1));
    });
    for (let to = 0; to < BASIS; to++) matrix[to * BASIS + from] = valueAt(column, to);
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
        sum += valueAt(rows, row * BASIS + to) * valueAt(matrix, to * BASIS + from);
      }
      out[row * BASIS + from] = sum;
    }
  }
  return out;
}
