import type { ClassTable, Ledger, PanelEntry, RankGroup } from '../ledger/ledger.ts';
import { isFigure } from '../measure/figure.ts';
import type { Price } from '../schema/panel.ts';
import { daggerOf } from './flags.ts';
import { listed, money, ordinal, showDate, showFigure } from './format.ts';
import { type Whisker, whiskers } from './whisker.ts';

/** One cell of a ranking table: what readers see, and what the sorting script sorts by. */
export interface Cell {
  text: string;
  /** Behind the text, smaller: the uncertainty. */
  plusMinus?: string;
  /** Behind it all: a unit or a remark. */
  after?: string;
  /** Number to sort by; null sorts last. */
  sort: number | null;
  /** A stated gap. */
  isGap?: boolean;
  /** Dagger and where it leads. */
  dagger?: { mark: string; label: string };
  whisker?: Whisker;
}

export interface Column {
  id: string;
  label: string;
  unit: string;
  /** Method page behind the label. */
  method: string;
  /** Which way a first press sorts: the better end first. */
  first: 'ascending' | 'descending';
}

export interface Row {
  name: string;
  address: string;
  /** "lent by the maker", "given by the maker". */
  disclosure?: string;
  cells: Cell[];
}

export interface Table {
  id: string;
  caption: string;
  /** Names the table among the others of the page. */
  label: string;
  /** Set apart because it was measured otherwise; says how. */
  apart?: string;
  rows: Row[];
}

export interface ClassView {
  id: string;
  name: string;
  description: string;
  tables: Table[];
  unranked: Array<{ name: string; address: string; reason: string }>;
}

/** Columns after the panel's name, in their order. The currency stands in for `currency`. */
export function guideColumns(currency: string): Column[] {
  return [
    { id: 'rank', label: 'Rank', unit: '95 % range', method: 'rank', first: 'ascending' },
    { id: 'price', label: 'Price', unit: currency, method: 'real-price', first: 'ascending' },
    { id: 'optical-power', label: 'Optical power', unit: 'W', method: 'optical-power', first: 'descending' },
    {
      id: 'price-per-watt',
      label: 'Price per watt',
      unit: `${currency}/W`,
      method: 'price-per-watt',
      first: 'ascending',
    },
    { id: 'efficiency', label: 'Efficiency', unit: '%', method: 'efficiency', first: 'descending' },
    { id: 'mean', label: 'Mean', unit: 'mW/cm²', method: 'mean-irradiance', first: 'descending' },
    { id: 'peak', label: 'Peak', unit: 'mW/cm²', method: 'peak-irradiance', first: 'descending' },
    { id: 'uniformity', label: 'Uniformity', unit: 'lowest/mean, %', method: 'uniformity', first: 'descending' },
    { id: 'flicker', label: 'Flicker', unit: '%', method: 'flicker', first: 'ascending' },
    { id: 'tested', label: 'Tested', unit: 'date', method: 'bench-procedure', first: 'descending' },
  ];
}

/** The ranking tables of the guide, ready to print. */
export function guideView(ledger: Ledger): ClassView[] {
  return ledger.classes.map((it) => classView(it, ledger));
}

/** The class of panels whose LED field has not been measured. */
const UNKNOWN_SIZE = { id: 'unknown-size', name: 'Size not known' };

function classView({ sizeClass, groups, unranked }: ClassTable, ledger: Ledger): ClassView {
  const id = sizeClass?.id ?? UNKNOWN_SIZE.id;
  return {
    id,
    name: sizeClass?.name ?? UNKNOWN_SIZE.name,
    description: sizeClass
      ? `${sizeClass.description} ${areaWords(sizeClass, ledger)}`
      : 'Panels whose LED field has not been measured.',
    tables: groups.map((group, index) => table(sizeClass, group, index, ledger)),
    unranked: unranked.map((it) => ({ name: it.name, address: panelAddress(it.slug), reason: it.rankAbsent ?? '' })),
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
  ledger: Ledger,
): Table {
  const { guide } = ledger;
  const where = `at ${conditions.distance} cm under version ${conditions.methodVersion} of the bench procedure`;
  const classId = sizeClass?.id ?? UNKNOWN_SIZE.id;
  const drawn = whiskers(panels.map((it) => it.figures.get('price-per-watt')));
  return {
    id:
      index === 0 && conditions.isReference
        ? classId
        : `${classId}-${String(conditions.distance).replace('.', '-')}-cm-v${conditions.methodVersion}`,
    label: `${sizeClass?.name ?? UNKNOWN_SIZE.name}, ranked, at ${conditions.distance} cm under version ${conditions.methodVersion}`,
    caption: `Ranked by price per optical watt, measured ${where}.`,
    ...(!conditions.isReference && {
      apart: `Measured ${where}, not at the guide’s ${guide.referenceDistance.value} cm and version ${guide.methodVersion}. These figures can’t be compared with the table above, so they are ranked among themselves.`,
    }),
    rows: panels.map((panel, i) => row(panel, drawn[i], guide.currency)),
  };
}

function row(panel: PanelEntry, whisker: Whisker | undefined, currency: string): Row {
  const figure = (metric: string, after?: string): Cell => {
    const it = panel.figures.get(metric);
    if (!isFigure(it)) return { text: '–', after: it?.reason ?? 'not measured', sort: null, isGap: true };
    const { value, plusMinus, interval, absent } = showFigure(it, currency);
    const dagger = daggerOf(it.flags);
    return {
      text: value,
      sort: it.value,
      ...(plusMinus && { plusMinus }),
      ...((interval || absent || after) && {
        after: [interval && `(${interval})`, after, absent && '± not known'].filter(Boolean).join(' '),
      }),
      ...(dagger && { dagger }),
    };
  };
  const frequency = panel.figures.get('flicker-frequency-combined');
  const flickers = isFigure(frequency)
    ? `at ${showFigure(frequency, currency).text}${frequency.standardUncertainty === null ? ' (± not known)' : ''}`
    : undefined;
  const price = panel.prices[0];
  return {
    name: panel.name,
    address: panelAddress(panel.slug),
    ...(panel.data.obtained &&
      panel.data.obtained.how !== 'bought' && { disclosure: `${panel.data.obtained.how} by the maker` }),
    cells: [
      rankCell(panel),
      {
        ...figure('real-price'),
        ...(price && { after: priceRemark(price.price, currency) }),
      },
      figure('optical-power'),
      { ...figure('price-per-watt'), ...(whisker && { whisker }) },
      figure('efficiency-combined'),
      figure('mean-irradiance'),
      figure('peak-irradiance-combined'),
      figure('uniformity-lowest'),
      figure('flicker-combined', flickers),
      panel.current
        ? { text: showDate(panel.current.date), sort: Date.parse(panel.current.date) }
        : { text: '–', after: 'not tested', sort: null, isGap: true },
    ],
  };
}

/** What a price in the table comes with: its own currency, its day, and whether it needs a code. */
function priceRemark({ date, paid, list, currency: own, discountCode }: Price, currency: string): string {
  return [
    ...(own === currency ? [] : [money(paid ?? list ?? 0, own)]),
    showDate(date),
    ...(discountCode.needed
      ? [discountCode.testerEarns ? 'with a code that earns the tester money' : 'with a code']
      : []),
  ].join(', ');
}

function rankCell({ rank, rankAbsent }: PanelEntry): Cell {
  if (!rank) return { text: '–', after: rankAbsent ?? '', sort: null, isGap: true };
  if (!rank.range) return { text: ordinal(rank.place), after: 'range not known', sort: rank.place };
  return { text: rankRange(rank.range), ...(rank.tiedWith.length > 0 && { after: 'tie' }), sort: rank.place };
}

/** `2nd`, or `2nd to 4th`. */
export function rankRange([low, high]: readonly [number, number]): string {
  return low === high ? ordinal(low) : `${ordinal(low)} to ${ordinal(high)}`;
}

/** The rank as a sentence, ties named. */
export function rankSentence(panel: PanelEntry, ledger: Ledger): string {
  const { rank, sizeClass, current } = panel;
  if (!rank || !sizeClass) return `Not ranked: ${panel.rankAbsent}.`;
  if (rank.of === 1) {
    return `The only panel of the class ${sizeClass.name} that was measured at ${current?.conditions.distance} cm under version ${current?.conditions.methodVersion} of the bench procedure, so there is none to rank it with.`;
  }
  const among = `of ${rank.of} in the class ${sizeClass.name}${current?.conditions.isReference ? '' : `, among those measured at ${current?.conditions.distance} cm under version ${current?.conditions.methodVersion}`}`;
  if (!rank.range) return `${ordinal(rank.place)} ${among}; no range, since ${rank.rangeAbsent}.`;
  const names = rank.tiedWith.map((slug) => ledger.panels.get(slug)?.name ?? slug);
  const tie =
    names.length > 0 ? ` A tie with ${listed(names)}: the readings do not show which is the better value.` : '';
  return `${rankRange(rank.range)} ${among}.${tie}`;
}

/** Address of a panel's page. */
export function panelAddress(slug: string): string {
  return `/panels/${slug}/`;
}
