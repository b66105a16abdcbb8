import type { PanelEntry } from '../../ledger/ledger.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import { carriedWords } from '../../words/carried-words.ts';
import { reasonText } from '../../words/figure-text.ts';
import { notKnownWords } from '../../words/figure-words.ts';
import { type Dagger, daggerOf } from '../../words/flags.ts';
import { fixed, money, showFigure } from '../../words/format.ts';
import { asPriced } from '../shared/priced.ts';
import type { Column } from './ranking-columns.ts';

/** A figure of a panel in its column: what readers see, and the number that is sorted by. */
export interface Cell {
  /** Id of its column. */
  column: string;
  /** Name of the column, as a narrow window shows it above the figure. */
  label: string;
  text: string;
  plusMinus?: string;
  /** Behind it, smaller: an interval that is not symmetric, a remark, why there is a gap. */
  after?: string;
  /** The price in the currency that it was asked in, and what stands behind it then. */
  priced?: string;
  afterPriced?: string;
  /** Number to sort by; null sorts last. */
  sort: number | null;
  /** A stated gap. */
  isGap?: boolean;
  dagger?: Dagger;
  /** From which day it is, where its readings were not taken again. */
  carried?: string;
  /** Class names by which it stands in line with its column. */
  aligned?: string;
}

type Content = Omit<Cell, 'column' | 'label'>;

/** The cell of a panel in a column of figures. */
export function rankingCell(panel: PanelEntry, column: Column, currency: string): Cell {
  const it = panel.figures.get(column.metric);
  const content = isFigure(it)
    ? (SPECIAL[column.metric] ?? figureCell)(it, panel, currency)
    : { text: '–', after: reasonText(it), sort: null, isGap: true };
  const label = [column.label, column.unit].filter(Boolean).join(' ');
  return { column: column.id, label: label.charAt(0).toLowerCase() + label.slice(1), ...content };
}

/** Metrics whose cells say something besides the figure. */
const SPECIAL: Readonly<Partial<Record<Column['metric'], typeof figureCell>>> = {
  'real-price': priceCell,
  'flicker-combined': flickerCell,
};

function figureCell(it: Figure, _: PanelEntry, currency: string, remark?: string): Content {
  const { value, plusMinus, interval, absent } = showFigure(withoutSign(it), currency);
  // What is only known to lie under a bound has no ±; of all else it is said.
  const notKnown = absent && !it.bound ? notKnownWords() : undefined;
  const after = [interval, notKnown, remark].filter(Boolean).join(', ');
  const dagger = daggerOf(it.flags);
  const carried = carriedWords(it);
  return {
    text: value,
    sort: it.value,
    ...(plusMinus && { plusMinus }),
    ...(after && { after }),
    ...(dagger && { dagger }),
    ...(carried && { carried }),
  };
}

/** A price of a watt as a bare number: the currency's sign stands in the head of the column. */
function withoutSign(it: Figure): Figure {
  return it.unit === 'currency/W' ? { ...it, unit: '1' } : it;
}

/** Flicker, with its frequency. */
function flickerCell(it: Figure, panel: PanelEntry, currency: string): Content {
  const frequency = panel.figures.get('flicker-frequency-combined');
  return figureCell(it, panel, currency, isFigure(frequency) ? frequencyText(frequency.value) : undefined);
}

/** A thousand hertz and more are told in kilohertz. */
function frequencyText(hertz: number): string {
  const [value, unit] = hertz >= 1000 ? [hertz / 1000, 'kHz'] : [hertz, 'Hz'];
  return `${fixed(Number(value.toPrecision(3)), value < 10 && !Number.isInteger(value) ? 1 : 0)} ${unit}`;
}

/** A price, also in the currency that it was asked in. */
function priceCell(it: Figure, panel: PanelEntry, currency: string): Content {
  const priced = asPriced(panel, currency);
  const text = money(it.value, currency);
  const dagger = daggerOf(it.flags);
  return {
    text,
    sort: it.value,
    ...(priced && { priced: priced.text, after: priced.text, afterPriced: text }),
    ...(dagger && { dagger }),
  };
}
