import type { Ledger, RankBasis } from '../../ledger/ledger.ts';

/** What the guide's own page ranks by: the tester's choice. */
export function defaultBasis({ rankBy }: Pick<Ledger['guide'], 'rankBy'>): RankBasis {
  return rankBy === 'emitted' ? 'emitted' : 'optical';
}

/** Where a ranking stands whatever the tester's choice. */
const ADDRESSES = { optical: '/frame/', emitted: '/emitted/' } as const satisfies Record<RankBasis, string>;
const WORDS = { optical: 'in the frame', emitted: 'that leaves the LEDs' } as const satisfies Record<RankBasis, string>;

/** The address that a ranking is known by: the guide's own for what it ranks by. */
export function basisAddress(guide: Pick<Ledger['guide'], 'rankBy'>, basis: RankBasis): string {
  return basis === defaultBasis(guide) ? '/' : ADDRESSES[basis];
}

/** The ways from one ranking to the other. */
export function basisLinks(guide: Pick<Ledger['guide'], 'rankBy'>, shown: RankBasis) {
  return (['optical', 'emitted'] as const).map((basis) => ({
    href: basisAddress(guide, basis),
    words: WORDS[basis],
    isShown: basis === shown,
  }));
}
