/** How a tester says where the number stands in the lines of a meter. No DOM. */
import { type DecimalMark, NUMBER_SHAPE } from './meter-number.ts';

/** A pattern that was understood. */
export interface MeterPattern {
  /** As the tester wrote it. */
  readonly written: string;
  /** With the group `number`, or that of another mark in its place (`NUMBER_GROUPS`), and, if it asks for one, `unit`. */
  readonly expression: RegExp;
}

/**
 * What is wrong with a pattern: `no-number` it says nowhere where the number is, `twice` a place is named twice, `place`
 * it names a place that there is none of, `expression` the browser can't read the regular expression, `empty`, `long`.
 */
export type PatternFault =
  | { readonly fault: 'no-number' | 'empty' | 'long' }
  | { readonly fault: 'twice' | 'place'; readonly place: string }
  | { readonly fault: 'expression'; readonly why: string };

/** Longest pattern that is read. */
export const LONGEST_PATTERN = 200;

/** A unit: letters, percent and degree signs, then what stands in one: `mW/cm2`, `W·m^-2`, `dB(A)`, `%`. */
export const UNIT_SHAPE = String.raw`[%°"\p{L}][\p{L}\d/²³^°%·*()_]*(?:\s*\/\s*\p{L}[\p{L}\d²³^]*)?(?:\^?-\d)?`;

/** Names of the number's group, by what stands before its decimals. */
export const NUMBER_GROUPS = { number: 'either', numberPoint: 'point', numberComma: 'comma' } as const satisfies Record<
  string,
  DecimalMark
>;

const number = (group: keyof typeof NUMBER_GROUPS) => `(?<${group}>(?:[<>]\\s*)?${NUMBER_SHAPE})`;

/** What may stand in a pattern of plain words. */
const PLACES: Readonly<Record<string, string>> = {
  number: number('number'),
  'number.': number('numberPoint'),
  'number,': number('numberComma'),
  unit: `(?<unit>${UNIT_SHAPE})`,
  any: '.*?',
};

/**
 * Reads a pattern. In plain words: `E = {number} {unit}`, where all but the braces stands in the line as it is written
 * (capitals and spaces do not count), `{unit}` may be left out, and `{any}` is anything. `{number,}` has a comma before its
 * decimals, `{number.}` a point, for meters that write `1,234`. Or a regular expression between slashes, with a group
 * named `number`, `numberComma` or `numberPoint`, and perhaps one named `unit`: `/CH1;(?<number>[^;]+);(?<unit>[^;]+)/`.
 */
export function meterPattern(text: string): { pattern: MeterPattern } | PatternFault {
  const written = text.trim();
  if (written === '') return { fault: 'empty' };
  if (written.length > LONGEST_PATTERN) return { fault: 'long' };
  const expression = /^\/(?<body>.+)\/(?<flags>i?)$/s.exec(written);
  if (expression?.groups) return fromExpression(written, expression.groups.body ?? '', expression.groups.flags ?? '');
  return fromWords(written);
}

function fromExpression(written: string, body: string, flags: string): { pattern: MeterPattern } | PatternFault {
  if (!Object.keys(NUMBER_GROUPS).some((it) => body.includes(`(?<${it}>`))) return { fault: 'no-number' };
  try {
    return { pattern: { written, expression: new RegExp(body, `du${flags}`) } };
  } catch (error) {
    return { fault: 'expression', why: error instanceof Error ? error.message : String(error) };
  }
}

function fromWords(written: string): { pattern: MeterPattern } | PatternFault {
  const seen = new Set<string>();
  let body = '';
  for (const piece of written.split(/(\{[^{}]*\})/)) {
    const name = /^\{\s*(?<name>[^{}]*?)\s*\}$/.exec(piece)?.groups?.name?.toLowerCase();
    if (name === undefined) {
      body += literal(piece);
      continue;
    }
    const place = Object.hasOwn(PLACES, name) ? PLACES[name] : undefined;
    if (place === undefined) return { fault: 'place', place: piece };
    const kind = name.replace(/[.,]$/, '');
    if (kind !== 'any' && seen.has(kind)) return { fault: 'twice', place: piece };
    seen.add(kind);
    body += place;
  }
  if (!seen.has('number')) return { fault: 'no-number' };
  // A number that nothing follows is taken whole, and a word that the pattern begins with is no end of a longer one.
  const end = /\{\s*number[.,]?\s*\}$/i.test(written) ? '(?!\\d|[.,]\\d)' : '';
  return { pattern: { written, expression: new RegExp(`(?<![\\p{L}\\d.,])${body}${end}`, 'diu') } };
}

/** Text as it stands; spaces may be many or none. */
const literal = (text: string) =>
  text
    .split(/\s+/)
    .map((it) => it.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&'))
    .join('\\s*');
