import { beamParts } from './beam-nodes.ts';
import { type PanelModel, panelTerms } from './panel-model.ts';
import { irradianceOver } from './plane-map.ts';

/**
 * Modelled irradiance at every pair of some x and some y on a plane parallel to the panel, mW/cm2; row by row.
 *
 * @param distance from the LED plane, cm
 * @param x from the middle of the LED field to the right as one faces the panel, cm
 * @param y from the middle upwards, cm
 */
export function modelledOver(
  panel: PanelModel,
  distance: number,
  x: readonly number[],
  y: readonly number[],
): Float64Array {
  return irradianceOver(panelTerms(panel), beamParts(panel), distance, x, y);
}
