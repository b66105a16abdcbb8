/** What the comparison comes to, in sentences: the answer that stands above the figures. No DOM. */

import { isFigure } from '../../../measure/figure.ts';
import { listed, money } from '../../../words/format.ts';
import { DOUBT_MARK } from '../../../words/marks.ts';
import { inInches } from '../../../words/other-unit.ts';
import { type Piece, piece } from '../../shared/browser/pieces.ts';
import { COMPARE_GROUPS, type CompareRow, type RowWords } from './compare-rows.ts';
import { type ComparedContender, compareRow, type Outcome, outcomeWords } from './compare-words.ts';

const ROWS: readonly CompareRow[] = COMPARE_GROUPS.flatMap((it) => it.rows);
const MAIN: readonly CompareRow[] = COMPARE_GROUPS[0]?.rows ?? [];
const rowOf = (metric: string) => ROWS.find((it) => it.metric === metric) as CompareRow;

/** Light, what a watt of it costs, and what is counted: the light through the frame unless it is said. */
const WAYS = [
  { light: rowOf('optical-power'), cost: rowOf('price-per-watt'), counting: '' },
  {
    light: rowOf('emitted-power'),
    cost: rowOf('price-per-emitted-watt'),
    counting: 'counting all that leaves the LEDs, ',
  },
] as const;
type Way = (typeof WAYS)[number];

/** Names by which panels are called within sentences: the model where it is one alone, else the maker before it. */
export function shortNames(contenders: readonly ComparedContender[]): ReadonlyMap<ComparedContender, string> {
  const count = (model: string) => contenders.filter((it) => it.panel.model === model).length;
  return new Map(contenders.map((it) => [it, count(it.panel.model) > 1 ? it.panel.name : it.panel.model]));
}

/** What is told of the panels together. */
export interface Told {
  /** The answer, for the page's heading. */
  heading: string;
  /** Panels whose light or price for a watt, on which the heading rests, is in doubt. */
  doubted: ComparedContender[];
}

/** The heading over two panels or more. */
export function headingOf(contenders: readonly ComparedContender[]): Told {
  const [first, second] = contenders;
  if (!first || !second) throw new RangeError('nothing to compare with');
  if (contenders.length > 2) return headingOfMany(contenders);
  const way = wayOf(second, first);
  return { heading: pairSentence(second, first, shortNames(contenders)), doubted: doubtedBy(way, [first, second]) };
}

/** The way of counting light by which a panel can be held against another one: through the frame where it can be. */
function wayOf(it: ComparedContender, first: ComparedContender): Way {
  return WAYS.find((way) => isKnown(compareRow(way.light, it, first))) ?? WAYS[0];
}

const isKnown = (outcome: Outcome) => outcome.kind !== 'unlike' && outcome.kind !== 'unknown';

/** "The Tope gives 19 to 29 % more light, and each watt of it costs 8 to 18 % more." */
export function pairSentence(
  it: ComparedContender,
  first: ComparedContender,
  names: ReadonlyMap<ComparedContender, string>,
): string {
  const { light: lightRow, cost: costRow, counting } = wayOf(it, first);
  const [light, cost] = [compareRow(lightRow, it, first), compareRow(costRow, it, first)];
  const [own, others] = [`the ${names.get(it)}`, `the ${names.get(first)}`];
  const costs = cost.kind === 'apart' ? `costs ${outcomeWords(costRow, cost).text}` : undefined;
  const isCostTie = isKnown(cost) && cost.kind !== 'apart';
  const said = (sentence: string) => capital(counting + sentence);
  if (light.kind === 'apart') {
    const gives = `${own} gives ${outcomeWords(lightRow, light).text} light`;
    if (costs) return said(`${gives}, and each watt of it ${costs}.`);
    return said(isCostTie ? `${gives}; the readings can’t tell whose watt costs less.` : `${gives}.`);
  }
  if (isKnown(light)) {
    if (costs) return said(`each watt of ${own}’s light ${costs}; the readings can’t tell which gives more light.`);
    const tied = `the readings can’t tell which gives more light, ${own} or ${others}`;
    return said(isCostTie ? `${tied}, nor whose watt costs less.` : `${tied}.`);
  }
  return light.kind === 'unlike'
    ? `The light of ${own} and of ${others} was not read alike.`
    : `How the light of ${own} lies to that of ${others} is not known.`;
}

/** Who gives most light and whose watt costs least, of those that can all be held against each other. */
function headingOfMany(contenders: readonly ComparedContender[]): Told {
  const sets = WAYS.map((way) => ({ way, panels: comparable(contenders, way) }));
  const found = sets.toSorted((a, b) => b.panels.length - a.panels.length)[0];
  const names = shortNames(contenders);
  if (!found || found.panels.length < 2) {
    return { heading: `No two of these ${contenders.length} panels can be compared by their light.`, doubted: [] };
  }
  const { way, panels } = found;
  const brightest = unbeaten(panels, (it, other) => isMore(compareRow(way.light, other, it)));
  const cheapest = unbeaten(panels, (it, other) => isMore(compareRow(way.cost, it, other)));
  const named = (them: readonly ComparedContender[], word: string) =>
    them.map((it) => `the ${names.get(it)}`).join(them.length > 2 ? ', ' : ` ${word} `);
  const scope = panels.length < contenders.length ? `of the ${panels.length} that can be compared, ` : '';
  const opening = scope + way.counting;
  const doubted = doubtedBy(way, panels);
  const isLightOpen = brightest.length === panels.length;
  const isCostOpen = cheapest.length === panels.length;
  const isBoth = brightest.length === cheapest.length && brightest.every((it) => cheapest.includes(it));
  if (isBoth && brightest.length > 1 && !isLightOpen) {
    const tied = `${named(brightest, 'and')} tie for most light and for the lowest price for a watt.`;
    return { heading: capital(opening + tied), doubted };
  }
  const light = isLightOpen
    ? `the readings can’t tell which gives most light`
    : brightest.length === 1
      ? `${named(brightest, 'and')} gives most light`
      : `most light is a tie of ${named(brightest, 'and')}`;
  const cost = isCostOpen
    ? isLightOpen
      ? 'nor whose watt costs least'
      : 'the readings can’t tell whose watt costs least'
    : cheapest.length === 1
      ? cheapest[0] === brightest[0] && brightest.length === 1
        ? 'each watt of it costs least'
        : `a watt costs least from ${named(cheapest, 'or')}`
      : `the lowest price for a watt is a tie of ${named(cheapest, 'and')}`;
  const joint = isLightOpen && isCostOpen ? ', ' : ', and ';
  return { heading: `${capital(opening + light)}${joint}${cost}.`, doubted };
}

/**
 * The most panels that can be held against each other by light and by what a watt costs: those that go with one of them.
 * What makes two of them alike, and what a figure lacks, makes three of them alike.
 */
function comparable(contenders: readonly ComparedContender[], { light, cost }: Way): ComparedContender[] {
  const fits = (it: ComparedContender, other: ComparedContender) =>
    [light, cost].every((row) => isKnown(compareRow(row, it, other)));
  return contenders
    .map((it) => contenders.filter((other) => fits(other, it)))
    .reduce((most, group) => (group.length > most.length ? group : most), []);
}

/** Those that no other one surely beats: the readings can't tell them apart. */
function unbeaten(
  panels: readonly ComparedContender[],
  isBeaten: (it: ComparedContender, other: ComparedContender) => boolean,
): ComparedContender[] {
  return panels.filter((it) => !panels.some((other) => other !== it && isBeaten(it, other)));
}

/** Surely more than the other: the whole interval of the ratio lies above one. */
const isMore = (outcome: Outcome) => outcome.kind === 'apart' && outcome.interval95[0] > 1;

function doubtedBy({ light, cost }: Way, panels: readonly ComparedContender[]): ComparedContender[] {
  return panels.filter(({ panel }) => [light, cost].some(({ metric }) => panel.marks[metric]?.mark === DOUBT_MARK));
}

/** "is 30 cm taller and costs €341 more": what a tape measure and a price list tell; nothing where neither is known. */
export function bodyWords(it: ComparedContender, first: ComparedContender): Piece[] {
  const parts = [sizeWords(it, first), priceWords(it, first)].filter((part) => part.length > 0);
  return parts.flatMap((part, i) => (i > 0 ? [' and ', ...part] : part));
}

function sizeWords(it: ComparedContender, first: ComparedContender): Piece[] {
  for (const [side, more, less] of [
    ['height', 'taller', 'shorter'],
    ['width', 'wider', 'narrower'],
  ] as const) {
    const outcome = compareRow({ ...rowOf('led-area'), metric: `field-${side}` }, it, first);
    const [own, others] = [it.panel.field?.[side], first.panel.field?.[side]];
    if (outcome.kind !== 'apart' || own === undefined || others === undefined) continue;
    const cm = Math.abs(own - others);
    return [
      'is ',
      piece('span', { 'data-u': 'cm' }, `${Number(cm.toFixed(1))}\u00a0cm`),
      piece('span', { 'data-u': 'in', hidden: true }, inInches(cm)),
      ` ${own > others ? more : less}`,
    ];
  }
  return [];
}

function priceWords(it: ComparedContender, first: ComparedContender): Piece[] {
  const [own, others] = [it.figures.get('real-price'), first.figures.get('real-price')];
  if (!isFigure(own) || !isFigure(others)) return [];
  const more = own.value - others.value;
  if (Math.abs(more) < 0.005) return ['costs as much'];
  const whole = Number(Math.abs(more).toFixed(2));
  const amount = money(whole, it.panel.currency, Number.isInteger(whole) ? 0 : 2);
  return [`costs ${amount} ${more > 0 ? 'more' : 'less'}`];
}

/** Which of the main differences the readings can't tell; undefined where none can be compared. */
export function tallyWords(it: ComparedContender, first: ComparedContender, words: RowWords): string | undefined {
  // What was asked and what was measured with a tape is no reading of the light.
  const read = MAIN.filter((row) => row.alike !== 'nothing').map((row) => ({
    row,
    outcome: compareRow(row, it, first),
  }));
  const known = read.filter(({ outcome }) => isKnown(outcome));
  if (known.length === 0) return undefined;
  const ties = known.filter(({ outcome }) => isKnown(outcome) && outcome.kind !== 'apart');
  const names = ties.map(({ row }) => words[row.metric]?.name ?? row.metric);
  if (ties.length === 0) return 'The readings can tell every difference below that is known.';
  const tied = `${listed(names)} ${names.length > 1 ? 'are ties' : 'is a tie'}`;
  if (ties.length === known.length) return `The readings can tell no difference below: ${tied}.`;
  return `${capital(tied)}; the readings can tell every other difference below${known.length < read.length ? ' that is known' : ''}.`;
}

/** Why main figures were not read alike, each reason once: their rows say only that they were not. */
export function unlikeReasons(it: ComparedContender, first: ComparedContender): string[] {
  const outcomes = MAIN.map((row) => compareRow(row, it, first));
  return [...new Set(outcomes.flatMap((outcome) => (outcome.kind === 'unlike' ? [outcome.reason] : [])))];
}

/** With a capital letter. */
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
