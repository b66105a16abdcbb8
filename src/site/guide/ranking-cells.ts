import type { Price } from '../../content/schema/panel.ts';
import type { PanelEntry, RankBasis } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import type { ListedMetricId } from '../../measure/metrics.ts';
import { reasonText } from '../../words/figure-text.ts';
import { type Dagger, daggerOf } from '../../words/flags.ts';
import { showDate, showFigure } from '../../words/format.ts';
import { isAlone, rankText } from '../../words/rank-words.ts';
import type { ErrorBar } from '../shared/browser/error-bar.ts';
import { asPriced } from '../shared/priced.ts';
import { markOfRank, placing, rankAbsence } from './rank-basis.ts';
import type { Column } from './ranking-columns.ts';

/** One cell of a ranking table: what readers see, and what the sorting script sorts by. */
export interface Cell {
  /** Id of its column. */
  column: string;
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

/** A cell without the name of its column. */
type Content = Omit<Cell, 'column'>;

/** The cell of a panel in a column of a ranking by a basis. */
export function rankingCell(panel: PanelEntry, column: Column, currency: string, basis: RankBasis): Cell {
  return { column: column.id, ...content(panel, column, currency, basis) };
}

function content(panel: PanelEntry, { id, metric }: Column, currency: string, basis: RankBasis): Content {
  if (metric) return (SPECIAL[metric] ?? figureCell)(panel, metric, currency);
  return id === 'rank' ? rankCell(panel, basis) : testedCell(panel);
}

/** Metrics whose cells say more than the figure. */
const SPECIAL: Readonly<Partial<Record<ListedMetricId, typeof figureCell>>> = {
  'real-price': priceCell,
  'flicker-combined': flickerCell,
};

/**
 * @param after stands behind the figure and its interval
 */
function figureCell(panel: PanelEntry, metric: ListedMetricId, currency: string, after?: string): Content {
  const it = panel.figures.get(metric);
  if (!isFigure(it)) return { text: '–', after: reasonText(it), sort: null, isGap: true };
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
}

/** Flicker, with its frequency. */
function flickerCell(panel: PanelEntry, metric: ListedMetricId, currency: string): Content {
  const frequency = panel.figures.get('flicker-frequency-combined');
  const at = isFigure(frequency)
    ? `at ${showFigure(frequency, currency).text}${frequency.standardUncertainty === null ? ' (± not known)' : ''}`
    : undefined;
  return figureCell(panel, metric, currency, at);
}

/** A price, with what it comes with and the currency that it was asked in. */
function priceCell(panel: PanelEntry, metric: ListedMetricId, currency: string): Content {
  const price = panel.prices[0];
  const priced = asPriced(panel, currency);
  const base = panel.figures.get(metric);
  return {
    ...figureCell(panel, metric, currency),
    ...(price && { after: priceRemark(price.price, priced?.text) }),
    ...(price &&
      priced &&
      isFigure(base) && {
        priced: priced.text,
        afterPriced: priceRemark(price.price, showFigure(base, currency).text),
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

function rankCell(panel: PanelEntry, basis: RankBasis): Content {
  const place = placing(panel, basis);
  const { rank } = place;
  if (!rank) return { text: '–', after: rankAbsence(place), sort: null, isGap: true };
  const remark = rank.range ? rank.tiedWith.length > 0 && 'tie' : 'range not known';
  const dagger = markOfRank(panel, basis);
  return {
    text: rankText(rank),
    ...(remark && !isAlone(rank) && { after: remark }),
    ...(dagger && { dagger }),
    sort: rank.place,
  };
}

function testedCell({ current }: PanelEntry): Content {
  return current
    ? { text: showDate(current.date), sort: Date.parse(current.date) }
    : { text: '–', after: 'not tested', sort: null, isGap: true };
}
