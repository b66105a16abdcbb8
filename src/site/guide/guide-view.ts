import type { Price } from '../../content/schema/panel.ts';
import type { ClassTable, Ledger, PanelEntry, RankBasis, RankGroup } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import { areNinePointAlike, versionsAlike } from '../../measure/irradiance/bench-procedure.ts';
import type { Rank } from '../../measure/money/ranking.ts';
import type { Said } from '../../measure/statement.ts';
import { reasonText } from '../../words/figure-text.ts';
import { notKnownWords, remarkWords } from '../../words/figure-words.ts';
import { type Dagger, daggerOf, markOf } from '../../words/flags.ts';
import { listed, ordinal, showDate, showFigure } from '../../words/format.ts';
import { ALONE, isAlone, rankRange, rankText } from '../../words/rank-words.ts';
import { say } from '../../words/say.ts';
import { type ErrorBar, errorBars } from '../shared/browser/error-bar.ts';
import { asPriced } from '../shared/priced.ts';
import { rowDataOf } from './guide-filter-view.ts';

/** One cell of a ranking table: what readers see, and what the sorting script sorts by. */
export interface Cell {
  text: string;
  /** The price in the currency that it was asked in. */
  priced?: string;
  /** Behind the text, smaller: the uncertainty. */
  plusMinus?: string;
  /** Behind it all: a unit or a remark. */
  after?: string;
  /** Number to sort by; null sorts last. */
  sort: number | null;
  /** What stands behind the price in its own currency. */
  afterPriced?: string;
  /** A stated gap. */
  isGap?: boolean;
  /** Dagger and where it leads. */
  dagger?: Dagger;
  errorBar?: ErrorBar;
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
  /** What it can be filtered by (row-data.ts). */
  filter: string;
  cells: Cell[];
}

export interface Table {
  id: string;
  /** Id of the size class. */
  sizeClass: string;
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

/** Every column that a ranking table may have; the currency stands in for `currency`. */
const COLUMNS = {
  rank: { label: 'Rank', unit: '95 % range', method: 'rank', first: 'ascending' },
  price: { label: 'Price', unit: 'currency', method: 'real-price', first: 'ascending' },
  'optical-power': { label: 'Optical power', unit: 'W', method: 'optical-power', first: 'descending' },
  'price-per-watt': { label: 'Price per watt', unit: 'currency/W', method: 'price-per-watt', first: 'ascending' },
  'emitted-power': { label: 'Emitted power', unit: 'W', method: 'emitted-power', first: 'descending' },
  'price-per-emitted-watt': {
    label: 'Price per emitted watt',
    unit: 'currency/W',
    method: 'price-per-emitted-watt',
    first: 'ascending',
  },
  efficiency: { label: 'Efficiency', unit: '%', method: 'efficiency', first: 'descending' },
  'efficiency-emitted': {
    label: 'Emitted efficiency',
    unit: '%',
    method: 'efficiency-emitted',
    first: 'descending',
  },
  'half-angle': { label: 'Half-angle', unit: '°', method: 'beam-half-angle', first: 'ascending' },
  capture: { label: 'Capture', unit: '%', method: 'capture', first: 'descending' },
  mean: { label: 'Mean', unit: 'mW/cm²', method: 'mean-irradiance', first: 'descending' },
  peak: { label: 'Peak', unit: 'mW/cm²', method: 'peak-irradiance', first: 'descending' },
  uniformity: { label: 'Uniformity', unit: 'lowest/mean, %', method: 'uniformity', first: 'descending' },
  flicker: { label: 'Flicker', unit: '%', method: 'flicker', first: 'ascending' },
  tested: { label: 'Tested', unit: 'date', method: 'bench-procedure', first: 'descending' },
} as const satisfies Record<string, Omit<Column, 'id'>>;

type ColumnId = keyof typeof COLUMNS;

/** Columns after the panel's name, in their order. */
const COLUMN_ORDER: Readonly<Record<RankBasis, readonly ColumnId[]>> = {
  optical: [
    'rank',
    'price',
    'optical-power',
    'price-per-watt',
    'price-per-emitted-watt',
    'efficiency',
    'mean',
    'peak',
    'uniformity',
    'flicker',
    'tested',
  ],
  emitted: [
    'rank',
    'price',
    'emitted-power',
    'price-per-emitted-watt',
    'price-per-watt',
    'efficiency-emitted',
    'half-angle',
    'capture',
    'tested',
  ],
};

/** The metric of each column with a plain figure. */
const METRIC_OF: Readonly<Record<Exclude<ColumnId, 'rank' | 'price' | 'flicker' | 'tested'>, string>> = {
  'optical-power': 'optical-power',
  'price-per-watt': 'price-per-watt',
  'emitted-power': 'emitted-power',
  'price-per-emitted-watt': 'price-per-emitted-watt',
  efficiency: 'efficiency-combined',
  'efficiency-emitted': 'efficiency-emitted',
  'half-angle': 'beam-half-angle',
  capture: 'capture',
  mean: 'mean-irradiance',
  peak: 'peak-irradiance-combined',
  uniformity: 'uniformity-lowest',
};

/** The columns of a ranking by a basis. */
export function guideColumns(currency: string, basis: RankBasis = 'optical'): Column[] {
  return COLUMN_ORDER[basis].map((id) => {
    const column = COLUMNS[id];
    return { id, ...column, unit: column.unit.replace('currency', currency) };
  });
}

/** The ranking tables of the guide, ready to print, by either basis. */
export function guideView(ledger: Ledger, basis: RankBasis = 'optical'): ClassView[] {
  const classes = basis === 'optical' ? ledger.classes : ledger.classesByEmitted;
  // One scale for all tables of the page: a bar that is twice as long stands for twice the price in any of them.
  const ranked = classes.flatMap((it) => it.groups.flatMap((group) => group.panels));
  const drawn = errorBars(ranked.map((it) => it.figures.get(BASIS_WORDS[basis].metric)));
  const bars: Bars = new Map(ranked.map((panel, i) => [panel, drawn[i]]));
  return classes.map((it) => classView(it, ledger, basis, bars));
}

/** The bar of each ranked panel. */
type Bars = ReadonlyMap<PanelEntry, ErrorBar | undefined>;

/** What a ranking goes by. */
const BASIS_WORDS: Readonly<Record<RankBasis, { metric: string; words: string }>> = {
  optical: { metric: 'price-per-watt', words: 'price per optical watt' },
  emitted: { metric: 'price-per-emitted-watt', words: 'price per emitted watt, as modelled' },
};

/** A panel's place by a basis, or why it has none. */
function placing(panel: PanelEntry, basis: RankBasis): Pick<PanelEntry, 'rank' | 'rankAbsent'> {
  return basis === 'optical' ? panel : panel.byEmitted;
}

/** The class of panels whose LED field has not been measured. */
const UNKNOWN_SIZE = { id: 'unknown-size', name: 'Size not known' };

function classView(
  { sizeClass, groups, unranked }: ClassTable,
  ledger: Ledger,
  basis: RankBasis,
  bars: Bars,
): ClassView {
  const id = sizeClass?.id ?? UNKNOWN_SIZE.id;
  return {
    id,
    name: sizeClass?.name ?? UNKNOWN_SIZE.name,
    description: sizeClass
      ? `${sizeClass.description} ${areaWords(sizeClass, ledger)}`
      : 'Panels whose LED field has not been measured.',
    tables: groups.map((group, index) => table(sizeClass, group, index, ledger, basis, bars)),
    unranked: unranked.map((it) => ({
      name: it.name,
      address: panelAddress(it.slug),
      reason: saidOr(placing(it, basis).rankAbsent),
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
  ledger: Ledger,
  basis: RankBasis,
  bars: Bars,
): Table {
  const { guide } = ledger;
  const where = `at ${conditions.distance} cm under ${versionWords(conditions.methodVersion)} of the bench procedure`;
  const classId = sizeClass?.id ?? UNKNOWN_SIZE.id;
  return {
    id:
      index === 0 && conditions.isReference
        ? classId
        : `${classId}-${String(conditions.distance).replace('.', '-')}-cm-v${versionsAlike(conditions.methodVersion)[0]}`,
    sizeClass: classId,
    label: `${sizeClass?.name ?? UNKNOWN_SIZE.name}, ranked, at ${conditions.distance} cm under ${versionWords(conditions.methodVersion)}`,
    caption: `Ranked by ${BASIS_WORDS[basis].words}, measured ${where}.`,
    ...(!conditions.isReference && {
      apart: `Measured ${where}, not at the guide’s ${guide.referenceDistance.value} cm${areNinePointAlike(conditions.methodVersion, guide.methodVersion) ? '' : ` and ${versionWords(guide.methodVersion)}`}. These figures can’t be compared with the table above, so they are ranked among themselves.`,
    }),
    rows: panels.map((panel) => row(panel, bars.get(panel), guide.currency, basis)),
  };
}

/** "version 1 or 2": the versions of the bench procedure under which the grid is read alike. */
function versionWords(version: number | undefined): string {
  return version === undefined ? 'no version' : `version ${versionsAlike(version).join(' or ')}`;
}

function row(panel: PanelEntry, errorBar: ErrorBar | undefined, currency: string, basis: RankBasis): Row {
  const figure = (metric: string, after?: string): Cell => {
    const it = panel.figures.get(metric);
    if (!isFigure(it)) return { text: '–', after: reasonText(it), sort: null, isGap: true };
    const { value, plusMinus, interval, absent } = showFigure(it, currency);
    const dagger = daggerOf(it.flags);
    return {
      text: value,
      sort: it.value,
      ...(plusMinus && { plusMinus }),
      ...((interval || absent || after) && {
        after: remarkWords(interval, after, absent && notKnownWords()),
      }),
      ...(dagger && { dagger }),
    };
  };
  const frequency = panel.figures.get('flicker-frequency-combined');
  const flickers = isFigure(frequency)
    ? `at ${showFigure(frequency, currency).text}${frequency.standardUncertainty === null ? ' (± not known)' : ''}`
    : undefined;
  const price = panel.prices[0];
  const priced = asPriced(panel, currency);
  const base = panel.figures.get('real-price');
  const cellOf = (id: ColumnId): Cell => {
    switch (id) {
      case 'rank':
        return rankCell(placing(panel, basis), markOfRank(panel, basis));
      case 'price':
        return {
          ...figure('real-price'),
          ...(price && { after: priceRemark(price.price, priced?.text) }),
          ...(price &&
            priced &&
            isFigure(base) && {
              priced: priced.text,
              afterPriced: priceRemark(price.price, showFigure(base, currency).text),
            }),
        };
      case 'flicker':
        return figure('flicker-combined', flickers);
      case 'tested':
        return panel.current
          ? { text: showDate(panel.current.date), sort: Date.parse(panel.current.date) }
          : { text: '–', after: 'not tested', sort: null, isGap: true };
      default:
        return figure(METRIC_OF[id]);
    }
  };
  return {
    name: panel.name,
    address: panelAddress(panel.slug),
    filter: rowDataOf(panel),
    ...(panel.data.obtained &&
      panel.data.obtained.how !== 'bought' && { disclosure: `${panel.data.obtained.how} by the maker` }),
    cells: COLUMN_ORDER[basis].map((id) => {
      const drawn = errorBar && COLUMNS[id].method === BASIS_WORDS[basis].metric ? { errorBar } : {};
      return { ...cellOf(id), ...drawn };
    }),
  };
}

/** What a price in the table comes with: its own currency, its day, and whether it needs a code. */
function priceRemark({ date, discountCode }: Price, otherCurrency: string | undefined): string {
  return [
    ...(otherCurrency ? [otherCurrency] : []),
    showDate(date),
    ...(discountCode.needed
      ? [discountCode.testerEarns ? 'with a code that earns the tester money' : 'with a code']
      : []),
  ].join(', ');
}

/** The mark of the figure that a rank goes by. */
const markOfRank = ({ figures }: PanelEntry, basis: RankBasis) => markOf(figures.get(BASIS_WORDS[basis].metric));

function rankCell({ rank, rankAbsent }: Pick<PanelEntry, 'rank' | 'rankAbsent'>, dagger: Dagger | undefined): Cell {
  if (!rank) return { text: '–', after: saidOr(rankAbsent), sort: null, isGap: true };
  const remark = rank.range ? rank.tiedWith.length > 0 && 'tie' : 'range not known';
  return {
    text: rankText(rank),
    ...(remark && !isAlone(rank) && { after: remark }),
    ...(dagger && { dagger }),
    sort: rank.place,
  };
}

/** The rank as a sentence, ties named; with a mark where it goes by a figure in doubt. */
export function rankSentence(panel: PanelEntry, ledger: Ledger, basis: RankBasis = 'optical'): string {
  const plain = plainRankSentence(panel, ledger, basis);
  const mark = placing(panel, basis).rank && markOfRank(panel, basis);
  return mark ? `${plain} ${mark.mark} The figure it goes by is in doubt.` : plain;
}

function plainRankSentence(panel: PanelEntry, ledger: Ledger, basis: RankBasis): string {
  const { sizeClass, current } = panel;
  const { rank, rankAbsent } = placing(panel, basis);
  if (!rank || !sizeClass) return `Not ranked: ${saidOr(rankAbsent)}.`;
  if (isAlone(rank)) {
    return `${capital(ALONE)}: no other panel of the class ${sizeClass.name} ${basis === 'optical' ? 'was measured' : 'has an emitted power'} at ${current?.conditions.distance} cm under ${versionWords(current?.conditions.methodVersion)} of the bench procedure, so there is none to rank it with.`;
  }
  const among = `of ${rank.of} in the class ${sizeClass.name}${current?.conditions.isReference ? '' : `, among those measured at ${current?.conditions.distance} cm under ${versionWords(current?.conditions.methodVersion)}`}`;
  if (!rank.range) return `${ordinal(rank.place)} ${among}; no range, since ${saidOr(rank.rangeAbsent)}.`;
  const tied = tiedNames(rank, ledger, basis);
  const tie = tied.length > 0 ? ` A tie with ${listed(tied)}: the readings do not show which is the better value.` : '';
  return `${rankRange(rank.range)} ${among}.${tie}`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Ties that a sentence names; where it is one of hundreds, a panel can tie with dozens. */
const MOST_TIES = 6;

/** The panels of a tie by name, or the nearest of them and how many others there are. */
function tiedNames({ place, tiedWith }: Rank, ledger: Ledger, basis: RankBasis): string[] {
  const nameOf = (slug: string) => ledger.panels.get(slug)?.name ?? slug;
  if (tiedWith.length <= MOST_TIES) return tiedWith.map(nameOf);
  const away = (slug: string) => {
    const panel = ledger.panels.get(slug);
    return Math.abs(((panel && placing(panel, basis).rank?.place) ?? Number.POSITIVE_INFINITY) - place);
  };
  const near = new Set(tiedWith.toSorted((a, b) => away(a) - away(b)).slice(0, MOST_TIES - 1));
  const named = tiedWith.filter((slug) => near.has(slug)).map(nameOf);
  return [...named, `${tiedWith.length - near.size} others near it in the table`];
}

/** Address of a panel's page. */
export function panelAddress(slug: string): string {
  return `/panels/${slug}/`;
}

/** A statement in words; nothing where there is none. */
const saidOr = (it: Said | undefined): string => (it === undefined ? '' : say(it));
