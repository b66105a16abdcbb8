import type { SpectrumAnalysis } from './analysis.ts';
import type { Peak } from './peaks.ts';
import type { Span } from './spectrum.ts';

/** A claimed wavelength is looked for this far from where it is claimed, as multiple of the tolerance. Our own choice. */
const LOOKED_FOR = 4;

/** A wavelength as a maker claims it. */
export interface ClaimedWavelength {
  /** nm */
  peak: number;
  /** Of the power or of the LEDs, as printed, %; undefined where none is claimed. */
  share: number | undefined;
}

/** A peak of the spectrum, or a part of one, as claims are held against it. */
export interface FoundWavelength {
  /** nm, with its standard uncertainty from the spectrum and from the instrument's scale. */
  wavelength: number;
  uncertainty: number;
  /** Share of all light that the instrument saw, %, with its standard uncertainty; undefined where it can't be told. */
  share: number | undefined;
  shareUncertainty: number | undefined;
}

/**
 * How a claimed wavelength held up. `within` and `off`: a peak is there, within the tolerance or not; `blended`: it lies
 * within the width of a peak that another claim has, so that the two can't be told apart; `missing`: no peak is near;
 * `out-of-reach`: the instrument does not see that far.
 */
export type WavelengthOutcome = 'within' | 'off' | 'blended' | 'missing' | 'out-of-reach';

/** One claimed wavelength beside what was found. */
export interface AuditedWavelength {
  claimed: ClaimedWavelength;
  outcome: WavelengthOutcome;
  /** Undefined where none is near, or out of reach. */
  found: FoundWavelength | undefined;
  /** Found less claimed, nm. */
  difference: number | undefined;
  /** Found less claimed share, percentage points; undefined where either is not known, or peaks are blended. */
  shareDifference: number | undefined;
  /** The shares differ by more than the tolerance and twice the uncertainty. */
  isShareApart: boolean;
}

/** A maker's claims of wavelengths held against a spectrum. */
export interface ClaimsAudit {
  claims: readonly AuditedWavelength[];
  /** Peaks that no claim names, strongest first. */
  extra: readonly FoundWavelength[];
  tolerance: AuditTolerance;
}

export interface AuditTolerance {
  /** nm */
  wavelength: number;
  /** Percentage points. */
  share: number;
}

/** What of an instrument the audit needs. */
export interface AuditScale {
  /** Standard uncertainty of its wavelengths, nm. */
  wavelength: number;
  /** Relative standard uncertainty of one part of the spectrum against another; undefined where shares can't be told. */
  response: number | undefined;
}

/**
 * Holds claims against a spectrum: each claim gets the peak nearest to it, the closest pairs first, and none gets two. A
 * peak that is made up of parts counts as its parts.
 */
export function auditClaims(
  claims: readonly ClaimedWavelength[],
  analysis: SpectrumAnalysis,
  tolerance: AuditTolerance,
  scale: AuditScale,
): ClaimsAudit {
  const found = analysis.peaks.flatMap((peak) => foundIn(peak, scale));
  const pairs = claims
    .flatMap((claim, i) => found.map((it, k) => ({ i, k, apart: Math.abs(it.wavelength - claim.peak) })))
    .filter((it) => it.apart <= LOOKED_FOR * tolerance.wavelength)
    .toSorted((a, b) => a.apart - b.apart);
  const matched = new Map<number, number>();
  for (const { i, k } of pairs) {
    if (!matched.has(i) && ![...matched.values()].includes(k)) matched.set(i, k);
  }
  const taken = new Set(matched.values());
  const audited = claims.map((claimed, i): AuditedWavelength => {
    const match = found[matched.get(i) ?? -1];
    const none = { claimed, found: undefined, difference: undefined, shareDifference: undefined, isShareApart: false };
    const host = analysis.peaks.find((peak) => peak.width && isWithin(peak.width, claimed.peak));
    const isShared = host !== undefined && claims.some((it, k) => k !== i && isWithin(host.width, it.peak));
    const isBlended = isShared && host.parts.length < claims.filter((it) => isWithin(host.width, it.peak)).length;
    if (isBlended) return { ...none, outcome: 'blended' };
    if (!match) return { ...none, outcome: isWithin(analysis.reach, claimed.peak) ? 'missing' : 'out-of-reach' };
    const difference = match.wavelength - claimed.peak;
    const shareDifference =
      claimed.share === undefined || match.share === undefined ? undefined : match.share - claimed.share;
    return {
      claimed,
      found: match,
      difference,
      outcome: Math.abs(difference) > tolerance.wavelength ? 'off' : 'within',
      shareDifference,
      isShareApart:
        shareDifference !== undefined &&
        Math.abs(shareDifference) > tolerance.share &&
        Math.abs(shareDifference) > 2 * (match.shareUncertainty ?? 0),
    };
  });
  const blended = analysis.peaks.filter((peak) =>
    audited.some((it) => it.outcome === 'blended' && isWithin(peak.width, it.claimed.peak)),
  );
  const extra = found.filter((it, k) => !taken.has(k) && !blended.some((peak) => isWithin(peak.width, it.wavelength)));
  return { claims: audited, extra: extra.toSorted((a, b) => (b.share ?? 0) - (a.share ?? 0)), tolerance };
}

function foundIn(peak: Peak, { wavelength, response }: AuditScale): FoundWavelength[] {
  // How a peak's light is shared out between its parts is known to about a half of each.
  const parts = peak.parts.length > 1 ? peak.parts.map((it) => ({ ...it, shareError: it.share / 2 })) : [peak];
  return parts.map((it) => {
    const own = it.shareError;
    return {
      wavelength: it.wavelength,
      uncertainty: Math.hypot(it.wavelengthError, wavelength),
      share: response === undefined ? undefined : 100 * it.share,
      // A part that is read too high raises the whole too: s (1 - s).
      shareUncertainty:
        response === undefined ? undefined : 100 * Math.hypot(own, response * it.share * (1 - it.share)),
    };
  });
}

const isWithin = (span: Span | undefined, nm: number) => span !== undefined && nm >= span.from && nm <= span.to;
