import { beamParts } from './beam-nodes.ts';
import { type PanelModel, panelTerms } from './panel-model.ts';
import { planeModel, type Spot } from './plane-model.ts';
import { dimCandidates, peakCandidates } from './plane-spots.ts';

/** Irradiance on a plane parallel to the panel, mW/cm2; distances in cm. */
export interface CurvePoint {
  distance: number;
  /** Over the LED-area rectangle. */
  mean: number;
  /** Left out where single LEDs may show and nobody knows where they are. */
  peak?: number;
  /** Before the middle of the field. */
  centre: number;
  /** At the dimmest place of the rectangle; left out with the peak, and where nobody wants it. */
  lowest?: number;
}

/**
 * Mean, extremes and centre at some distances: the values of the distance table, and between its distances for
 * drawing.
 *
 * @param distances cm
 * @throws RangeError for a distance or an emitter that cannot be
 */
export function distanceCurve(
  panel: PanelModel,
  distances: readonly number[],
  { isLowestWanted = true } = {},
): CurvePoint[] {
  const { emitter, field } = panel;
  const peaks = peakCandidates(emitter, field);
  const dims = isLowestWanted ? dimCandidates(emitter, field) : [];
  const ask = placeValues(panel, [{ x: 0, y: 0 }, ...peaks, ...dims]);
  return distances.map((distance) => {
    const [mean = 0, centre = 0, ...places] = ask(distance);
    return {
      distance,
      mean,
      centre,
      ...(distance >= (panel.peakFrom ?? 0) && {
        peak: Math.max(...places.slice(0, peaks.length)),
        ...(isLowestWanted && { lowest: Math.min(...places.slice(peaks.length)) }),
      }),
    };
  });
}

/** Mean over the rectangle and irradiance at some places of a plane, mW/cm2, at any distance. */
export function placeValues(panel: PanelModel, spots: readonly Spot[]): (distance: number) => number[] {
  const model = planeModel(panelTerms(panel), panel.field, spots);
  const beam = beamParts(panel);
  const values = new Float64Array(spots.length + 1);
  return (distance) => {
    model.fillBeam(beam, distance, values);
    return [...values];
  };
}
