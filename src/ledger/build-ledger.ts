import { ninePointBasis } from '../measure/bench-procedure.ts';
import { isFigure } from '../measure/figure.ts';
import { closeToFrontier, frontier } from '../measure/frontier.ts';
import { type Contender, type Rank, rankByPricePerWatt } from '../measure/ranking.ts';
import { stepUps } from '../measure/step-ups.ts';
import type { Calibration } from '../schema/instrument.ts';
import type { Content } from './content.ts';
import type { ClassTable, Conditions, InstrumentEntry, Ledger, PanelEntry, RankBasis, RankGroup } from './ledger.ts';
import { calibrationDue, calibrationsOf } from './meters.ts';
import { panelEntry, type SinglePanel } from './panel-entry.ts';

export interface LedgerOptions {
  today: string;
  /** Drafts are worked out too; for the tester's eyes. They are never ranked. */
  drafts?: boolean;
}

/** Turns checked content into the ledger that every page reads. Same content and day, same ledger. */
export function buildLedger(content: Content, { today, drafts = false }: LedgerOptions): Ledger {
  const guide = content.guide.data;
  const singles = [...content.panels.values()]
    .filter((panel) => drafts || panel.data.status !== 'draft')
    .map((panel) => panelEntry(panel, content, today));

  const published = singles.filter((it) => it.data.status === 'published');
  const optical = contenders(published, 'optical');
  const ranks = {
    optical: rankings([...optical.values()]),
    emitted: rankings([...contenders(published, 'emitted').values()]),
  };
  const alike = Map.groupBy(optical.values(), (it) => conditionsKey(it.panel.current?.conditions));
  const reference = [...optical.values()].filter((it) => it.panel.current?.conditions.isReference);
  const onFrontier = frontier(
    reference.map(({ contender: it }) => ({ panel: it.panel, price: it.price, power: it.power.value })),
  );
  const frontierSlugs = onFrontier.map((it) => it.panel);
  const closeSlugs = closeToFrontier(reference.map((it) => it.contender));

  const panels = new Map(
    singles.map((single): [string, PanelEntry] => {
      const { slug } = single;
      const self = optical.get(slug);
      const peers = alike.get(conditionsKey(single.current?.conditions)) ?? [];
      const absent = (basis: RankBasis) => (ranks[basis].has(slug) ? undefined : whyUnranked(single, basis));
      return [
        slug,
        {
          ...single,
          rank: ranks.optical.get(slug),
          rankAbsent: absent('optical'),
          byEmitted: { rank: ranks.emitted.get(slug), rankAbsent: absent('emitted') },
          stepUps: self
            ? stepUps(
                self.contender,
                peers.map((it) => it.contender),
                guide.currency,
              )
            : { best: [], more: 0 },
          frontier: frontierSlugs.includes(slug) ? 'on' : closeSlugs.includes(slug) ? 'close' : undefined,
        },
      ];
    }),
  );

  return {
    guide,
    today,
    panels,
    classes: classTables(guide.sizeClasses, panels, 'optical'),
    classesByEmitted: classTables(guide.sizeClasses, panels, 'emitted'),
    frontier: frontierSlugs,
    instruments: instrumentEntries(content, panels, today),
  };
}

/** The figures that a ranking rests on. */
const BASES: Readonly<Record<RankBasis, { power: string; perWatt: string }>> = {
  optical: { power: 'optical-power', perWatt: 'price-per-watt' },
  emitted: { power: 'emitted-power', perWatt: 'price-per-emitted-watt' },
};

interface Competitor {
  panel: SinglePanel;
  contender: Contender;
}

/** Those that can be ranked, by slug: with a price, a power and a size class. */
function contenders(panels: readonly SinglePanel[], basis: RankBasis): Map<string, Competitor> {
  return new Map(
    panels.flatMap((panel): Array<[string, Competitor]> => {
      const price = panel.figures.get('real-price');
      const power = panel.figures.get(BASES[basis].power);
      const canBe = isFigure(panel.figures.get(BASES[basis].perWatt)) && panel.sizeClass !== undefined;
      if (!canBe || !isFigure(price) || !isFigure(power)) return [];
      return [[panel.slug, { panel, contender: { panel: panel.slug, price: price.value, power } }]];
    }),
  );
}

/** Ranks by slug; only panels of one class that were measured alike are ranked together. */
function rankings(competitors: readonly Competitor[]): Map<string, Rank> {
  const groups = Map.groupBy(
    competitors,
    ({ panel }) => `${panel.sizeClass?.id} at ${conditionsKey(panel.current?.conditions)}`,
  );
  const ranks = [...groups.values()].flatMap((group) => rankByPricePerWatt(group.map((it) => it.contender)));
  return new Map(ranks.map((rank) => [rank.panel, rank]));
}

function conditionsKey(conditions: Conditions | undefined): string {
  if (!conditions) return '';
  // One setting of the stand is one setting, though the last digit of the distance may differ.
  return conditions.isReference
    ? 'reference'
    : `${conditions.distance.toFixed(1)} cm, ${ninePointBasis(conditions.methodVersion)}`;
}

/** What a group's members share, told by the oldest version and the least distance of theirs, whatever their order. */
function conditionsOfAll(group: readonly PanelEntry[]): Conditions {
  const [first] = group
    .flatMap((it) => (it.current ? [it.current.conditions] : []))
    .toSorted((a, b) => a.methodVersion - b.methodVersion || a.distance - b.distance);
  if (!first) throw new Error('a ranking without a panel');
  return first;
}

function whyUnranked(panel: SinglePanel, basis: RankBasis): string {
  if (panel.data.status === 'draft') return 'still a draft';
  if (panel.data.status === 'withdrawn') return 'withdrawn from the guide';
  const perWatt = panel.figures.get(BASES[basis].perWatt);
  if (perWatt && !isFigure(perWatt)) return perWatt.reason;
  return 'its size class is not known';
}

/** A panel's place by one of the two bases. */
function rankOf(panel: PanelEntry, basis: RankBasis): Rank | undefined {
  return basis === 'optical' ? panel.rank : panel.byEmitted.rank;
}

function classTables(
  classes: Ledger['guide']['sizeClasses'],
  panels: ReadonlyMap<string, PanelEntry>,
  basis: RankBasis,
): ClassTable[] {
  const published = [...panels.values()].filter((it) => it.data.status === 'published');
  return [...classes, undefined]
    .map((sizeClass): ClassTable => {
      const members = published.filter((it) => it.sizeClass?.id === sizeClass?.id);
      const ranked = Map.groupBy(
        members.filter((it) => rankOf(it, basis)),
        (it) => conditionsKey(it.current?.conditions),
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

function instrumentEntries(
  content: Content,
  panels: ReadonlyMap<string, PanelEntry>,
  today: string,
): InstrumentEntry[] {
  return [...content.instruments.values()].map(({ id, data }) => {
    const calibrations = calibrationsOf(data);
    const due = calibrationDue(calibrations[0] as Calibration);
    return {
      id,
      data,
      calibrations,
      due,
      overdue: due < today,
      usedIn: [...panels.values()].flatMap(({ slug, name, sessions }) =>
        sessions
          .filter((session) => Object.values(session.readings.instruments).includes(id))
          .map((session) => ({ slug, name, date: session.date })),
      ),
    };
  });
}
