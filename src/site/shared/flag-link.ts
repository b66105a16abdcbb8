import { standardAnchor } from '../../content/rules/site-addresses.ts';
import type { Flag } from '../../measure/figure.ts';

/** Where what a flag tells of can be looked at, with the words of the link; undefined where the flag says it all. */
export function flagLink({ finding }: Pick<Flag, 'finding'>): { address: string; text: string } | undefined {
  if (finding.code !== 'standard-beyond-limits' && finding.code !== 'standard-not-read') return undefined;
  return { address: `/instruments/#${standardAnchor(finding.id)}`, text: 'Its control chart' };
}
