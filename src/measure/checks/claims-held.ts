import { type Check, words } from './check.ts';

export const claimsHeld: Check = {
  id: 'claims-held',
  guards: 'A claim that the panel is under or over by more than the uncertainty, or a wavelength off its claim.',
  run: ({ claims }) =>
    claims
      .filter((it) => it.outcome === 'missed' || it.outcome === 'apart' || it.outcome === 'off')
      .map((it) => ({
        check: 'claims-held',
        severity: 'note' as const,
        finding: `The maker claims ${it.outcome === 'off' ? `a ${it.subject}` : `${it.subject} of ${words(it.claimed)} ${it.unit}`}; measured ${words(it.measured?.value ?? Number.NaN)} ${it.unit}: ${it.text}.`,
        concerns: it.measured ? [it.measured.metric] : [],
      })),
};
