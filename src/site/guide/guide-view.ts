import type { ClassTable, Conditions, Ledger, PanelEntry, RankBasis, RankGroup } from '../../ledger/ledger.ts';
import { areNinePointAlike, versionsAlike } from '../../measure/irradiance/bench-procedure.ts';
import { type ErrorBar, errorBars } from '../shared/browser/error-bar.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { rowDataOf } from './guide-filter-view.ts';
import { BASES, placing, rankAbsence } from './rank-basis.ts';
import { versionWords } from './rank-sentence.ts';
import { type Cell, rankingCell } from './ranking-cells.ts';
import { type Column, guideColumns } from './ranking-columns.ts';

/** One panel of a ranking table. */
export interface Row {
  slug: string;
  name: string;
  address: string;
  /** "lent by the maker", "given by the maker". */
  disclosure?: string;
  /** What it can be filtered by (row-data.ts). */
  filter: string;
  cells: Cell[];
}

/** One ranking table. */
export interface Table {
  /** Its name in addresses and on the page. */
  id: string;
  /** Id of the size class. */
  sizeClass: string;
  /** What its rank and its error bars go by. */
  basis: RankBasis;
  /** What its panels were measured under. */
  conditions: Conditions;
  caption: string;
  /** Names the table among the others of the page. */
  label: string;
  /** Set apart because it was measured otherwise; says how. */
  apart?: string;
  rows: Row[];
}

/** A size class with its tables and with what can't be ranked. */
export interface ClassView {
  id: string;
  name: string;
  description: string;
  tables: Table[];
  unranked: Array<{ name: string; address: string; reason: string }>;
}

/** What all tables of a page have in common. */
interface Page {
  ledger: Ledger;
  basis: RankBasis;
  columns: readonly Column[];
  /** The error bar of each ranked panel. */
  bars: ReadonlyMap<PanelEntry, ErrorBar | undefined>;
}

/** The ranking tables of the guide, ready to print, by either basis. */
export function guideView(ledger: Ledger, basis: RankBasis = 'optical'): ClassView[] {
  const classes = basis === 'optical' ? ledger.classes : ledger.classesByEmitted;
  // One scale for all tables of the page: a bar that is twice as long stands for twice the price in any of them.
  const ranked = classes.flatMap((it) => it.groups.flatMap((group) => group.panels));
  const drawn = errorBars(ranked.map((it) => it.figures.get(BASES[basis].metric)));
  const bars = new Map(ranked.map((panel, i) => [panel, drawn[i]]));
  const page: Page = { ledger, basis, columns: guideColumns(ledger.guide.currency, basis), bars };
  return classes.map((it) => classView(it, page));
}

/** The class of panels whose LED field has not been measured. */
const UNKNOWN_SIZE = { id: 'unknown-size', name: 'Size not known' };

function classView({ sizeClass, groups, unranked }: ClassTable, page: Page): ClassView {
  return {
    id: sizeClass?.id ?? UNKNOWN_SIZE.id,
    name: sizeClass?.name ?? UNKNOWN_SIZE.name,
    description: sizeClass
      ? `${sizeClass.description} ${areaWords(sizeClass, page.ledger)}`
      : 'Panels whose LED field has not been measured.',
    tables: groups.map((group, index) => table(sizeClass, group, index, page)),
    unranked: unranked.map((it) => ({
      name: it.name,
      address: panelAddress(it.slug),
      reason: rankAbsence(placing(it, page.basis)),
    })),
  };
}

function areaWords(sizeClass: Ledger['guide']['sizeClasses'][number], { guide }: Ledger): string {
  const at = guide.sizeClasses.indexOf(sizeClass);
  const from = guide.sizeClasses[at - 1]?.upToArea;
  if (sizeClass.upToArea === undefined) return from === undefined ? '' : `LED area over ${from} cm².`;
  return from === undefined
    ? `LED area up to ${sizeClass.upToArea} cm².`
    : `LED area over ${from} and up to ${sizeClass.upToArea} cm².`;
}

function table(
  sizeClass: ClassTable['sizeClass'],
  { conditions, panels }: RankGroup,
  index: number,
  page: Page,
): Table {
  const { basis, ledger } = page;
  const { guide } = ledger;
  const where = `at ${conditions.distance} cm under ${versionWords(conditions.methodVersion)} of the bench procedure`;
  const classId = sizeClass?.id ?? UNKNOWN_SIZE.id;
  return {
    id:
      index === 0 && conditions.isReference
        ? classId
        : `${classId}-${String(conditions.distance).replace('.', '-')}-cm-v${versionsAlike(conditions.methodVersion)[0]}`,
    sizeClass: classId,
    basis,
    conditions,
    label: `${sizeClass?.name ?? UNKNOWN_SIZE.name}, ranked, at ${conditions.distance} cm under ${versionWords(conditions.methodVersion)}`,
    caption: `Ranked by ${BASES[basis].words}, measured ${where}.`,
    ...(!conditions.isReference && {
      apart: `Measured ${where}, not at the guide’s ${guide.referenceDistance.value} cm${areNinePointAlike(conditions.methodVersion, guide.methodVersion) ? '' : ` and ${versionWords(guide.methodVersion)}`}. These figures can’t be compared with the table above, so they are ranked among themselves.`,
    }),
    rows: panels.map((panel) => row(panel, page)),
  };
}

function row(panel: PanelEntry, { basis, columns, bars, ledger }: Page): Row {
  const errorBar = bars.get(panel);
  const { obtained } = panel.data;
  return {
    slug: panel.slug,
    name: panel.name,
    address: panelAddress(panel.slug),
    filter: rowDataOf(panel),
    ...(obtained && obtained.how !== 'bought' && { disclosure: `${obtained.how} by the maker` }),
    cells: columns.map((column) => ({
      ...rankingCell(panel, column, ledger.guide.currency, basis),
      ...(errorBar && column.metric === BASES[basis].metric && { errorBar }),
    })),
  };
}
