/** Differences between panels in words. No DOM. */

import { type Difference, differenceFrom, ratioTo } from '../../../measure/difference.ts';
import type { FigureMap } from '../../../measure/figure.ts';
import { isFigure } from '../../../measure/figure.ts';
import { areNinePointAlike } from '../../../measure/irradiance/bench-procedure.ts';
import { sameDistance } from '../../../measure/irradiance/same-distance.ts';
import { isSameMethod } from '../../../measure/method-versions.ts';
import { type Cost, costRatio } from '../../../measure/money/cost.ts';
import { type Statement, verbatim } from '../../../measure/statement.ts';
import { fixed } from '../../../words/format.ts';
import { IMPOSSIBLE_MARK } from '../../../words/marks.ts';
import { sayDifference } from '../../../words/say-difference.ts';
import type { CompareRow } from './compare-rows.ts';
import type { ComparedPanel, ReadDistance } from './compared-panel.ts';

/** A panel with its figures unpacked. */
export interface ComparedContender {
  panel: ComparedPanel;
  figures: FigureMap;
}

/** How a panel's figure lies to the first panel's, or why they can't be held against each other. */
export type Outcome = Difference | { kind: 'unlike'; reason: string };

const NOT_MEASURED: Statement = { code: 'not-measured' };

/** Compares a row's figure of a panel with the first panel's. */
export function compareRow(row: CompareRow, it: ComparedContender, first: ComparedContender): Outcome {
  const [own, others] = [it.figures.get(row.metric), first.figures.get(row.metric)];
  if (!isFigure(own)) return { kind: 'unknown', reason: own?.reason ?? NOT_MEASURED };
  if (!isFigure(others)) {
    return {
      kind: 'unknown',
      reason: verbatim(`${first.panel.name} has none: ${sayDifference(others?.reason ?? NOT_MEASURED)}`),
    };
  }
  const impossible = [it, first].find(({ panel }) => panel.marks[row.metric]?.mark === IMPOSSIBLE_MARK);
  if (impossible)
    return { kind: 'unknown', reason: verbatim(`that of ${impossible.panel.name} can’t be right as it stands`) };
  const reason = unlikeness(row, it.panel, first.panel) ?? frequencyUnlikeness(row, it.panel, first.panel);
  if (reason) return { kind: 'unlike', reason };
  if (!isSameMethod(own.method, others.method) || own.unit !== others.unit) {
    return { kind: 'unlike', reason: 'the two were worked out by different versions of the method' };
  }
  if (row.difference !== undefined) return differenceFrom(own, others);
  const [cost, otherCost] = [costIn(row, it), costIn(row, first)];
  return cost && otherCost ? costRatio(cost, otherCost) : ratioTo(own, others);
}

/** What a row of a price per watt is made of. */
function costIn({ costOf }: CompareRow, { figures }: ComparedContender): Cost | undefined {
  const [price, power] = [figures.get('real-price'), costOf && figures.get(costOf)];
  return isFigure(price) && isFigure(power) ? { price: price.value, power } : undefined;
}

/** What differs between two sessions so that a row's figures can't be compared; undefined where nothing does. */
export function unlikeness({ alike }: CompareRow, panel: ComparedPanel, first: ComparedPanel): string | undefined {
  const [here, there] = [panel.conditions, first.conditions];
  if (alike === 'nothing' || !here || !there) return undefined;
  if (!areNinePointAlike(here.methodVersion, there.methodVersion)) {
    return `bench procedure version ${here.methodVersion}, ${first.name}’s version ${there.methodVersion}`;
  }
  if (alike === 'procedure') return undefined;
  // Both were read at the guide's own distance, each as near to it as counts for one: they are ranked together.
  if (alike === 'reading' && here.isReference && there.isReference) return undefined;
  const cm = (value: number): ReadDistance => ({ value, written: `${value} cm` });
  const [own, others] =
    alike === 'reading' ? [cm(here.distance), cm(there.distance)] : [panel.distances[alike], first.distances[alike]];
  if (!own || !others) return 'the distance of a reading is not recorded';
  if (sameDistance(own.value, others.value)) return undefined;
  return `it was read at ${own.written}, ${first.name} at ${others.written}`;
}

/** A share at a frequency that was read, and one at the strict end, are shares of different levels. */
function frequencyUnlikeness({ frequencyOf }: CompareRow, panel: ComparedPanel, first: ComparedPanel) {
  if (!frequencyOf || panel.frequencies.includes(frequencyOf) === first.frequencies.includes(frequencyOf)) return;
  return 'the frequency of the field was read for one of the two only';
}

/** Ratios from here up are told as multiples. */
const MULTIPLE = 2;

/** A difference in words: "12 to 31 % more", "a tie" and behind it how far it reaches, "not known: ...". */
export function outcomeWords(row: CompareRow, outcome: Outcome): { text: string; reach?: string } {
  switch (outcome.kind) {
    case 'same':
      return { text: 'the same' };
    case 'apart':
      return { text: apartWords(row, outcome.interval95) };
    case 'tie':
      return { text: 'a tie', reach: tieWords(row, outcome.interval95) };
    case 'unlike':
      return { text: `not read alike: ${outcome.reason}` };
    case 'unknown':
      return { text: `not known: ${sayDifference(outcome.reason)}` };
  }
}

function apartWords({ degree, difference }: CompareRow, [low, high]: readonly [number, number]): string {
  if (difference !== undefined) {
    const isMore = low > 0;
    const [from, to] = isMore ? [low, high] : [-high, -low];
    return `${span(from, to, difference)} ${isMore ? degree.more : degree.less}`;
  }
  if (low >= MULTIPLE) return `${span(low, high, 'times')} ${degree.times}`;
  const isMore = low > 1;
  const [from, to] = isMore ? [100 * (low - 1), 100 * (high - 1)] : [100 * (1 - high), 100 * (1 - low)];
  // Nothing but nought is 100 % less.
  return isMore
    ? `${span(from, to, '%')} ${degree.more}`
    : `${span(from, to, '%', Math.min(from, 100 - to))} ${degree.less}`;
}

function tieWords({ degree, difference }: CompareRow, [low, high]: readonly [number, number]): string {
  const [less, more] = difference === undefined ? [100 * (1 - low), 100 * (high - 1)] : [-low, high];
  const unit = difference ?? '%';
  const decimals = decimalsOf(less + more, less + more);
  const number = (value: number) => joined(fixed(value, decimals), unit);
  return `${number(less)} ${degree.less} to ${number(more)} ${degree.more}`;
}

/** `12 to 31 %`; `12 %` where both ends round to one; `up to 31 %` where the lower one rounds to nought. */
function span(low: number, high: number, unit: string, least = low): string {
  const decimals = decimalsOf(least, high - low);
  const [from, to] = [fixed(low, decimals), fixed(high, decimals)];
  if (from === to) return joined(from, unit);
  return Number(from) === 0 ? `up to ${joined(to, unit)}` : joined(`${from} to ${to}`, unit);
}

/** No line ends between a number and its unit. */
const joined = (number: string, unit: string) => (unit === '°' ? `${number}°` : `${number}\u00a0${unit}`);

/** Most decimals that are added so that an end does not round to nought, or to all. */
const MOST_ADDED = 2;

/** Exact differences from here up are told in whole numbers. */
const EXACT_WHOLE = 10;

/** Decimals by an interval's width: two digits of it, one where it is 3.5 or more. */
function decimalsOf(least: number, width: number): number {
  const needed = width > 0 ? Math.ceil(-Math.log10(width / 3.5) - 1e-9) : least >= EXACT_WHOLE ? 0 : 1;
  for (let decimals = needed; decimals < needed + MOST_ADDED; decimals++) {
    if (least >= 10 ** -decimals / 2) return decimals;
  }
  return needed + MOST_ADDED;
}
