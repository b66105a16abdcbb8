import { isFigure } from '../measure/figure.ts';
import { closeToFrontier, frontier } from '../measure/frontier.ts';
import { type Contender, type Rank, rankByPricePerWatt } from '../measure/ranking.ts';
import { stepUps } from '../measure/step-ups.ts';
import type { Content } from './content.ts';
import type { ClassTable, Conditions, InstrumentEntry, Ledger, PanelEntry, RankGroup } from './ledger.ts';
import { calibrationDue } from './meters.ts';
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
  const groups = Map.groupBy(published.filter(canBeRanked), groupKey);
  const ranks = new Map<string, Rank>();
  for (const members of groups.values()) {
    for (const rank of rankByPricePerWatt(members.map(contender))) ranks.set(rank.panel, rank);
  }

  const alike = new Map(
    [...Map.groupBy(published.filter(canBeRanked), (it) => conditionsKey(it.current?.conditions))].map(
      ([key, members]) => [key, members.map(contender)] as const,
    ),
  );
  const reference = published.filter((it) => canBeRanked(it) && it.current?.conditions.isReference).map(contender);
  const onFrontier = frontier(reference.map((it) => ({ panel: it.panel, price: it.price, power: it.power.value })));
  const frontierSlugs = onFrontier.map((it) => it.panel);
  const closeSlugs = closeToFrontier(reference);

  const panels = new Map(
    singles.map((single): [string, PanelEntry] => {
      const peers = alike.get(conditionsKey(single.current?.conditions)) ?? [];
      return [
        single.slug,
        {
          ...single,
          rank: ranks.get(single.slug),
          rankAbsent: ranks.has(single.slug) ? undefined : whyUnranked(single),
          stepUps:
            single.data.status === 'published' && canBeRanked(single)
              ? stepUps(contender(single), peers, guide.currency)
              : { best: [], more: 0 },
          frontier: frontierSlugs.includes(single.slug) ? 'on' : closeSlugs.includes(single.slug) ? 'close' : undefined,
        },
      ];
    }),
  );

  return {
    guide,
    today,
    panels,
    classes: classTables(guide.sizeClasses, panels),
    frontier: frontierSlugs,
    instruments: instrumentEntries(content, panels, today),
  };
}

function canBeRanked(panel: SinglePanel): boolean {
  return isFigure(panel.figures.get('price-per-watt')) && panel.sizeClass !== undefined;
}

function contender(panel: SinglePanel): Contender {
  const price = panel.figures.get('real-price');
  const power = panel.figures.get('optical-power');
  if (!isFigure(price) || !isFigure(power)) throw new Error(`${panel.slug} was ranked without a price or a power`);
  return { panel: panel.slug, price: price.value, power };
}

function conditionsKey(conditions: Conditions | undefined): string {
  if (!conditions) return '';
  // One setting of the stand is one setting, though the last digit of the distance may differ.
  return conditions.isReference
    ? 'reference'
    : `${conditions.distance.toFixed(1)} cm, method ${conditions.methodVersion}`;
}

function groupKey(panel: SinglePanel): string {
  return `${panel.sizeClass?.id} at ${conditionsKey(panel.current?.conditions)}`;
}

function whyUnranked(panel: SinglePanel): string {
  if (panel.data.status === 'draft') return 'still a draft';
  if (panel.data.status === 'withdrawn') return 'withdrawn from the guide';
  const perWatt = panel.figures.get('price-per-watt');
  if (perWatt && !isFigure(perWatt)) return perWatt.reason;
  return 'its size class is not known';
}

function classTables(classes: Ledger['guide']['sizeClasses'], panels: ReadonlyMap<string, PanelEntry>): ClassTable[] {
  const published = [...panels.values()].filter((it) => it.data.status === 'published');
  return [...classes, undefined]
    .map((sizeClass): ClassTable => {
      const members = published.filter((it) => it.sizeClass?.id === sizeClass?.id);
      const ranked = Map.groupBy(
        members.filter((it) => it.rank),
        (it) => conditionsKey(it.current?.conditions),
      );
      const groups = [...ranked.values()].map(
        (group): RankGroup => ({
          conditions: group[0]?.current?.conditions as Conditions,
          panels: group.toSorted((a, b) => (a.rank?.place ?? 0) - (b.rank?.place ?? 0)),
        }),
      );
      return {
        sizeClass,
        groups: groups.toSorted(
          (a, b) =>
            Number(b.conditions.isReference) - Number(a.conditions.isReference) ||
            a.conditions.distance - b.conditions.distance,
        ),
        unranked: members.filter((it) => !it.rank),
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
    const due = calibrationDue(data);
    return {
      id,
      data,
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
