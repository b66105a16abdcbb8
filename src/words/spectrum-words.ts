import type { AuditedWavelength, ClaimsAudit, FoundWavelength } from '../measure/spectrum/claims-audit.ts';
import type { Peak } from '../measure/spectrum/peaks.ts';
import { fixed } from './format.ts';
import { rounded } from './rounded.ts';

/** A wavelength as sentences have it: whole nanometres. */
export const nmText = (nm: number) => `${fixed(nm, 0)} nm`;

const percentText = (share: number) => `${rounded(share, 2)} %`;

/** `660 nm, 810 nm and 850 nm` */
function listed(all: readonly string[]): string {
  return all.length < 2 ? (all[0] ?? '') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
}

/** What became of a maker's claimed wavelengths, in sentences; the answer first. */
export function auditWords({ claims, extra, tolerance }: ClaimsAudit): string {
  const of = (outcome: AuditedWavelength['outcome']) =>
    claims.filter((it) => it.outcome === outcome).map((it) => nmText(it.claimed.peak));
  const [within, blended, missing, unseen] = [of('within'), of('blended'), of('missing'), of('out-of-reach')];
  const both = within.length === 2 && claims.length === 2 ? 'Both claimed wavelengths, ' : '';
  const are = within.length > 1 ? 'are' : 'is';
  return [
    within.length > 0 &&
      `${both}${listed(within)}${both && ','} ${are} there, within ${rounded(tolerance.wavelength)} nm.`,
    ...claims.filter((it) => it.outcome === 'off').map(offWords),
    missing.length > 0 &&
      `${listed(missing)}, which the maker claims, ${missing.length > 1 ? 'have' : 'has'} no peak of ${missing.length > 1 ? 'their' : 'its'} own.`,
    blended.length > 0 && `${listed(blended)} lie within one peak, where they can’t be told apart.`,
    unseen.length > 0 && `${listed(unseen)} ${unseen.length > 1 ? 'lie' : 'lies'} beyond what the spectrometer sees.`,
    extra.length > 0 && extraWords(extra),
    ...claims.filter((it) => it.isShareApart).map(shareWords),
  ]
    .filter(Boolean)
    .join(' ');
}

function offWords({ claimed, found, difference = 0 }: AuditedWavelength): string {
  return `${nmText(claimed.peak)} is claimed, ${nmText(found?.wavelength ?? 0)} was found: ${rounded(Math.abs(difference), 2)} nm to the ${difference > 0 ? 'longer' : 'shorter'} side.`;
}

function shareWords({ claimed, found }: AuditedWavelength): string {
  return `${percentText(claimed.share ?? 0)} is claimed at ${nmText(claimed.peak)}; ${percentText(found?.share ?? 0)} of the light was found there.`;
}

function extraWords(extra: readonly FoundWavelength[]): string {
  const each = extra.map(
    ({ wavelength, share }) =>
      `${nmText(wavelength)}${share === undefined ? '' : ` (${percentText(share)} of the light)`}`,
  );
  const [a, them] = extra.length > 1 ? ['peaks', 'them'] : ['a peak', 'it'];
  return `The spectrum also has ${a} at ${listed(each)}; the maker does not name ${them}.`;
}

/** Peaks of a spectrum where nothing is claimed: `Peaks at 661 nm and 852 nm.` */
export function peaksWords(peaks: readonly Peak[]): string {
  if (peaks.length === 0) return 'No peak stands out.';
  return `${peaks.length > 1 ? 'Peaks' : 'A peak'} at ${listed(peaks.map((it) => nmText(it.wavelength)))}.`;
}

/** How one claim came out, in a cell of a table. */
export function auditOutcome({ outcome, difference }: AuditedWavelength, tolerance: number): string {
  switch (outcome) {
    case 'within':
      return `within ${rounded(tolerance)} nm`;
    case 'off':
      return `off by ${rounded(Math.abs(difference ?? 0), 2)} nm`;
    case 'blended':
      return 'not told apart from its neighbour';
    case 'missing':
      return 'no peak of its own';
    case 'out-of-reach':
      return 'beyond the spectrometer’s range';
  }
}
