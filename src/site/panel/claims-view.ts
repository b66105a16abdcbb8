import { madeOf } from '../../ledger/files/file-maker.ts';
import type { PanelEntry } from '../../ledger/ledger.ts';
import { isCode } from '../../measure/statement.ts';
import { carriedWords } from '../../words/carried-words.ts';
import { claimText } from '../../words/claim-text.ts';
import { type Dagger, markOf } from '../../words/flags.ts';
import { fixed, showDate, showFigure } from '../../words/format.ts';
import { nmText } from '../../words/spectrum-words.ts';
import { calculationPage } from '../shared/shown-figure.ts';

/** What the maker says of a panel, and what the bench found. */
export interface ClaimsView {
  claims: Array<{
    subject: string;
    claimed: string;
    measured: string;
    outcome: string;
    address?: string;
    dagger?: Dagger;
    /** From which day the reading is, where it was not taken again. */
    carried?: string;
  }>;
  unchecked: string[];
  /** Day on which the claims were read; undefined where nobody wrote it down. */
  claimsRead: string | undefined;
}

/** A panel's claims held against its measurements, and those that nothing was held against. */
export function claimsView(panel: PanelEntry, currency: string): ClaimsView {
  return {
    claims: panel.claims.map((it) => {
      const { subject, text } = claimText(it);
      return {
        // Which one stands beside it, as claimed.
        subject: it.subject === 'wavelength' ? 'wavelength' : subject,
        claimed: `${fixed(it.claimed, Number.isInteger(it.claimed) ? 0 : 1)} ${it.unit}`,
        measured: it.measured ? showFigure(it.measured, currency).text : foundText(it),
        outcome: text,
        ...(it.measured && { address: `${calculationPage(it.measured.metric)}/#${it.measured.metric}` }),
        ...marked(it.measured),
      };
    }),
    unchecked: uncheckedClaims(panel),
    claimsRead: panel.data.claims?.date === undefined ? undefined : showDate(panel.data.claims.date),
  };
}

/** What was found of a claim that no figure stands beside. */
function foundText(it: PanelEntry['claims'][number]): string {
  return it.outcome === 'not-comparable' && isCode(it.because, 'claimed-peak-found')
    ? nmText(it.because.wavelength)
    : 'not measured';
}

function marked(it: PanelEntry['claims'][number]['measured']): { dagger?: Dagger; carried?: string } {
  const dagger = markOf(it ?? undefined);
  const carried = carriedWords(it ?? undefined);
  return { ...(dagger && { dagger }), ...(carried && { carried }) };
}

/** Each in a few words: `240 LEDs`. */
function uncheckedClaims({ data: { claims }, current }: PanelEntry): string[] {
  if (!claims) return [];
  const isRuledOut = current?.light.flags.some((it) => it.check === 'beam-claim');
  const beam = isRuledOut
    ? ', which the readings rule out'
    : current?.light.model
      ? ', which the readings leave possible'
      : '';
  // What a spectrum tells of shares stands beside it.
  const hasShares =
    current !== undefined &&
    madeOf(current.made, 'spectra')?.view.audit?.claims.some((it) => it.found?.share !== undefined);
  const shares = (hasShares ? [] : (claims.wavelengths ?? []))
    .filter((it) => it.share)
    .map((it) => `${fixed(it.share?.value ?? 0, 0)} % at ${fixed(it.peak.value, 0)} nm`);
  const { beamAngle, ledCount } = claims;
  return [
    ...(shares.length > 0 ? [shares.join(', ')] : []),
    ...(beamAngle ? [`a beam angle of ${fixed(beamAngle.value, beamAngle.value % 1 === 0 ? 0 : 1)}°${beam}`] : []),
    ...(ledCount ? [`${ledCount} LED${ledCount === 1 ? '' : 's'}`] : []),
  ];
}
