import { type Emitter, emitterTerms, type Field } from './emitter.ts';
import { orderNodes } from './gaussian-sum.ts';
import { planeModel } from './plane-model.ts';
import { peakCandidates } from './plane-values.ts';

/** A panel as the model has found it. */
export interface PanelModel {
  emitter: Emitter;
  field: Field;
  order: number;
  /** Emitted, W. */
  power: number;
}

/** Irradiance on a plane parallel to the panel, mW/cm2; distances in cm. */
export interface CurvePoint {
  distance: number;
  /** Over the LED-area rectangle. */
  mean: number;
  peak: number;
  /** Before the middle of the field. */
  centre: number;
}

/**
 * Mean, peak and centre at some distances, for drawing: the values of the distance table between its distances.
 *
 * @param distances cm
 * @throws RangeError for a distance, an order or an emitter that cannot be
 */
export function distanceCurve(panel: PanelModel, distances: readonly number[]): CurvePoint[] {
  const { emitter, field, order, power } = panel;
  const peaks = peakCandidates(emitter, field);
  const model = planeModel(emitterTerms(emitter, field), field, [{ x: 0, y: 0 }, ...peaks]);
  const of = orderNodes(order);
  const out = new Float64Array(peaks.length + 2);
  return distances.map((distance) => {
    model.fill(of, distance, out);
    const [mean = 0, centre = 0] = out;
    return { distance, mean: power * mean, centre: power * centre, peak: power * Math.max(...out.subarray(2)) };
  });
}
