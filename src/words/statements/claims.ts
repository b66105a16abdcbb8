import type { ClaimSubject, ComparedClaim } from '../../measure/irradiance/claims.ts';
import { WAVELENGTH_TOLERANCE_NM } from '../../measure/thresholds.ts';
import { rounded } from '../rounded.ts';
import type { WordsOf } from '../speaker.ts';

/** What a claim is of: `irradiance`, `mains draw`, `wavelength 660 nm`. */
export function subjectText({ subject, claimed }: { subject: ClaimSubject; claimed: number }): string {
  const names = { irradiance: 'irradiance', 'mains-draw': 'mains draw', wavelength: `wavelength ${claimed} nm` };
  return names[subject];
}

/** How a claim held up, with its number: `41 % under the claim: missed`. */
export function comparedText({
  subject,
  outcome,
  difference,
  tolerance = WAVELENGTH_TOLERANCE_NM,
}: Pick<ComparedClaim, 'subject' | 'outcome' | 'difference' | 'tolerance'>): string {
  const size = Math.abs(difference);
  if (subject === 'wavelength') {
    const distance = `${Number(size.toFixed(1))} nm`;
    return outcome === 'within'
      ? `held, ${distance} from it (tolerance ${rounded(tolerance)} nm)`
      : `off by ${distance}, to the ${difference > 0 ? 'longer' : 'shorter'} side`;
  }
  if (outcome === 'within') return 'held, within the uncertainty';
  const beside = `${rounded(size, 2)} % ${difference > 0 ? 'over' : 'under'} the claim`;
  return outcome === 'missed' ? `${beside}: missed` : beside;
}

/** What is told of claims. */
export const CLAIM_WORDS: WordsOf<
  | 'claim-not-held'
  | 'claimed-peak-not-seen'
  | 'claimed-peak-found'
  | 'claimed-peak-blended'
  | 'claimed-peak-missing'
  | 'claimed-peak-out-of-reach'
  | 'claimed-without-distance'
  | 'claimed-elsewhere'
  | 'peak-not-measured'
  | 'draw-not-measured'
> = {
  'claim-not-held': (claim) => {
    const { subject, claimed, unit, measured } = claim;
    const what = subjectText(claim);
    const maker = subject === 'wavelength' ? `a ${what}` : `${what} of ${rounded(claimed)} ${unit}`;
    return `The maker claims ${maker}; measured ${rounded(measured)} ${unit}: ${comparedText(claim)}.`;
  },
  'claimed-peak-not-seen': () => 'not seen as a peak of its own',
  'claimed-peak-found': ({ difference, tolerance }) =>
    `${comparedText({ subject: 'wavelength', outcome: Math.abs(difference) > tolerance ? 'off' : 'within', difference, tolerance })}, in the spectrum`,
  'claimed-peak-blended': () => 'within a peak that another claim has too: the two can’t be told apart',
  'claimed-peak-missing': () => 'no peak of its own in the spectrum',
  'claimed-peak-out-of-reach': () => 'beyond what the spectrometer sees',
  'claimed-without-distance': () => 'claimed without a distance',
  'claimed-elsewhere': ({ claimed, measured }) => `claimed at ${claimed}, measured at ${measured} cm`,
  'peak-not-measured': () => 'the peak was not measured',
  'draw-not-measured': () => 'the draw was not measured',
};
