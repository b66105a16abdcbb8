import type { RankBasis } from '../../measure/catalogue/rows.ts';
import type { Changes, Named, TieChange } from './changes.ts';
import { isRanked, type PanelState, type RankState } from './guide-state.ts';

/** What rankings are compared by: less than all that a guide says of a panel. */
export type RankedPanel = Pick<PanelState, 'slug' | 'name' | 'sizeClass' | 'ranks'>;

/** Published panels by their slugs, with their places. */
export interface RankedGuide {
  panels: ReadonlyMap<string, RankedPanel>;
}

/** What differs between the rankings of two guides. */
export type RankChanges = Pick<Changes, 'newPanels' | 'ranks' | 'ties'>;

const RANK_BASES = ['optical', 'emitted'] as const satisfies readonly RankBasis[];

/** A panel's name alone. */
export const named = ({ slug, name }: Named): Named => ({ slug, name });

/** Places, ranges and ties that differ, and panels that are new among the ranked. */
export function rankChanges(was: RankedGuide, now: RankedGuide): RankChanges {
  const both = [...now.panels.values()].flatMap((panel) => {
    const before = was.panels.get(panel.slug);
    return before ? [{ was: before, now: panel }] : [];
  });
  return {
    newPanels: [...now.panels.values()].filter((it) => !was.panels.has(it.slug)).map(named),
    ranks: RANK_BASES.flatMap((basis) =>
      both
        .filter((it) => !isSameRank(it.was.ranks[basis], it.now.ranks[basis]))
        .map((it) => ({
          ...named(it.now),
          sizeClass: it.now.sizeClass,
          basis,
          was: it.was.ranks[basis],
          now: it.now.ranks[basis],
        })),
    ),
    ties: RANK_BASES.flatMap((basis) => tieChanges(was, now, basis)),
  };
}

function isSameRank(one: RankState, other: RankState): boolean {
  // Why there is none may change with the day; that there is none has not.
  if (!isRanked(one) || !isRanked(other)) return isRanked(one) === isRanked(other);
  return one.place === other.place && one.range?.[0] === other.range?.[0] && one.range?.[1] === other.range?.[1];
}

function tieChanges(was: RankedGuide, now: RankedGuide, basis: RankBasis): TieChange[] {
  const isMoved = (slug: string) => tiedWith(was, slug, basis).join() !== tiedWith(now, slug, basis).join();
  const moved = new Set([...was.panels.keys(), ...now.panels.keys()].filter(isMoved));
  const [before, after] = [tiesOf(was, basis, moved), tiesOf(now, basis, moved)];
  const isThere = ([one, other]: TieChange['panels'], state: RankedGuide) =>
    state.panels.has(one.slug) && state.panels.has(other.slug);
  const only = (these: typeof before, those: typeof before, state: RankedGuide, change: TieChange['change']) =>
    [...these].flatMap(([key, panels]): TieChange[] =>
      // A tie with a panel that is new or gone is told by that.
      those.has(key) || !isThere(panels, state) ? [] : [{ basis, change, panels }],
    );
  return [...only(after, before, was, 'made'), ...only(before, after, now, 'undone')];
}

function tiedWith({ panels }: RankedGuide, slug: string, basis: RankBasis): readonly string[] {
  const rank = panels.get(slug)?.ranks[basis];
  return rank && isRanked(rank) ? rank.tiedWith : [];
}

/**
 * Pairs of panels that tie, each once.
 *
 * @param moved panels whose ties differ between two guides: a hundred others tie with each of a thousand, as they did
 */
function tiesOf(
  state: RankedGuide,
  basis: RankBasis,
  moved: ReadonlySet<string>,
): Map<string, readonly [Named, Named]> {
  const ties = new Map<string, readonly [Named, Named]>();
  for (const panel of state.panels.values()) {
    if (!moved.has(panel.slug)) continue;
    for (const slug of tiedWith(state, panel.slug, basis)) {
      const other = state.panels.get(slug);
      if (other && panel.slug < slug) ties.set(`${panel.slug} ${slug}`, [named(panel), named(other)]);
    }
  }
  return ties;
}
