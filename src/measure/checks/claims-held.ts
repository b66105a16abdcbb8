import type { ComparedClaim } from '../irradiance/claims.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** A claim with the number that was measured. */
    'claim-not-held': Omit<ComparedClaim, 'measured'> & { measured: number };
  }
}

/** A claim that the panel is under or over by more than the uncertainty, or a wavelength off its claim. */
export const claimsHeld: Check = {
  id: 'claims-held',
  run: ({ claims }) =>
    claims.flatMap((it): RaisedFlag[] => {
      if (it.outcome === 'within' || it.outcome === 'not-comparable') return [];
      const { measured, ...claim } = it;
      return [
        {
          severity: 'note',
          finding: { code: 'claim-not-held', ...claim, measured: measured.value },
          concerns: [measured.metric],
        },
      ];
    }),
};
