/** A number as meters write it: decimal point or comma, thousands set apart, exponent, sign. No DOM. */

/** What a comma or a point means on a meter: `either` where it can be told from the number itself. */
export type DecimalMark = 'either' | 'point' | 'comma';

/** A number with digits as displayed and a decimal point: `41.20`, `-3`, `1.2e-3`. */
export type PlainNumber = string;

/** The digits and marks of a number, before it is looked at closely: the longest that could be one. */
export const NUMBER_SHAPE = String.raw`[+\-−–]?\s?(?:\d(?:[\d.,'’]*\d)?|[.,]\d+)(?:[.,](?!\d))?(?:[eE][+\-−]?\d{1,3})?`;

const PARTS = /^(?<sign>[+\-−–]?)\s?(?<digits>[\d.,'’]+?)[.,]?(?:[eE](?<exponent>[+\-−]?\d{1,3}))?$/;

/**
 * Reads a number. A comma before exactly three digits may set thousands apart or decimals; it is not guessed.
 *
 * @returns undefined where the text is no number, or could be more than one
 */
export function plainNumber(text: string, mark: DecimalMark = 'either'): PlainNumber | undefined {
  const groups = PARTS.exec(text.trim())?.groups;
  if (!groups) return undefined;
  const digits = plainDigits(groups.digits ?? '', mark);
  if (digits === undefined) return undefined;
  const sign = groups.sign === '' || groups.sign === '+' ? '' : '-';
  const exponent = groups.exponent?.replace('−', '-').replace('+', '');
  return `${sign}${digits}${exponent === undefined ? '' : `e${exponent}`}`;
}

/** Whole numbers in groups of three, and what sets them apart. */
const grouped = (mark: string) => new RegExp(`^[1-9]\\d{0,2}(?:${mark}\\d{3})+$`);
const GROUPED = { "'": grouped("'"), ',': grouped(','), '.': grouped('\\.') } as const;

function plainDigits(written: string, mark: DecimalMark): string | undefined {
  const text = written.replaceAll('’', "'");
  if (/^\d+$/.test(text)) return text;
  for (const decimal of ['.', ','] as const) {
    const other = decimal === '.' ? ',' : '.';
    if (mark !== 'either' && mark !== (decimal === '.' ? 'point' : 'comma')) continue;
    const [whole = '', decimals, ...more] = text.split(decimal);
    if (more.length > 0 || decimals === undefined || !/^\d+$/.test(decimals)) continue;
    const isPlain = /^\d*$/.test(whole);
    if (isPlain && decimal === ',' && mark === 'either' && GROUPED[','].test(text)) continue;
    if (isPlain || GROUPED[other].test(whole) || GROUPED["'"].test(whole)) {
      return `${whole === '' ? '0' : whole.replace(/[.,']/g, '')}.${decimals}`;
    }
  }
  // Two groups at least, or a sign that stands for nothing else: 1,234,567 or 12'500.
  const marks = text.match(/[.,']/g) ?? [];
  const [first = '.'] = marks;
  const isWhole = (first === "'" || marks.length > 1) && GROUPED[first as keyof typeof GROUPED].test(text);
  return isWhole ? text.replace(/[.,']/g, '') : undefined;
}
