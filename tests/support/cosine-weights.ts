import { addPart, BASIS } from '../../src/measure/beam/profile-basis.ts';

/** Weights of a beam that is one power of the cosine and gives off 1 W. */
export function cosineWeights(exponent: number): Float64Array {
  const weights = new Float64Array(BASIS);
  addPart(weights, exponent, 1);
  return weights;
}
