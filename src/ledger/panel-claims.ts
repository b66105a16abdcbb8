import type { Panel } from '../content/schema/panel.ts';
import type { FigureMap } from '../measure/figure.ts';
import { figureFinder } from '../measure/figure.ts';
import {
  type ClaimCheck,
  checkQuantity,
  checkWavelength,
  distanceReach,
  notComparable,
} from '../measure/irradiance/claims.ts';

/**
 * The maker's claims held against one session's figures. Irradiance is held against the combined peak, the
 * reading most favourable to the maker, and only at the distance that was claimed or close to it. Less light than claimed is the
 * buyer's loss; less draw from the mains is not, for the light is held against its own claim.
 *
 * @param distance of the session, cm
 */
export function panelClaims(panel: Panel, figures: FigureMap, distance: number): ClaimCheck[] {
  const { claims } = panel;
  if (!claims) return [];
  const checks: ClaimCheck[] = [];
  const figure = figureFinder(figures);

  const claimedPeaks = (claims.wavelengths ?? []).map((it) => it.peak.value);
  for (const metric of ['wavelength-red', 'wavelength-near-infrared'] as const) {
    const measured = figure(metric);
    const check = measured && checkWavelength(claimedPeaks, measured);
    if (check) checks.push(check);
  }
  const compared = new Set(checks.map((it) => it.claimed));
  for (const peak of claimedPeaks) {
    if (!compared.has(peak))
      checks.push(notComparable(`wavelength ${peak} nm`, peak, 'nm', 'not seen as a peak of its own'));
  }

  if (claims.irradiance) {
    const { value, distance: at } = claims.irradiance;
    const subject = 'irradiance';
    const measured = figure('peak-irradiance-combined');
    const reach = at && distanceReach(distance, at.value);
    if (!at) checks.push(notComparable(subject, value.value, 'mW/cm²', 'claimed without a distance'));
    else if (!reach) {
      checks.push(
        notComparable(subject, value.value, 'mW/cm²', `claimed at ${at.written}, measured at ${distance} cm`),
      );
    } else if (!measured) checks.push(notComparable(subject, value.value, 'mW/cm²', 'the peak was not measured'));
    else checks.push(checkQuantity(subject, value.value, measured, 'under', reach));
  }

  if (claims.power) {
    const measured = figure('mains-draw-combined');
    const subject = 'mains draw';
    checks.push(
      measured
        ? checkQuantity(subject, claims.power.value, measured, 'over')
        : notComparable(subject, claims.power.value, 'W', 'the draw was not measured'),
    );
  }
  return checks;
}
