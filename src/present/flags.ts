import type { Flag } from '../measure/figure.ts';

/**
 * Printers' marks for flags: a dagger for a doubt, a double dagger for what cannot be. A note gets none in
 * tables; it stands on the panel's page.
 */
export function daggerOf(flags: readonly Flag[]): { mark: string; label: string } | undefined {
  if (flags.some((flag) => flag.severity === 'impossible'))
    return { mark: '‡', label: 'impossible as it stands, see the flags' };
  if (flags.some((flag) => flag.severity === 'doubt')) return { mark: '†', label: 'in doubt, see the flags' };
  return undefined;
}

/** The severity in words. */
export const SEVERITY_WORDS: Record<Flag['severity'], string> = {
  note: 'Note',
  doubt: '† Doubt',
  impossible: '‡ Impossible',
};
