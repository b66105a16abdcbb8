import { roundedTo } from '../measure/exposure/cautious-end.ts';
import type { Figure, Unit } from '../measure/figure.ts';
import type { Statement } from '../measure/statement.ts';
import { fixedPlainly } from './plain-number.ts';

/** A figure in words, cut where pages may want to set its parts apart. Nothing here is calculated, only rounded. */
export interface Shown {
  /** `84`, `< 0.1`, `€5.99` */
  value: string;
  /** `9`: half of the 95 % interval; absent where it is not symmetric, not known, or nought. */
  plusMinus?: string;
  /** `78 to 95`, where the interval is not symmetric: cut at a physical zero, or from a simulation. */
  interval?: string;
  /** `W`, `/W`, `mW/cm²`; empty for pure numbers. */
  unit: string;
  /** Why there is no uncertainty. */
  absent?: Statement;
  /** All of it on one line: `84 ± 9 W`. */
  text: string;
}

/**
 * Decimals for a value and its uncertainty: the Particle Data Group's rule (Review of Particle Physics, 5.3,
 * from memory). Two significant digits of the uncertainty where they are 10 to 35, one where they are more.
 * Below nought where tens or hundreds are the last digit to stand.
 */
export function decimalsFor(uncertainty: number): number {
  const exponent = Math.floor(Math.log10(uncertainty));
  // The three leading digits, 100 to 999; 1000 where they round up.
  const leading = Math.round(uncertainty / 10 ** (exponent - 2));
  const digits = leading < 355 || leading >= 950 ? 2 : 1;
  // 0.0960 is rounded to 0.10: two digits, one place up.
  const place = leading >= 950 ? exponent + 1 : exponent;
  return digits - 1 - place;
}

/** Decimals for a value whose 95 % interval reaches from `low` to `high`, by the half of its width. */
export function decimalsWithin(low: number, high: number): number {
  return high > low ? decimalsFor((high - low) / 2) : 2;
}

/** A number with a fixed count of decimals, a true minus sign and thousands marks; −1 decimals are whole tens. */
export function fixed(value: number, decimals: number): string {
  if (decimals < 0) return fixed(toStep(value, decimals), 0);
  const plain = fixedPlainly(Math.abs(value), decimals);
  // What rounds to nought has no sign.
  if (plain !== undefined) return value < 0 && /[1-9]/.test(plain) ? `−${plain}` : plain;
  let format = numberFormats[decimals];
  if (!format) {
    format = new Intl.NumberFormat('en-GB', {
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
      // What rounds to nought has no sign.
      signDisplay: 'negative',
    });
    numberFormats[decimals] = format;
  }
  return format.format(value).replace('-', '−');
}

/** To whole tens, hundreds, ...: `1105` with −1 decimals to `1110`. */
function toStep(value: number, decimals: number): number {
  const step = 10 ** -decimals;
  return step * Math.round(value / step);
}

/** Kept, since making a format costs far more than using one. */
const numberFormats: Intl.NumberFormat[] = [];

/** A hundredth of a cent is fine enough for the cost of an hour. */
const MOST_MONEY_DECIMALS = 4;
/** A reading with more decimals is written with a power of ten. */
const MOST_PLAIN_DECIMALS = 6;

/** An interval that reaches this many times as far one way as the other is shown by its ends: our own choice. */
const LOPSIDED = 1.15;

/** True where an interval is shown by its ends, and not by ±. */
export const isLopsided = (value: number, [low, high]: readonly [number, number]) =>
  Math.max(value - low, high - value) > LOPSIDED * Math.min(value - low, high - value);

const moneyFormats = new Map<string, Intl.NumberFormat>();

/** An amount of money: `€849`, `€182.85`; cents where there are any. */
export function money(amount: number, currency: string, decimals = Number.isInteger(amount) ? 0 : 2): string {
  if (decimals < 0) return money(toStep(amount, decimals), currency, 0);
  const plain = amount > 0 ? fixedPlainly(amount, decimals) : undefined;
  if (plain !== undefined) return `${signBefore(currency)}${plain}`;
  const key = `${currency}${decimals}`;
  let format = moneyFormats.get(key);
  if (!format) {
    format = new Intl.NumberFormat('en-GB', {
      style: 'currency',
      currency,
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
    });
    moneyFormats.set(key, format);
  }
  return format.format(amount).replace('-', '−');
}

/** An amount of money with all the decimals that it was given with: a tariff, of which cents are too coarse. */
export function moneyAsWritten(amount: number, currency: string): string {
  return money(amount, currency, String(amount).split('.')[1]?.length ?? 0);
}

/** Signs of currencies as they stand before an amount, with what divides them from it: `€`, `CHF `. */
const signsBefore = new Map<string, string>();

function signBefore(currency: string): string {
  let sign = signsBefore.get(currency);
  if (sign === undefined) {
    [sign = ''] = new Intl.NumberFormat('en-GB', { style: 'currency', currency }).format(0).split('0', 1);
    signsBefore.set(currency, sign);
  }
  return sign;
}

/** A currency's sign, as before an amount: `€`. */
export function currencySign(currency: string): string {
  return signBefore(currency).trim();
}

/** How a unit is written behind its number. */
function unitText(unit: Unit): string {
  if (unit === '1' || unit === 'currency') return '';
  if (unit === 'currency/W') return '/W';
  if (unit === 'currency/h') return '/h';
  return unit;
}

/** A unit with the space before it, which some units stand without. */
export const unitBehind = (unit: string) => (unit === '' || unit === '°' || unit.startsWith('/') ? unit : ` ${unit}`);

/** What of a figure is shown. */
export type Showable = Pick<
  Figure,
  'value' | 'unit' | 'bound' | 'standardUncertainty' | 'interval95' | 'coverageFactor' | 'uncertaintyAbsent'
>;

/**
 * A figure as readers see it: the value rounded to the last digit that its 95 % uncertainty leaves, and that
 * uncertainty behind a plus-minus sign.
 *
 * @param currency of the guide, for figures in money
 */
export function showFigure(figure: Showable, currency: string): Shown {
  const unit = unitText(figure.unit);
  const isMoney = figure.unit.startsWith('currency');
  const print = (value: number, decimals: number) =>
    isMoney ? money(value, currency, decimals) : fixed(value, decimals);
  const sign = figure.bound === 'below' ? '< ' : figure.bound === 'above' ? '> ' : '';

  if (figure.interval95 === null || figure.coverageFactor === null || figure.standardUncertainty === null) {
    const value = sign + plain(figure, currency);
    return {
      value,
      unit,
      text: `${value}${unitBehind(unit)}`,
      ...(figure.uncertaintyAbsent && { absent: figure.uncertaintyAbsent }),
    };
  }
  const half = figure.coverageFactor * figure.standardUncertainty;
  if (half === 0) {
    const value = sign + plain(figure, currency);
    return { value, unit, text: `${value}${unitBehind(unit)}` };
  }
  const decimals = decimalsBy(half, isMoney);
  const value = sign + print(figure.value, decimals);
  const [low, high] = figure.interval95;
  if (isLopsided(figure.value, [low, high])) {
    const interval = `${print(low, decimals)} to ${print(high, decimals)}`;
    return { value, interval, unit, text: `${value}${unitBehind(unit)} (${interval})` };
  }
  const plusMinus = fixed(half, decimals);
  return { value, plusMinus, unit, text: `${value} ± ${plusMinus}${unitBehind(unit)}` };
}

/** Decimals of a figure whose 95 % uncertainty is so much. */
function decimalsBy(half: number, isMoney: boolean): number {
  const needed = decimalsFor(half);
  // Capped only where something is left of the uncertainty.
  return isMoney && half >= 10 ** -MOST_MONEY_DECIMALS ? Math.min(needed, MOST_MONEY_DECIMALS) : needed;
}

/** A value and half of its 95 % interval, to the digits that the latter leaves: `0.99 ± 0.20`. */
export function measuredText(value: number, half: number): string {
  const decimals = half > 0 ? decimalsFor(half) : 2;
  return `${fixed(value, decimals)} ± ${fixed(half, decimals)}`;
}

/** One step of the last digit that a figure is shown with, in its unit; 0 where it has no uncertainty to be rounded by. */
export function lastDigitOf({ unit, coverageFactor, standardUncertainty }: Showable): number {
  const half = (coverageFactor ?? 0) * (standardUncertainty ?? 0);
  return half > 0 ? 10 ** -decimalsBy(half, unit.startsWith('currency')) : 0;
}

/**
 * A value by the ends of its 95 % interval, with the digits that the interval leaves: `12.3 min (11.8 to 12.9)`.
 *
 * @param print writes a number with so many decimals
 */
export function rangeText(value: number, low: number, high: number, unit: string, print = fixed): string {
  const decimals = decimalsWithin(low, high);
  return `${print(value, decimals)}${unitBehind(unit)} (${print(low, decimals)} to ${print(high, decimals)})`;
}

/** A value without uncertainty: as it was read, or money. */
function plain(figure: Showable, currency: string): string {
  if (figure.unit.startsWith('currency')) return money(figure.value, currency);
  // What holds beyond its bound is rounded so that it holds still.
  const value = figure.bound ? roundedTo(figure.value, figure.bound === 'below' ? 'high' : 'low') : figure.value;
  const decimals = significantDecimals(value);
  return decimals > MOST_PLAIN_DECIMALS
    ? Number(value.toPrecision(4)).toString().replace('-', '−')
    : fixed(value, decimals);
}

/** Decimals that four significant digits need, without trailing zeros. */
function significantDecimals(value: number): number {
  const text = Number(value.toPrecision(4)).toString();
  const [mantissa = text, exponent = '0'] = text.split('e');
  return Math.max(0, (mantissa.split('.')[1]?.length ?? 0) - Number(exponent));
}

/** A reading on a drawing, where there is room for the number alone: `12.2`, `103`, `< 0.1`. */
export function readingText(value: number, bound?: 'below' | 'above'): string {
  return `${bound === 'below' ? '< ' : bound === 'above' ? '> ' : ''}${fixed(value, value >= 100 ? 0 : 1)}`;
}

/** A text whose figures, with what is behind ±, stay on one line. */
export const unbroken = (text: string) =>
  text.replaceAll(/[\d.,]+ ± [\d.,]+(?: [^\s→]+)?/g, (figure) => figure.replaceAll(' ', '\u00a0'));

/** A unit that was typed plainly, in its proper signs: `mW/cm2` to `mW/cm²`, `uT` to `µT`, `C` to `°C`. */
export function unitSigns(unit: string): string {
  return unit.replace(/2$/, '²').replace(/^u/, 'µ').replace(/^C$/, '°C');
}

/** A reading as it was written, its unit alone in proper signs: `<1 W/m2` to `<1 W/m²`. */
export const withSigns = (reading: string) => reading.replace(/[^\d\s]\S*$/, unitSigns);

/** A unit beside a bare number, money's too: `EUR/W`. */
export function unitWords(unit: Unit, currency: string): string {
  return unit === '1' ? '' : unit.replace('currency', currency);
}

/** A figure's method with the address of its page. */
export function methodOf(figure: Pick<Figure, 'method'>): { id: string; version: number; address: string } {
  const { id, version } = figure.method;
  return { id, version, address: `/methods/${id}/` };
}

/** Kept, since a guide has the same few days again and again. */
const shownDates = new Map<string, string>();
const dates = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });

/** `2026-03-14` to `14 Mar 2026`. */
export function showDate(iso: string): string {
  const known = shownDates.get(iso);
  if (known !== undefined) return known;
  const shown = dates.format(new Date(`${iso}T00:00:00Z`)).replace('Sept', 'Sep');
  shownDates.set(iso, shown);
  return shown;
}

/** `2026-03-14` to `Mar 2026`. */
export const showMonth = (iso: string) => showDate(iso).replace(/^\d+ /, '');

const ordinalRules = new Intl.PluralRules('en', { type: 'ordinal' });

/** `2` to `2nd`. */
export function ordinal(n: number): string {
  const rule = ordinalRules.select(n);
  return `${n}${{ one: 'st', two: 'nd', few: 'rd', other: 'th', zero: 'th', many: 'th' }[rule]}`;
}

const listFormat = new Intl.ListFormat('en-GB', { type: 'conjunction' });

/** A list in a sentence: `A, B and C`. */
export function listed(items: readonly string[]): string {
  return listFormat.format(items);
}
