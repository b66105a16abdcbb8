import type { ClaimCheck } from '../measure/irradiance/claims.ts';
import { say } from './say.ts';
import { comparedText, subjectText } from './statements/claims.ts';

/** A claim in words: what it is of, the kind of outcome, and the outcome with its number or with the reason. */
export function claimText(claim: ClaimCheck): { subject: string; outcome: string; text: string } {
  const subject = subjectText(claim);
  if (claim.outcome !== 'not-comparable') return { subject, outcome: claim.outcome, text: comparedText(claim) };
  const outcome = 'not comparable';
  return { subject, outcome, text: `${outcome}: ${say(claim.because)}` };
}
