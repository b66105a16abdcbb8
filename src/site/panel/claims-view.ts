import type { PanelEntry } from '../../ledger/ledger.ts';
import { claimText } from '../../words/claim-text.ts';
import { type Dagger, markOf } from '../../words/flags.ts';
import { fixed, showFigure } from '../../words/format.ts';
import { panelAddress } from '../shared/panel-address.ts';

/** What the maker says of a panel, and what the bench found. */
export interface ClaimsView {
  claims: Array<{
    subject: string;
    claimed: string;
    measured: string;
    outcome: string;
    address?: string;
    dagger?: Dagger;
  }>;
  unchecked: Array<{ name: string; text: string }>;
}

/** A panel's claims held against its measurements, and those that nothing was held against. */
export function claimsView(panel: PanelEntry, currency: string): ClaimsView {
  const calculation = `${panelAddress(panel.slug)}methodology/`;
  return {
    claims: panel.claims.map((it) => {
      const { subject, text } = claimText(it);
      return {
        subject,
        claimed: `${fixed(it.claimed, Number.isInteger(it.claimed) ? 0 : 1)} ${it.unit}`,
        measured: it.measured ? showFigure(it.measured, currency).text : 'not measured',
        outcome: text,
        ...(it.measured && { address: `${calculation}#${it.measured.metric}` }),
        ...marked(it.measured),
      };
    }),
    unchecked: uncheckedClaims(panel),
  };
}

function marked(it: PanelEntry['claims'][number]['measured']): { dagger?: Dagger } {
  const dagger = markOf(it ?? undefined);
  return dagger ? { dagger } : {};
}

function uncheckedClaims({ data: { claims }, current }: PanelEntry): Array<{ name: string; text: string }> {
  if (!claims) return [];
  const isRuledOut = current?.light.flags.some((it) => it.check === 'beam-claim');
  const beam = isRuledOut
    ? ', which the readings rule out'
    : current?.light.model
      ? ', which the readings leave possible'
      : '';
  const shares = (claims.wavelengths ?? [])
    .filter((it) => it.share)
    .map((it) => `${fixed(it.share?.value ?? 0, 0)} % at ${fixed(it.peak.value, 0)} nm`);
  return [
    ...(shares.length > 0 ? [{ name: 'Shares', text: shares.join(', ') }] : []),
    ...(claims.beamAngle ? [{ name: 'Beam angle', text: `${claims.beamAngle.written}${beam}` }] : []),
    ...(claims.ledCount ? [{ name: 'LEDs', text: `${claims.ledCount}` }] : []),
  ];
}
