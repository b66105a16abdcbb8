/** What a plan comes to, in words. No DOM. */
import { MILLI } from '../../../measure/unit-factors.ts';
import { notKnownWords } from '../../../words/figure-words.ts';
import { decimalsWithin, fixed, isLopsided, money, unitBehind } from '../../../words/format.ts';
import { inInches } from '../../../words/other-unit.ts';
import { timeRangeWords, timeWords } from '../../../words/time-words.ts';
import type { Plan } from './plan-address.ts';
import { type Ranged, scaled } from './plan-calculation.ts';
import type { PlanPanel } from './plan-panel.ts';

/** As on the other pages, a hundredth of a cent is fine enough. */
const MOST_MONEY_DECIMALS = 4;

/** A value with its unit, and how far it may be off: `± 2.6`, `3 min 47 s to 4 min 13 s`, `± not known`. */
export interface SpanWords {
  value: string;
  spread: string;
  unit: string;
}

/** All of it in one line. */
export const inOneLine = ({ value, spread, unit }: SpanWords) =>
  spread.startsWith('± ') && spread !== notKnownWords()
    ? `${value} ${spread}${unitBehind(unit)}`
    : `${value}${unitBehind(unit)} (${spread})`;

/** A number with as many digits as its size deserves. */
export function plainNumber(value: number): string {
  const size = Math.abs(value);
  return fixed(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3);
}

/** A value with the digits that its interval leaves, as on the panel's page. */
export function spanWords({ value, low, high }: Ranged, unit: string): SpanWords {
  if (low === undefined || high === undefined) return { value: plainNumber(value), spread: notKnownWords(), unit };
  const decimals = decimalsWithin(low, high);
  return { value: fixed(value, decimals), spread: spreadWords(value, [low, high], decimals), unit };
}

function spreadWords(value: number, [low, high]: [number, number], decimals: number, show = fixed): string {
  if (isLopsided(value, [low, high])) return `${show(low, decimals)} to ${show(high, decimals)}`;
  return `± ${fixed((high - low) / 2, decimals)}`;
}

/** How long it takes. */
export function durationWords({ value, low, high }: Ranged): SpanWords {
  if (low === undefined || high === undefined) return { value: timeWords(value), spread: notKnownWords(), unit: '' };
  const words = timeRangeWords({ value, low, high });
  return { value: words.value, spread: words.interval, unit: '' };
}

/** Below a kilowatt-hour in watt-hours, where small panels have their digits. */
export const energyWords = (kwh: Ranged) =>
  kwh.value < 1 ? spanWords(scaled(kwh, MILLI), 'Wh') : spanWords(kwh, 'kWh');

/** Money, no finer than on the other pages. */
export function costWords({ value, low, high }: Ranged, currency: string): SpanWords {
  const show = (it: number, decimals: number) => money(it, currency, decimals);
  if (low === undefined || high === undefined) return { value: show(value, 2), spread: notKnownWords(), unit: '' };
  const decimals = Math.min(decimalsWithin(low, high), MOST_MONEY_DECIMALS);
  return { value: show(value, decimals), spread: spreadWords(value, [low, high], decimals, show), unit: '' };
}

/** A length as the reader writes distances. */
export const lengthWords = (cm: number, unit: Plan['unit']) => (unit === 'in' ? inInches(cm) : `${cm} cm`);

/** The plan in a sentence, for the status line. */
export function planSummary(panel: PlanPanel, plan: Plan, seconds: Ranged): string {
  const doubt = panel.doubts?.mean ? ` (${panel.doubts.mean.mark} ${panel.doubts.mean.label})` : '';
  const where = `${panel.name} at ${lengthWords(plan.cm ?? 0, plan.unit)}`;
  return `${where}: ${inOneLine(durationWords(seconds))} for ${plan.exposure} J/cm²${doubt}.`;
}
