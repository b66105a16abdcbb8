import type { Changes, FigureChange } from './changes.ts';
import { named, rankChanges } from './compare-ranks.ts';
import { type GuideState, isRanked, type PanelState, type RankState, type SessionState } from './guide-state.ts';
import { isMoney, moveOf } from './moved.ts';

/**
 * What differs between a guide that was published and the one that would be now. Pure: the same two states, the same
 * changes, in the same order.
 */
export function compareStates(published: GuideState, now: GuideState): Changes {
  const was = underNewNames(published, now.renamed);
  const both = [...now.panels.values()].flatMap((panel) => {
    const before = was.panels.get(panel.slug);
    return before ? [{ was: before, now: panel }] : [];
  });
  const currency = was.currency === now.currency ? null : { was: was.currency, now: now.currency };
  const sessions = both.flatMap(sessionPairs);
  const { figures, lastDigits } = movedFigures(sessions, currency ? undefined : now.currency, now.currency);
  return {
    was: { builtFor: was.builtFor },
    now: { builtFor: now.builtFor },
    currency,
    gonePanels: [...was.panels.values()]
      .filter((it) => !now.panels.has(it.slug))
      .map((it) => ({ ...named(it), keepsPage: now.pages.has(`/panels/${it.slug}/`) })),
    renamedPanels: [...now.renamed].flatMap(([wasSlug, slug]) => {
      const panel = published.panels.has(wasSlug) && now.panels.get(slug);
      return panel ? [{ ...named(panel), wasSlug }] : [];
    }),
    ...pageChanges(published, now),
    methods: methodChanges(was, now),
    ...rankChanges(was, now),
    prices: both
      .filter((it) => JSON.stringify(it.was.price) !== JSON.stringify(it.now.price))
      .map((it) => ({ ...named(it.now), was: it.was.price ?? null, now: it.now.price ?? null })),
    newSessions: both.flatMap((it) =>
      datesOnlyIn(it.now, it.was).map((date) => ({
        ...named(it.now),
        date,
        isNewest: it.now.sessions[0]?.date === date,
      })),
    ),
    goneSessions: both.flatMap((it) => datesOnlyIn(it.was, it.now).map((date) => ({ ...named(it.now), date }))),
    figures,
    lastDigits,
    flags: sessions.flatMap(flagChanges),
    claims: sessions.filter((it) => it.isTop).flatMap(claimChanges),
  };
}

/** True where there is nothing to tell. */
export function isUnchanged(changes: Changes): boolean {
  const { was: _was, now: _now, currency, lastDigits, ...lists } = changes;
  return !currency && lastDigits === 0 && Object.values(lists).every((it) => it.length === 0);
}

/** The earlier guide with panels under the names that they have now, so that a new name is no new panel. */
function underNewNames(was: GuideState, renamed: GuideState['renamed']): GuideState {
  if (renamed.size === 0) return was;
  const nameOf = (slug: string) => renamed.get(slug) ?? slug;
  const rank = (it: RankState): RankState => (isRanked(it) ? { ...it, tiedWith: it.tiedWith.map(nameOf) } : it);
  const panels = [...was.panels.values()].map(
    (it): PanelState => ({
      ...it,
      slug: nameOf(it.slug),
      ranks: { optical: rank(it.ranks.optical), emitted: rank(it.ranks.emitted) },
    }),
  );
  return { ...was, panels: new Map(panels.map((it) => [it.slug, it])) };
}

/** Two sessions that are set against each other: the newest of both, and earlier ones by their days. */
interface SessionPair {
  panel: PanelState;
  was: SessionState;
  now: SessionState;
  /** The newest of both, whose figures are the panel's. */
  isTop: boolean;
}

function sessionPairs({ was, now }: { was: PanelState; now: PanelState }): SessionPair[] {
  const [[wasTop, ...wasOlder], [nowTop, ...nowOlder]] = [was.sessions, now.sessions];
  if (!wasTop || !nowTop) return [];
  const older = nowOlder.flatMap((session): SessionPair[] => {
    // One that was at the top has figures of price and size besides, which belong to the panel.
    const before = wasOlder.find((it) => it.date === session.date);
    return before ? [{ panel: now, was: before, now: session, isTop: false }] : [];
  });
  return [{ panel: now, was: wasTop, now: nowTop, isTop: true }, ...older];
}

/** @param moneyIn currency of both; undefined where they have none in common */
function movedFigures(pairs: readonly SessionPair[], moneyIn: string | undefined, currency: string) {
  const figures: FigureChange[] = [];
  let lastDigits = 0;
  for (const { panel, was, now, isTop } of pairs) {
    for (const [metric, later] of now.figures) {
      const before = was.figures.get(metric);
      if (!before || (moneyIn === undefined && isMoney(metric))) continue;
      const move = moveOf(before, later, currency);
      if (move.kind === 'last-digit') lastDigits++;
      if (move.kind !== 'moved') continue;
      const session = isTop ? null : now.date;
      figures.push({ ...named(panel), metric, session, was: before, now: later, weight: move.weight });
    }
  }
  // What readers see first comes before earlier sessions of the same weight.
  const order = (it: FigureChange) => (it.session === null ? 0 : 1);
  return { figures: figures.toSorted((a, b) => order(a) - order(b) || byWeight(a, b)), lastDigits };
}

/** The weightier first; two that both came or went are alike. */
function byWeight(a: FigureChange, b: FigureChange): number {
  if (a.weight === b.weight) return 0;
  return b.weight > a.weight ? 1 : -1;
}

function datesOnlyIn(one: PanelState, other: PanelState): string[] {
  const known = new Set(other.sessions.map((it) => it.date));
  return one.sessions.flatMap(({ date }) => (date === null || known.has(date) ? [] : [date]));
}

function flagChanges({ panel, was, now, isTop }: SessionPair): Changes['flags'] {
  // Without the sentence: it has numbers in it that move by themselves, as the age of a price does.
  const key = ({ check, severity, concerns }: SessionState['flags'][number]) =>
    `${check} ${severity} ${[...concerns].toSorted().join(' ')}`;
  const only = (these: SessionState, those: SessionState, change: 'come' | 'gone') => {
    const known = new Set(those.flags.map(key));
    return these.flags
      .filter((it) => !known.has(key(it)))
      .map((flag) => ({ ...named(panel), date: isTop ? null : now.date, change, flag }));
  };
  return [...only(now, was, 'come'), ...only(was, now, 'gone')];
}

function claimChanges({ panel, was, now }: SessionPair): Changes['claims'] {
  const key = ({ subject, claimed, unit }: SessionState['claims'][number]) => `${subject} ${claimed} ${unit}`;
  const before = new Map(was.claims.map((it) => [key(it), it]));
  const after = new Map(now.claims.map((it) => [key(it), it]));
  const all = new Set([...before.keys(), ...after.keys()]);
  return [...all].flatMap((it) => {
    const [old, later] = [before.get(it) ?? null, after.get(it) ?? null];
    return old?.outcome === later?.outcome ? [] : [{ ...named(panel), was: old, now: later }];
  });
}

function methodChanges(was: GuideState, now: GuideState): Changes['methods'] {
  const changed = [...now.methods].flatMap(([id, version]) => {
    const before = was.methods.get(id) ?? null;
    return before === version || (before === null && !was.knowsAllMethods) ? [] : [{ id, was: before, now: version }];
  });
  const gone = [...was.methods].filter(([id]) => !now.methods.has(id));
  return [...changed, ...gone.map(([id, version]) => ({ id, was: version, now: null }))];
}

/** Pages by their addresses, as they were published: a panel under a new name has a new address. */
function pageChanges(was: GuideState, now: GuideState): Pick<Changes, 'newPages' | 'gonePages'> {
  const newSlugs = [...now.panels.keys()].filter((it) => !was.panels.has(it));
  const isNew = (address: string) =>
    was.knowsAllPages ? !was.pages.has(address) : newSlugs.some((it) => address.startsWith(`/panels/${it}/`));
  return {
    newPages: [...now.pages].filter(isNew),
    gonePages: [...was.pages]
      .filter((it) => !now.pages.has(it))
      .flatMap((address) => {
        const [, , slug = '', ...rest] = address.split('/');
        const successor = address.startsWith('/panels/') ? now.renamed.get(slug) : undefined;
        if (successor === undefined) return [{ address }];
        // One that led on before is no news.
        return was.panels.has(slug) ? [{ address, leadsTo: `/panels/${successor}/${rest.join('/')}` }] : [];
      }),
  };
}
