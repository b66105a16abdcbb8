import type { Content, Entry } from '../content/read/content.ts';
import type { Calibration } from '../content/schema/instrument.ts';
import type { Panel } from '../content/schema/panel.ts';
import { isFigure } from '../measure/figure.ts';
import { impossibility } from '../measure/handed-on.ts';
import { ninePointBasis } from '../measure/irradiance/bench-procedure.ts';
import { distanceGroups } from '../measure/irradiance/same-distance.ts';
import { closeToFrontier, frontier } from '../measure/money/frontier.ts';
import type { Contender, Rank } from '../measure/money/ranking.ts';
import type { Statement } from '../measure/statement.ts';
import { COMPARISONS, type Comparisons, type KeptComparisons } from './comparisons.ts';
import { correctionEntries } from './corrections.ts';
import { calibrationDue, calibrationsOf } from './instruments.ts';
import type { ClassTable, Conditions, InstrumentEntry, Ledger, PanelEntry, RankBasis, RankGroup } from './ledger.ts';
import type { SinglePanel } from './panel-entry.ts';
import { RANKED_BY } from './rank-bases.ts';
import { standardEntries } from './standards.ts';
import { type KeptPanels, workedPanels } from './worked-panels.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    /** Why a panel is in no ranking. */
    'still-a-draft': object;
    withdrawn: object;
    'size-class-not-known': object;
    'range-not-known': { because: Statement };
  }
}

/** What is kept from one ledger of a folder to the next. */
export interface KeptWork {
  panels: KeptPanels;
  comparisons: KeptComparisons;
}

export interface LedgerOptions {
  today: string;
  /** Drafts are worked out too, panels and sessions; for the tester's eyes. Panels that are drafts are never ranked. */
  drafts?: boolean;
  /** What was worked out last; that which nothing has changed for is taken from there. */
  kept?: Partial<KeptWork>;
}

/** Turns checked content into the ledger that every page reads. Same content and day, same ledger. */
export function buildLedger(content: Content, { today, drafts = false, kept }: LedgerOptions): Ledger {
  const guide = content.guide.data;
  const wanted = [...content.panels.values()]
    .filter((panel) => drafts || panel.data.status !== 'draft')
    .map((panel) => (drafts ? panel : finished(panel)));
  const singles = kept?.panels?.work(wanted, content, today) ?? workedPanels(wanted, content, today);
  kept?.comparisons?.start();
  const comparisons = kept?.comparisons ?? COMPARISONS;

  const published = singles.filter((it) => it.data.status === 'published');
  const optical = contenders(published, 'optical');
  const keyOf = conditionsKeys(singles);
  const ranks = {
    optical: rankings([...optical.values()], keyOf, comparisons),
    emitted: rankings([...contenders(published, 'emitted').values()], keyOf, comparisons),
  };
  const alike = new Map(
    [...Map.groupBy(optical.values(), (it) => keyOf(it.panel.current?.conditions))].map(
      ([key, group]) => [key, group.map((it) => it.contender)] as const,
    ),
  );
  const reference = [...optical.values()].filter((it) => it.panel.current?.conditions.isReference);
  const onFrontier = frontier(
    reference.map(({ contender: it }) => ({ panel: it.panel, price: it.price, power: it.power.value })),
  );
  const frontierSlugs = onFrontier.map((it) => it.panel);
  const closeSlugs = closeToFrontier(reference.map((it) => it.contender));

  const corrections = correctionEntries(content);
  const corrected = Map.groupBy(corrections, (it) => it.panel);
  const panels = new Map(
    singles.map((single): [string, PanelEntry] => {
      const { slug } = single;
      const self = optical.get(slug);
      const peers = alike.get(keyOf(single.current?.conditions)) ?? [];
      const absent = (basis: RankBasis) => (ranks[basis].has(slug) ? undefined : whyUnranked(single, basis));
      return [
        slug,
        {
          ...single,
          corrections: corrected.get(slug) ?? [],
          rank: ranks.optical.get(slug),
          rankAbsent: absent('optical'),
          byEmitted: { rank: ranks.emitted.get(slug), rankAbsent: absent('emitted') },
          stepUps: self ? comparisons.stepUps(self.contender, peers) : { best: [], more: 0 },
          frontier: frontierSlugs.includes(slug) ? 'on' : closeSlugs.includes(slug) ? 'close' : undefined,
        },
      ];
    }),
  );

  return {
    guide,
    today,
    panels,
    classes: classTables(guide.sizeClasses, panels, 'optical', keyOf),
    classesByEmitted: classTables(guide.sizeClasses, panels, 'emitted', keyOf),
    frontier: frontierSlugs,
    instruments: instrumentEntries(content, panels, today),
    standards: standardEntries(content),
    corrections,
    methodVersions: new Map([...content.methods].map(([id, { data }]) => [id, data.versions])),
  };
}

/** A panel without the sessions that are still being read. */
function finished(panel: Entry<Panel>): Entry<Panel> {
  const sessions = panel.data.sessions.filter((it) => !it.draft);
  if (sessions.length === panel.data.sessions.length) return panel;
  return { ...panel, data: { ...panel.data, sessions } };
}

interface Competitor {
  panel: SinglePanel;
  contender: Contender;
}

/** Those that can be ranked, by slug: with a price, a power of known uncertainty, a size class, and nothing that can't be right. */
function contenders(panels: readonly SinglePanel[], basis: RankBasis): Map<string, Competitor> {
  return new Map(
    panels.flatMap((panel): Array<[string, Competitor]> => {
      const price = panel.figures.get('real-price');
      const power = panel.figures.get(RANKED_BY[basis].power);
      const perWatt = panel.figures.get(RANKED_BY[basis].perWatt);
      const canBe = isFigure(perWatt) && !impossibility(perWatt) && panel.sizeClass !== undefined;
      if (!canBe || !isFigure(price) || !isFigure(power) || power.standardUncertainty === null) return [];
      return [[panel.slug, { panel, contender: { panel: panel.slug, price: price.value, power } }]];
    }),
  );
}

/** Ranks by slug; only panels of one class that were measured alike are ranked together. */
function rankings(competitors: readonly Competitor[], keyOf: KeyOf, { ranks }: Comparisons): Map<string, Rank> {
  const groups = Map.groupBy(
    competitors,
    ({ panel }) => `${panel.sizeClass?.id} at ${keyOf(panel.current?.conditions)}`,
  );
  const all = [...groups.values()].flatMap((group) => ranks(group.map((it) => it.contender)));
  return new Map(all.map((rank) => [rank.panel, rank]));
}

/** Conditions that figures can be compared under have one key. */
type KeyOf = (conditions: Conditions | undefined) => string;

/** Keys of the conditions that panels were measured under; distances that are one have one. */
function conditionsKeys(panels: readonly SinglePanel[]): KeyOf {
  const otherwise = panels.flatMap(({ current }) =>
    current && !current.conditions.isReference ? [current.conditions.distance] : [],
  );
  const nearest = distanceGroups(otherwise);
  return (conditions) => {
    if (!conditions) return '';
    if (conditions.isReference) return 'reference';
    return `${nearest.get(conditions.distance) ?? conditions.distance} cm, ${ninePointBasis(conditions.methodVersion)}`;
  };
}

/** What a group's members share, given by the oldest version and the least distance of theirs, whatever their order. */
function conditionsOfAll(group: readonly PanelEntry[]): Conditions {
  const [first] = group
    .flatMap((it) => (it.current ? [it.current.conditions] : []))
    .toSorted((a, b) => a.methodVersion - b.methodVersion || a.distance - b.distance);
  if (!first) throw new Error('a ranking without a panel');
  return first;
}

function whyUnranked(panel: SinglePanel, basis: RankBasis): Statement {
  if (panel.data.status === 'draft') return { code: 'still-a-draft' };
  if (panel.data.status === 'withdrawn') return { code: 'withdrawn' };
  const perWatt = panel.figures.get(RANKED_BY[basis].perWatt);
  if (perWatt && !isFigure(perWatt)) return perWatt.reason;
  const impossible = isFigure(perWatt) && impossibility(perWatt);
  if (impossible) return { code: 'impossible-as-it-stands', finding: impossible.finding };
  const power = panel.figures.get(RANKED_BY[basis].power);
  // A place without a range would look surer than all others.
  if (isFigure(power) && power.standardUncertainty === null)
    return { code: 'range-not-known', because: power.uncertaintyAbsent ?? { code: 'uncertainty-not-known' } };
  return { code: 'size-class-not-known' };
}

/** A panel's place by one of the two bases. */
function rankOf(panel: PanelEntry, basis: RankBasis): Rank | undefined {
  return basis === 'optical' ? panel.rank : panel.byEmitted.rank;
}

function classTables(
  classes: Ledger['guide']['sizeClasses'],
  panels: ReadonlyMap<string, PanelEntry>,
  basis: RankBasis,
  keyOf: KeyOf,
): ClassTable[] {
  const published = [...panels.values()].filter((it) => it.data.status === 'published');
  return [...classes, undefined]
    .map((sizeClass): ClassTable => {
      const members = published.filter((it) => it.sizeClass?.id === sizeClass?.id);
      const ranked = Map.groupBy(
        members.filter((it) => rankOf(it, basis)),
        (it) => keyOf(it.current?.conditions),
      );
      const groups = [...ranked.values()].map(
        (group): RankGroup => ({
          conditions: conditionsOfAll(group),
          panels: group.toSorted((a, b) => (rankOf(a, basis)?.place ?? 0) - (rankOf(b, basis)?.place ?? 0)),
        }),
      );
      return {
        sizeClass,
        groups: groups.toSorted(
          (a, b) =>
            Number(b.conditions.isReference) - Number(a.conditions.isReference) ||
            a.conditions.distance - b.conditions.distance,
        ),
        unranked: members.filter((it) => !rankOf(it, basis)),
      };
    })
    .filter((table) => table.groups.length > 0 || table.unranked.length > 0);
}

/** Days of the sessions for which an instrument's readings of an earlier one still stand, the newest first. */
function carriedInto(sessions: PanelEntry['sessions'], id: string, readOn: string): string[] {
  return sessions.flatMap(({ date, instruments }) =>
    date !== readOn && instruments.some((it) => it.id === id && it.readOn === readOn) ? [date] : [],
  );
}

function instrumentEntries(
  content: Content,
  panels: ReadonlyMap<string, PanelEntry>,
  today: string,
): InstrumentEntry[] {
  return [...content.instruments.values()].map(({ id, data }) => {
    return {
      id,
      data,
      quantities: data.quantities.map((quantity) => {
        const calibrations = calibrationsOf(quantity);
        const due = calibrationDue(calibrations[0] as Calibration);
        return { data: quantity, calibrations, due, overdue: due < today };
      }),
      usedIn: [...panels.values()].flatMap(({ slug, name, sessions }) =>
        sessions
          .filter((session) => Object.values(session.readings.instruments).includes(id))
          .map(({ date }) => ({ slug, name, date, carriedInto: carriedInto(sessions, id, date) })),
      ),
    };
  });
}
