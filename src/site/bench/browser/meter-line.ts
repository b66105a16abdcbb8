/** Takes a line that a meter sent apart: a number and its unit, or why there is none. No DOM. */
import { type DecimalMark, NUMBER_SHAPE, type PlainNumber, plainNumber } from './meter-number.ts';
import { type MeterPattern, NUMBER_GROUPS, UNIT_SHAPE } from './meter-pattern.ts';

/** What a line said. */
export interface LineReading {
  /** As the pad takes it: `41.20 mW/cm2`, `<0.1`. The unit is the meter's own spelling. */
  readonly written: string;
  readonly number: PlainNumber;
  readonly value: number;
  readonly unit?: string;
  /** The meter shows less than its first step, or more than its last. */
  readonly bound?: 'below' | 'above';
}

/**
 * Why a line gives no reading: `empty`; `long` it is longer than any meter's; `overload` the meter shows that it has too
 * much, `no-value` that it has nothing to show, with the mark that says so; `no-number`; `no-match` the pattern is not in
 * it; `unclear` a number that could be read in two ways, such as 1,234.
 */
export type LineRefusal =
  | { readonly refused: 'empty' | 'long' | 'no-number' | 'no-match' }
  | { readonly refused: 'overload' | 'no-value' | 'unclear'; readonly text: string };

export interface LineReader {
  /** Left out: the last number in the line. */
  readonly pattern?: MeterPattern;
}

/** Longest line that is read. */
export const LONGEST_LINE = 200;

/** As meters of many kinds write them; common practice, no source. */
const OVERLOAD =
  /(?<![\p{L}\d])[+\-−]?(?:O\.?L|0\.?L|OVL|OVLD|OVER(?:LOAD|FLOW|RANGE)?|INF(?:INITY)?|∞)(?![\p{L}\d])/iu;
const NO_VALUE = /(?<![\p{L}\d])(?:NaN|N\/A|ERR(?:OR)?)(?![\p{L}\d])|(?<!\S)[-−–_.]*[-−–_]{2}[-−–_.]*(?!\S)|\?{2,}/iu;

/** Days and times of the clock, which are no readings. */
const CLOCK =
  /(?<![\d.,])\d{4}-\d{1,2}-\d{1,2}(?:T(?=\d))?|(?<![\d.,])\d{1,2}([./])\d{1,2}\1(?:\d{4}|\d{2})(?![\d.,])|\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?Z?/g;

/** A number that stands for itself: not the 2 of cm2 or m^-2, not the end of a name. The bound before it, the unit after it. */
const ALONE = new RegExp(
  `(?<bound>[<>])?\\s*(?<![\\p{L}\\d.,^/²_]|[\\p{L}^][-−])(?<number>${NUMBER_SHAPE})(?![\\d:]|[.,]\\d)\\s*(?<unit>${UNIT_SHAPE})?`,
  'giu',
);

/** Reads one line, without its end. */
export function readLine(line: string, { pattern }: LineReader = {}): LineReading | LineRefusal {
  // Some meters frame a line with signs that nobody sees.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: those are the signs
  const text = line.replace(/[\u0000-\u0008\u000b-\u001f\u007f\ufeff]/g, '').trim();
  if (text === '') return { refused: 'empty' };
  if (text.length > LONGEST_LINE) return { refused: 'long' };
  const refusal = shownMark(text, pattern);
  if (refusal) return refusal;
  const found = pattern ? byPattern(text, pattern) : lastNumber(text);
  if (!found) return { refused: pattern ? 'no-match' : 'no-number' };
  const number = plainNumber(found.number, found.mark);
  if (number === undefined) return { refused: 'unclear', text: found.number.trim() };
  const value = Number(number);
  if (!Number.isFinite(value)) return { refused: 'overload', text: found.number.trim() };
  const { unit, bound } = found;
  return {
    written: `${bound ?? ''}${number}${unit ? ` ${unit}` : ''}`,
    number,
    value,
    ...(unit && { unit }),
    ...(bound && { bound: bound === '<' ? 'below' : 'above' }),
  };
}

/** What stands in place of a value. A word that the pattern has itself says nothing. */
function shownMark(text: string, pattern: MeterPattern | undefined): LineRefusal | undefined {
  for (const [refused, marks] of [
    ['overload', OVERLOAD],
    ['no-value', NO_VALUE],
  ] as const) {
    const mark = marks.exec(text)?.[0];
    if (mark && !pattern?.written.toLowerCase().includes(mark.toLowerCase())) return { refused, text: mark };
  }
  return undefined;
}

interface Found {
  number: string;
  mark?: DecimalMark;
  unit?: string;
  bound?: '<' | '>';
}

function byPattern(text: string, { expression }: MeterPattern): Found | undefined {
  const match = expression.exec(text);
  const [group, mark] = Object.entries(NUMBER_GROUPS).find(([it]) => match?.groups?.[it] !== undefined) ?? [];
  const { [group ?? '']: number, unit } = match?.groups ?? {};
  if (!match || !group || !mark || number === undefined || number.trim() === '') return undefined;
  // The sign of a bound counts whether the pattern takes it in or passes over it.
  const inside = /^\s*(?<bound>[<>])\s*(?<number>.*)$/s.exec(number)?.groups;
  const before = /([<>])\s*$/.exec(text.slice(0, match.indices?.groups?.[group]?.[0]))?.[1];
  const bound = (inside?.bound ?? before) as Found['bound'];
  return {
    number: inside?.number ?? number,
    mark,
    ...(unit?.trim() && { unit: unit.trim() }),
    ...(bound && { bound }),
  };
}

function lastNumber(text: string): Found | undefined {
  const last = [...text.replace(CLOCK, (it) => ' '.repeat(it.length)).matchAll(ALONE)].at(-1);
  const { number, unit, bound } = last?.groups ?? {};
  if (number === undefined) return undefined;
  return { number, ...(unit && { unit }), ...(bound && { bound: bound as '<' | '>' }) };
}
