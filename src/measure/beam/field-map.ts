import { at } from '../at.ts';
import { type PanelModel, panelTerms } from './panel-model.ts';
import { irradianceOver } from './plane-map.ts';
import { BASIS_EXPONENTS } from './profile-basis.ts';

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
  const terms = panelTerms(panel);
  const values = new Float64Array(x.length * y.length);
  BASIS_EXPONENTS.forEach(({ exponent }, k) => {
    const power = panel.power * at(panel.weights, k);
    if (power === 0) return;
    irradianceOver(terms, exponent, power, distance, x, y).forEach((value, i) => {
      values[i] = at(values, i) + value;
    });
  });
  return values;
}
