import type { ClassTable, Conditions, Ledger, PanelEntry, RankBasis, RankGroup } from '../../ledger/ledger.ts';
import { orderDisagreement } from '../../ledger/order-disagreement.ts';
import { isFigure } from '../../measure/figure.ts';
import { areNinePointAlike } from '../../measure/irradiance/bench-procedure.ts';
import type { Dagger } from '../../words/flags.ts';
import { fixed, listed, showMonth } from '../../words/format.ts';
import { rankFigure } from '../../words/rank-words.ts';
import { correctedMark } from '../shared/corrections.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { alignment } from './browser/column-alignment.ts';
import { type PlacedInterval, placedOn, type Scale, scaleOf, ticksOf } from './browser/interval-scale.ts';
import { type TiedRow, tieBrackets } from './browser/tie-brackets.ts';
import { rowDataOf } from './guide-filter-view.ts';
import { BASES, markOfRank, placing, rankAbsence } from './rank-basis.ts';
import { disagreementRemark, versionWords } from './rank-sentence.ts';
import { type Cell, rankingCell } from './ranking-cells.ts';
import { type Column, guideColumns, hiddenNumbers } from './ranking-columns.ts';
import { classId, tableId } from './table-ids.ts';
import { type WavelengthAxis, type WavelengthStrip, wavelengthAxis, wavelengthStrip } from './wavelength-strip.ts';

/** One panel of the ranking. */
export interface Row {
  slug: string;
  name: string;
  address: string;
  /** `2–3`, `alone` */
  rank: string;
  /** The figure that the rank goes by is in doubt. */
  rankDagger?: Dagger;
  ties: TiedRow;
  /** Under the name: how it was obtained, when it was tested, what no bracket says of ties, another order by other light. */
  remarks: string[];
  /** What it can be filtered by and does not show (row-data.ts). */
  data: string;
  cells: Cell[];
  interval?: PlacedInterval;
  strip?: WavelengthStrip;
}

/** Panels of a class that were measured alike and are ranked together. */
export interface Table {
  /** Its name in addresses and on the page. */
  id: string;
  /** Id of the size class. */
  sizeClass: string;
  /** What its panels were measured under. */
  conditions: Conditions;
  /** Set apart because it was measured otherwise; says how. */
  apart?: string;
  rows: Row[];
}

/** A size class with its rankings and with what can't be ranked. */
export interface ClassView {
  id: string;
  name: string;
  /** "LED area up to 200 cm²" */
  area: string;
  tables: Table[];
  unranked: Array<{ name: string; address: string; reason: string }>;
}

/** The ranking of a page. */
export interface GuideView {
  basis: RankBasis;
  columns: Column[];
  /** Names of the numbers that rows carry and do not show. */
  numbers: string[];
  classes: ClassView[];
  /** The scale of all intervals, and the round numbers that its head names. */
  scale: Scale | undefined;
  ticks: Array<{ value: number; at: number }>;
  axis: WavelengthAxis;
}

/** What all rows of a page have in common. */
interface Page extends Pick<GuideView, 'basis' | 'columns' | 'numbers' | 'scale' | 'axis'> {
  ledger: Ledger;
}

/** The classes of the guide with their rankings, ready to print, by either basis. */
export function guideView(ledger: Ledger, basis: RankBasis = 'optical'): GuideView {
  const classes = basis === 'optical' ? ledger.classes : ledger.classesByEmitted;
  const columns = guideColumns(ledger.guide.currency, basis);
  const ranked = classes.flatMap((it) => it.groups.flatMap((group) => group.panels));
  const scale = scaleOf(
    ranked.flatMap((it) => {
      const figure = it.figures.get(BASES[basis].metric);
      return isFigure(figure) && figure.interval95 ? [figure.interval95] : [];
    }),
  );
  const shared = { basis, columns, numbers: hiddenNumbers(columns), scale, axis: wavelengthAxis(ranked) };
  const views = classes.map((it) => classView(it, { ...shared, ledger }));
  align(views, columns);
  return { ...shared, classes: views, ticks: scale ? ticksOf(scale) : [] };
}

/** Figures stand in line over all classes, as the columns do. */
function align(classes: readonly ClassView[], columns: readonly Column[]): void {
  const rows = classes.flatMap((it) => it.tables.flatMap((table) => table.rows));
  columns.forEach((_, i) => {
    const cells = rows.flatMap((it) => it.cells[i] ?? []).filter((it) => !it.isGap);
    const classesOf = alignment(cells.map((it) => ({ value: it.text, plusMinus: it.plusMinus })));
    for (const cell of cells) {
      const aligned = classesOf({ value: cell.text, plusMinus: cell.plusMinus });
      if (aligned) cell.aligned = aligned;
    }
  });
}

const SIZE_NOT_KNOWN = 'Size not known';

function classView({ sizeClass, groups, unranked }: ClassTable, page: Page): ClassView {
  return {
    id: classId(sizeClass),
    name: sizeClass?.name ?? SIZE_NOT_KNOWN,
    area: sizeClass ? areaWords(sizeClass, page.ledger) : 'LED field not measured',
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
  const area = (it: number) => fixed(it, 0);
  const { upToArea } = sizeClass;
  if (upToArea === undefined) return from === undefined ? 'all LED areas' : `LED area over ${area(from)} cm²`;
  return from === undefined
    ? `LED area up to ${area(upToArea)} cm²`
    : `LED area ${area(from)} to ${area(upToArea)} cm²`;
}

function table(
  sizeClass: ClassTable['sizeClass'],
  { conditions, panels }: RankGroup,
  index: number,
  page: Page,
): Table {
  const { guide } = page.ledger;
  const isOtherVersion = !areNinePointAlike(conditions.methodVersion, guide.methodVersion);
  const rankOf = (panel: PanelEntry) => placing(panel, page.basis).rank;
  const bySlug = new Map(panels.map((it) => [it.slug, it]));
  const ties = tieBrackets([...bySlug.keys()], (slug) => rankOf(bySlug.get(slug) as PanelEntry)?.tiedWith ?? []);
  return {
    id: tableId(sizeClass, conditions, index),
    sizeClass: classId(sizeClass),
    conditions,
    ...(!conditions.isReference && {
      apart: `at ${conditions.distance} cm${isOtherVersion ? ` by ${versionWords(conditions.methodVersion)} of the bench procedure` : ''}, not at the guide’s ${guide.referenceDistance.value} cm${isOtherVersion ? ` by ${versionWords(guide.methodVersion)}` : ''}`,
    }),
    rows: panels.map((panel) => row(panel, ties.get(panel.slug) ?? { parts: [], others: [] }, page)),
  };
}

function row(panel: PanelEntry, ties: TiedRow, page: Page): Row {
  const { basis, columns, ledger } = page;
  const { currency } = ledger.guide;
  const { rank } = placing(panel, basis);
  const rankDagger = markOfRank(panel, basis);
  const cells = columns.map((column) => rankingCell(panel, column, currency));
  const figure = panel.figures.get(BASES[basis].metric);
  const interval =
    page.scale && isFigure(figure) && figure.interval95 && placedOn(page.scale, figure.value, figure.interval95);
  const strip = wavelengthStrip(panel, page.axis, currency);
  return {
    slug: panel.slug,
    name: panel.name,
    address: panelAddress(panel.slug),
    rank: rank ? rankFigure(rank) : '–',
    ...(rankDagger && { rankDagger }),
    ties,
    remarks: remarksOf(panel, ties, page),
    data: rowDataOf(panel, page.numbers),
    cells,
    ...(interval && { interval }),
    ...(strip && { strip }),
  };
}

/** That the price asks for a code, and who earns by it. */
function codeRemark({ prices }: PanelEntry): string[] {
  const code = prices[0]?.price.discountCode;
  if (!code?.needed) return [];
  return [code.testerEarns ? 'price with a code that earns us money' : 'price with a code'];
}

/** Figures of the row that were corrected, and when: `efficiency corrected 6 Oct 2026`. */
function correctedRemarks(
  { figures }: PanelEntry,
  columns: readonly Column[],
  { corrections, guide }: Ledger,
): string[] {
  return columns.flatMap(({ metric, label }) => {
    const mark = correctedMark(corrections, figures.get(metric), guide.currency);
    return mark ? [`${label.charAt(0).toLowerCase()}${label.slice(1)} ${mark.text}`] : [];
  });
}

/** Ties that a row names; the panel's page has all of them. */
const MOST_NAMED = 2;

function remarksOf(panel: PanelEntry, { others }: TiedRow, { basis, columns, ledger }: Page): string[] {
  const { obtained } = panel.data;
  const { rank } = placing(panel, basis);
  const disagreement = orderDisagreement(panel, ledger);
  const nameOf = (slug: string) => ledger.panels.get(slug)?.name ?? slug;
  return [
    ...(obtained && obtained.how !== 'bought' ? [`${obtained.how} by the maker`] : []),
    ...codeRemark(panel),
    panel.current ? `tested ${showMonth(panel.current.date)}` : 'not tested',
    ...correctedRemarks(panel, columns, ledger),
    ...(rank && !rank.range ? ['range of its rank not known'] : []),
    ...(others.length > MOST_NAMED ? [`tie with ${others.length} more`] : []),
    ...(others.length > 0 && others.length <= MOST_NAMED ? [`tie with ${listed(others.map(nameOf))} too`] : []),
    ...(disagreement ? [disagreementRemark(panel, basis)] : []),
  ];
}
