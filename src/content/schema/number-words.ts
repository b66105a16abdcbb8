/** What people type where a number is wanted, told apart so that the message can say what to write instead. */

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** The signs that stand for a fraction. */
export const FRACTION_SIGNS = Object.keys(FRACTIONS).join('');
const FRACTION_SIGN = new RegExp(`[${FRACTION_SIGNS}]`);

/** `7 1/2` and `7½`, as rules are read: a whole part or none, and a proper fraction; then the unit. */
const FRACTION = /^(?:(?<whole>\d+)\s+)?(?<top>\d+)\s*\/\s*(?<bottom>\d+)(?![\d.,/])\s*(?<unit>.*)$/;

/** A number that is written with a fraction, in decimals and without its unit; undefined where there is none. */
export function fractionIn(text: string): { number: number; unit: string } | undefined {
  const spelt = text
    .trim()
    .replace(/[\u2044\u2215]/g, '/')
    .replace(FRACTION_SIGN, (sign) => ` ${FRACTIONS[sign]} `)
    .trim();
  const parts = FRACTION.exec(spelt)?.groups;
  if (!parts) return undefined;
  const [top, bottom] = [Number(parts.top), Number(parts.bottom)];
  // 7 9/2 is a slip, and a division by nothing is none.
  if (!(top < bottom)) return undefined;
  return { number: Number(parts.whole ?? 0) + top / bottom, unit: parts.unit ?? '' };
}

const PLACEHOLDER =
  /^(?:n\.?\s?[/.]?\s?a\.?|-+|–|—|\?+|\.{2,}|…|x+|none|null|nil|nan|tb[adc]|todo|unknown|missing|empty|blank|not\s(?:known|read|measured|taken|tested)|no\s(?:data|reading|value))$/i;

/** True for "n/a", "tbd", "-" and other texts that stand where nothing was read. */
export function isPlaceholder(value: unknown): boolean {
  return typeof value === 'string' && PLACEHOLDER.test(value.trim());
}

/** Digits with the decimals after a point, as 41, 41.2 or .5. */
const DIGITS = String.raw`(?:\d+(?:\.\d*)?|\.\d+)`;
const RANGE = new RegExp(String.raw`^(${DIGITS})\s*(?:-|–|—|\.{2,3}|…|to)\s*(${DIGITS})(?![-/\d])`);
const SIDES = new RegExp(String.raw`^(${DIGITS})\s*[^\d\s]*\s*[x×*]\s*(${DIGITS})`, 'i');

/** The usual slips in a text that should be one number, with or without a unit: what to write instead. */
export function numberHint(text: string): string | undefined {
  const it = text.trim();
  const range = RANGE.exec(it);
  if (range) {
    return `a range is no reading: write one reading, or, where repeats may stand, a list of them: [${range[1]}, ${range[2]}]`;
  }
  const hyphened = /^(\d+)\s*-\s*(\d+\s*\/\s*\d+)/.exec(it);
  if (hyphened) return `write a space between the whole number and the fraction: ${hyphened[1]} ${hyphened[2]}`;
  if (SIDES.test(it)) return 'two lengths in one text: each has a field of its own, width and height';
  if (new RegExp(String.raw`^${DIGITS}\s+${DIGITS}(?!\S)`).test(it)) {
    return 'two numbers in one place: a comma is missing between them, or a space stands inside a number';
  }
  if (/^[\d.,]+.*(?:±|\+-|\+\/-)/.test(it)) return 'write the reading alone; how sure it is, the guide works out';
  if (/^(?:~|≈|about|around|ca?\.?|circa|approx\.?|roughly|some)\s*\d/i.test(it)) {
    return 'write the number as the meter showed it, with nothing before it';
  }
  if (/^[<>]\s*=|^[≤≥]/.test(it)) return 'write a bound with < or > alone';
  return undefined;
}

const MONEY = String.raw`[€$£¥]|kr\.?|[A-Z]{3}|eur|euros?|usd|gbp|sek|nok|dkk`;
const PRICE = new RegExp(String.raw`^(?:${MONEY})?\s*(?<number>\d[\d\s.,'’]*)\s*(?:${MONEY}|,-|:-)?$`);

/** What to write where a bare number is wanted and a text stands. */
export function bareNumberHint(text: string): string | undefined {
  const it = text.trim();
  const amount = PRICE.exec(it)?.groups?.number?.trim();
  const plain = amount && plainNumber(amount);
  if (plain && amount !== it) return `write ${plain}, and nothing else; the currency of a price stands in "currency"`;
  if (plain) return plain === it ? `write ${plain} without quotes` : `write ${plain}`;
  const other = numberHint(it);
  if (other) return other;
  const number = new RegExp(String.raw`^[+-]?${DIGITS}(?=\s*[^\d\s.,])`).exec(it)?.[0];
  return number && `write ${number} alone: the unit is the field’s own`;
}

/** A number as people group it, without the grouping; where the comma or point can be read in two ways, both. */
function plainNumber(text: string): string | undefined {
  const it = text.replace(/[\s'’]/g, '');
  if (/^\d+(?:\.\d+)?$/.test(it) && it === text) return it;
  if (/^\d{1,3},\d{3}$/.test(it)) return `${it.replace(',', '')}, or ${it.replace(',', '.')} with a decimal point`;
  if (/^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(it)) return it.replaceAll(',', '');
  if (/^\d{1,3}(?:\.\d{3})+(?:,\d+)$/.test(it)) return it.replaceAll('.', '').replace(',', '.');
  if (/^\d{1,3}(?:\.\d{3}){2,}$/.test(it)) return it.replaceAll('.', '');
  if (/^\d+,\d+$/.test(it)) return `${it.replace(',', '.')}, with a decimal point`;
  return /^\d+(?:\.\d+)?$/.test(it) ? it : undefined;
}
