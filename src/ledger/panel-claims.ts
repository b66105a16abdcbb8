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
import { CHANNELS } from '../measure/modes.ts';
import type { Statement } from '../measure/statement.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    'claimed-peak-not-seen': object;
    'claimed-without-distance': object;
    /** The claim's distance as it was written, and the session's, cm. */
    'claimed-elsewhere': { claimed: string; measured: number };
    'peak-not-measured': object;
    'draw-not-measured': object;
  }
}

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
  for (const channel of CHANNELS) {
    const measured = figure(`wavelength-${channel}`);
    const check = measured && checkWavelength(claimedPeaks, measured);
    if (check) checks.push(check);
  }
  const compared = new Set(checks.map((it) => it.claimed));
  for (const peak of claimedPeaks) {
    if (!compared.has(peak)) checks.push(notComparable('wavelength', peak, 'nm', { code: 'claimed-peak-not-seen' }));
  }

  if (claims.irradiance) {
    const { value, distance: at } = claims.irradiance;
    const measured = figure('peak-irradiance-combined');
    const reach = at && distanceReach(distance, at.value);
    const without = (because: Statement) => notComparable('irradiance', value.value, 'mW/cm²', because);
    if (!at) checks.push(without({ code: 'claimed-without-distance' }));
    else if (!reach) checks.push(without({ code: 'claimed-elsewhere', claimed: at.written, measured: distance }));
    else if (!measured) checks.push(without({ code: 'peak-not-measured' }));
    else checks.push(checkQuantity('irradiance', value.value, measured, 'under', reach));
  }

  if (claims.power) {
    const measured = figure('mains-draw-combined');
    checks.push(
      measured
        ? checkQuantity('mains-draw', claims.power.value, measured, 'over')
        : notComparable('mains-draw', claims.power.value, 'W', { code: 'draw-not-measured' }),
    );
  }
  return checks;
}
