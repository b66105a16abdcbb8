import type { EmitterPart, Field } from '../../src/measure/beam/emitter.ts';
import { exponentNodes } from '../../src/measure/beam/gaussian-sum.ts';
import { planeModel, type Spot } from '../../src/measure/beam/plane-model.ts';

/**
 * What the model of a plane gives for one Lambertian exponent at one distance, cm, for each W: the mean over the rectangle
 * and the irradiance at each spot, mW/cm2.
 */
export function planeValuesOf(
  terms: readonly EmitterPart[],
  rectangle: Field,
  spots: readonly Spot[],
): (exponent: number, distance: number) => Float64Array {
  const model = planeModel(terms, rectangle, spots);
  return (exponent, distance) => {
    const out = new Float64Array(spots.length + 1);
    model.fill(exponentNodes(exponent), distance, out);
    return out;
  };
}
