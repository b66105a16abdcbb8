import { notKnownWords } from '../../../words/figure-words.ts';
import type { Dagger } from '../../../words/flags.ts';
import { fixed, money, rangeText, showDate, unitBehind } from '../../../words/format.ts';
import { CM_PER_INCH } from '../../../words/other-unit.ts';
import { elementOf, html } from '../../shared/browser/dom.ts';
import { markPieces } from '../../shared/browser/figure-pieces.ts';
import type { Plan } from './plan-address.ts';
import { type Calculated, eyeShare, type Ranged } from './plan-calculation.ts';
import { cautionNotice, eyeWords, longerWords } from './plan-cautions.ts';
import { bodyDrawing } from './plan-drawing.ts';
import type { Doubted, PlanData, PlanPanel } from './plan-panel.ts';

/** What a planned session comes to, as elements of the page. */

/** As on the other pages, a hundredth of a cent is fine enough. */
const MOST_MONEY_DECIMALS = 4;

/** A number with as many digits as its size deserves. */
function figure(value: number): string {
  const size = Math.abs(value);
  return fixed(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3);
}

/** A value with the digits that its interval leaves, as on the panel's page. */
function spanned({ value, low, high }: Ranged, unit: string, show = fixed): string {
  if (low === undefined || high === undefined)
    return `${show === fixed ? figure(value) : show(value, 2)}${unitBehind(unit)} (${notKnownWords()})`;
  return rangeText(value, low, high, unit, show);
}

function times({ value, low, high }: Ranged, by: number): Ranged {
  return {
    value: by * value,
    ...(low !== undefined && { low: by * low }),
    ...(high !== undefined && { high: by * high }),
  };
}

const minutes = (seconds: Ranged): Ranged => times(seconds, 1 / 60);

/** Below a kilowatt-hour in watt-hours, where small panels have their digits. */
const energyWords = (kwh: Ranged) => (kwh.value < 1 ? spanned(times(kwh, 1000), 'Wh') : spanned(kwh, 'kWh'));

/** The plan in a sentence, for the status line. */
export function planSummary(panel: PlanPanel, plan: Plan, { seconds, mean }: Calculated): string {
  const where = `${panel.name} at ${plan.cm} cm`;
  const doubt = panel.doubts?.mean ? ` (${panel.doubts.mean.mark} ${panel.doubts.mean.label})` : '';
  return seconds
    ? `${where}: ${spanned(minutes(seconds), 'min')} for ${plan.exposure} J/cm²${doubt}.`
    : `${where}: ${spanned(mean, 'mW/cm²')} on the mean${doubt}. Write a radiant exposure for the minutes.`;
}

function link(href: string, text: string): HTMLElement {
  return html('a', { href }, text);
}

function entry(
  name: string,
  method: string,
  [text, marks = []]: [string, HTMLElement[]?],
  ...notes: Array<Node | string>
): HTMLElement {
  return html(
    'div',
    {},
    html('dt', {}, link(`/methods/${method}/`, name)),
    html('dd', {}, text, ...marks, ...(notes.length > 0 ? [html('small', {}, ' ', ...notes)] : [])),
  );
}

/** The marks of what a part is made of, each kind once; what can't be right is in no plan. */
function marksOf({ slug, doubts = {} }: PlanPanel, ...parts: Doubted[]): HTMLElement[] {
  const [mark] = parts.flatMap((it): Dagger[] => (doubts[it] ? [doubts[it]] : []));
  return markPieces(mark, `/panels/${slug}/#flags`).map(elementOf);
}

/** All that the page shows of a plan whose distance is given. */
export function planResult(panel: PlanPanel, plan: Plan, calculated: Calculated, data: PlanData): Node[] {
  const { mean, peak, seconds, energy, cost, body, isBeyond } = calculated;
  const { currency, tariff } = data;
  const modelled = isBeyond ? 'modelled; the interval is that of the nearest distance from 5 to 60 cm' : 'modelled';
  const noTime = 'write a radiant exposure';
  const noDraw = 'absent' in panel.mains ? panel.mains.absent : noTime;
  const cm = plan.cm ?? 0;
  const eye = eyeShare(panel, cm);
  const longer = seconds && longerWords(seconds, eye);
  return [
    html('h2', {}, `${panel.name}, ${cm} cm (${figure(cm / CM_PER_INCH)} in)`),
    html(
      'dl',
      { class: 'figures' },
      entry(
        'Minutes',
        'radiant-exposure',
        seconds ? [spanned(minutes(seconds), 'min'), marksOf(panel, 'mean')] : ['–'],
        ...(seconds ? [`for ${plan.exposure} J/cm² at the mean irradiance; ${modelled}. `] : [noTime]),
        ...(longer ? [html('strong', {}, longer)] : []),
      ),
      entry(
        'Mean irradiance',
        'distance-table',
        [spanned(mean, 'mW/cm²'), marksOf(panel, 'mean')],
        `over the LED field; ${modelled}`,
      ),
      entry(
        'Peak irradiance',
        'distance-table',
        peak ? [spanned(peak, 'mW/cm²'), marksOf(panel, 'peak')] : ['not known'],
        peak
          ? `${modelled}; it warms: `
          : 'this near single LEDs may show, and the readings do not tell how; it is above the mean, and it warms: ',
        link('/cautions/#skin-and-heat', 'skin and heat'),
      ),
      entry(
        'Energy',
        'running-cost',
        energy ? [energyWords(energy), marksOf(panel, 'mean', 'mains')] : ['–'],
        ...(energy
          ? [
              'from the mains, both channels on; the doubts of draw and time are taken to be independent: ',
              link('/cautions/#mains-electricity', 'mains electricity'),
            ]
          : [noDraw]),
      ),
      entry(
        'Cost',
        'running-cost',
        cost
          ? [
              spanned(cost, '', (it, decimals) => money(it, currency, Math.min(decimals, MOST_MONEY_DECIMALS))),
              marksOf(panel, 'mean', 'mains'),
            ]
          : ['–'],
        cost ? `tariff of ${showDate(tariff.date)}: ${tariff.price} ${currency}/kWh, ${tariff.source}` : noDraw,
      ),
      entry(
        'Evenly lit share of the body',
        'distance-table',
        [`${Math.round(100 * body.evenShare)} %`],
        'gets at least 80 % of the mean over a flat figure 45 cm wide; rough, no interval is known',
      ),
    ),
    cautionNotice(panel, eyeWords(panel, cm, eye), longer, marksOf(panel, 'infrared')),
    ...(panel.model ? [bodyDrawing(calculated, plan.height, panel.model.field)] : []),
    html(
      'p',
      { class: 'small' },
      'Minutes are arithmetic, not a recommendation. ',
      link(`/panels/${panel.slug}/`, `All figures of the ${panel.name}`),
      '.',
    ),
  ];
}
