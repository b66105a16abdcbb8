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
import type { ClaimsAudit } from '../measure/spectrum/claims-audit.ts';
import type { Statement } from '../measure/statement.ts';
import { WAVELENGTH_TOLERANCE_NM } from '../measure/thresholds.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    'claimed-peak-not-seen': object;
    /** A peak of the spectrum that is not the highest of its channel, nm; found less claimed, and the tolerance, nm. */
    'claimed-peak-found': { wavelength: number; difference: number; tolerance: number };
    'claimed-peak-blended': object;
    'claimed-peak-missing': object;
    'claimed-peak-out-of-reach': object;
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
 * @param tolerance of wavelengths, nm
 * @param audit of the claimed wavelengths, where there is a spectrum
 */
export function panelClaims(
  panel: Panel,
  figures: FigureMap,
  distance: number,
  tolerance: number = WAVELENGTH_TOLERANCE_NM,
  audit?: ClaimsAudit,
): ClaimCheck[] {
  const { claims } = panel;
  if (!claims) return [];
  const checks: ClaimCheck[] = [];
  const figure = figureFinder(figures);

  checks.push(...(audit ? auditedWavelengths(audit, figure) : channelWavelengths(panel, figure, tolerance)));

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

type Finder = ReturnType<typeof figureFinder>;

/** The peak of each channel against the nearest claim of its side. */
function channelWavelengths({ claims }: Panel, figure: Finder, tolerance: number): ClaimCheck[] {
  const claimedPeaks = (claims?.wavelengths ?? []).map((it) => it.peak.value);
  const checks = CHANNELS.flatMap((channel) => {
    const measured = figure(`wavelength-${channel}`);
    return (measured && checkWavelength(claimedPeaks, measured, tolerance)) ?? [];
  });
  const compared = new Set(checks.map((it) => it.claimed));
  return [
    ...checks,
    ...claimedPeaks
      .filter((it) => !compared.has(it))
      .map((peak) => notComparable('wavelength', peak, 'nm', { code: 'claimed-peak-not-seen' })),
  ];
}

/** A peak of the spectrum this near to a channel's own is that one, nm. */
const SAME_PEAK = 2;

/** Each claimed wavelength as the spectrum bears it out; the highest peak of a channel by its figure. */
function auditedWavelengths(
  { claims, tolerance: { wavelength: tolerance } }: ClaimsAudit,
  figure: Finder,
): ClaimCheck[] {
  return claims.map(({ claimed: { peak }, found, outcome, difference }): ClaimCheck => {
    const without = (because: Statement) => notComparable('wavelength', peak, 'nm', because);
    if (outcome === 'blended') return without({ code: 'claimed-peak-blended' });
    if (outcome === 'out-of-reach') return without({ code: 'claimed-peak-out-of-reach' });
    if (!found || difference === undefined) return without({ code: 'claimed-peak-missing' });
    const measured = CHANNELS.map((it) => figure(`wavelength-${it}`)).find(
      (it) => it && Math.abs(it.value - found.wavelength) <= SAME_PEAK,
    );
    const check = measured && checkWavelength([peak], measured, tolerance);
    return check ?? without({ code: 'claimed-peak-found', wavelength: found.wavelength, difference, tolerance });
  });
}
