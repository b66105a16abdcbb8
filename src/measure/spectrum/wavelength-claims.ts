import type { Flag } from '../figure.ts';
import { INFRARED_FROM_NM } from '../irradiance/claims.ts';
import type { MetricId } from '../metrics.ts';
import type { ClaimsAudit } from './claims-audit.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Claimed wavelength, nm; how far it was looked for, nm. */
    'claimed-wavelength-missing': { claimed: number; within: number };
    /** A found peak that no claim names, nm; its share, %, where it is known. */
    'peak-not-claimed': { wavelength: number; share: number | undefined };
    /** nm; shares in %. */
    'claimed-share-apart': { claimed: number; claimedShare: number; share: number };
  }
}

/** A claimed wavelength is looked for so far from it, as multiple of the tolerance: see `auditClaims`. */
const LOOKED_FOR = 4;

/** What of a maker's claims of wavelengths the spectrum does not bear out. */
export function wavelengthClaims({ claims, extra, tolerance }: ClaimsAudit): Flag[] {
  const flag = (nm: number, finding: Flag['finding']): Flag => ({
    check: 'wavelength-claims',
    severity: 'note',
    finding,
    concerns: [concerned(nm)],
    at: ['claims', 'wavelengths'],
    isNotHandedOn: true,
  });
  return [
    ...claims.flatMap(({ claimed, outcome, found, isShareApart }): Flag[] => {
      if (outcome === 'missing') {
        const within = LOOKED_FOR * tolerance.wavelength;
        return [flag(claimed.peak, { code: 'claimed-wavelength-missing', claimed: claimed.peak, within })];
      }
      const { share: claimedShare } = claimed;
      return isShareApart && claimedShare !== undefined && found?.share !== undefined
        ? [
            flag(claimed.peak, {
              code: 'claimed-share-apart',
              claimed: claimed.peak,
              claimedShare,
              share: found.share,
            }),
          ]
        : [];
    }),
    ...extra.map(({ wavelength, share }) => flag(wavelength, { code: 'peak-not-claimed', wavelength, share })),
  ];
}

const concerned = (nm: number): MetricId => (nm >= INFRARED_FROM_NM ? 'wavelength-near-infrared' : 'wavelength-red');
