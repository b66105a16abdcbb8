/** What a plan comes to, in words. No DOM. */
import { MILLI } from '../../../measure/unit-factors.ts';
import { notKnownWords } from '../../../words/figure-words.ts';
import { fixed, money, rangeText, unitBehind } from '../../../words/format.ts';
import type { Plan } from './plan-address.ts';
import { type Calculated, type Ranged, scaled } from './plan-calculation.ts';
import type { PlanPanel } from './plan-panel.ts';

/** As on the other pages, a hundredth of a cent is fine enough. */
const MOST_MONEY_DECIMALS = 4;

const SECONDS_A_MINUTE = 60;

/** A number with as many digits as its size deserves. */
export function plainNumber(value: number): string {
  const size = Math.abs(value);
  return fixed(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3);
}

/** A value with the digits that its interval leaves, as on the panel's page. */
export function spanned({ value, low, high }: Ranged, unit: string, show = fixed): string {
  if (low === undefined || high === undefined)
    return `${show === fixed ? plainNumber(value) : show(value, 2)}${unitBehind(unit)} (${notKnownWords()})`;
  return rangeText(value, low, high, unit, show);
}

/** Seconds as minutes. */
export const minutesWords = (seconds: Ranged) => spanned(scaled(seconds, 1 / SECONDS_A_MINUTE), 'min');

/** Below a kilowatt-hour in watt-hours, where small panels have their digits. */
export const energyWords = (kwh: Ranged) => (kwh.value < 1 ? spanned(scaled(kwh, MILLI), 'Wh') : spanned(kwh, 'kWh'));

/** Money, no finer than on the other pages. */
export const costWords = (cost: Ranged, currency: string) =>
  spanned(cost, '', (it, decimals) => money(it, currency, Math.min(decimals, MOST_MONEY_DECIMALS)));

/** The plan in a sentence, for the status line. */
export function planSummary(panel: PlanPanel, plan: Plan, { seconds, mean }: Calculated): string {
  const where = `${panel.name} at ${plan.cm} cm`;
  const doubt = panel.doubts?.mean ? ` (${panel.doubts.mean.mark} ${panel.doubts.mean.label})` : '';
  return seconds
    ? `${where}: ${minutesWords(seconds)} for ${plan.exposure} J/cm²${doubt}.`
    : `${where}: ${spanned(mean, 'mW/cm²')} on the mean${doubt}. Write a radiant exposure for the minutes.`;
}
