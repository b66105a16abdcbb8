import { CLOSING } from '../measure/exposure/limit.ts';
import { roundedTo, timeWords } from '../measure/exposure/words.ts';
import { fixed, money, showDate } from '../present/format.ts';
import { CM_PER_INCH } from '../present/other-unit.ts';
import type { PlanData, PlanPanel } from '../present/plan-data.ts';
import { html } from './dom.ts';
import type { Plan } from './plan-address.ts';
import { bodyDrawing } from './plan-drawing.ts';
import type { EyeShare, Ranged, Reckoned } from './plan-reckoning.ts';

/** What a planned session comes to, as elements of the page. */

/** A number with as many digits as its size deserves. */
function figure(value: number): string {
  const size = Math.abs(value);
  return fixed(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3);
}

function spanned({ value, low, high }: Ranged, unit: string, show: (value: number) => string = figure): string {
  return low === undefined || high === undefined
    ? `${show(value)}${unit} (± not known)`
    : `${show(value)}${unit} (${show(low)} to ${show(high)})`;
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
const energyWords = (kwh: Ranged) => (kwh.value < 1 ? spanned(times(kwh, 1000), ' Wh') : spanned(kwh, ' kWh'));

/** The plan in a sentence, for the status line. */
export function planSummary(panel: PlanPanel, plan: Plan, { seconds, mean }: Reckoned): string {
  const where = `${panel.name} at ${plan.cm} cm`;
  return seconds
    ? `${where}: ${spanned(minutes(seconds), ' min')} for ${plan.exposure} J/cm².`
    : `${where}: ${spanned(mean, ' mW/cm²')} on the mean. Write a radiant exposure for the minutes.`;
}

function link(href: string, text: string): HTMLElement {
  return html('a', { href }, text);
}

function entry(name: string, method: string, text: string, ...notes: Array<Node | string>): HTMLElement {
  return html(
    'div',
    {},
    html('dt', {}, link(`/methods/${method}/`, name)),
    html('dd', {}, text, ...(notes.length > 0 ? [html('small', {}, ' ', ...notes)] : [])),
  );
}

/** All that the page shows of a plan whose distance is given. */
export function planResult(panel: PlanPanel, plan: Plan, reckoned: Reckoned, data: PlanData): Node[] {
  const { mean, peak, seconds, energy, cost, body, eye, isBeyond } = reckoned;
  const { currency, tariff } = data;
  const modelled = isBeyond ? 'modelled; the interval is that of the nearest distance from 5 to 60 cm' : 'modelled';
  const noTime = 'write a radiant exposure';
  const noDraw = 'absent' in panel.mains ? panel.mains.absent : noTime;
  const cm = plan.cm ?? 0;
  const longer = seconds && eye && longerWords(seconds, eye);
  return [
    html('h2', {}, `${panel.name}, ${cm} cm (${figure(cm / CM_PER_INCH)} in)`),
    html(
      'dl',
      { class: 'figures' },
      entry(
        'Minutes',
        'radiant-exposure',
        seconds ? spanned(minutes(seconds), ' min') : '–',
        ...(seconds ? [`for ${plan.exposure} J/cm² at the mean irradiance; ${modelled}. `] : [noTime]),
        ...(longer ? [html('strong', {}, longer)] : []),
      ),
      entry('Mean irradiance', 'distance-table', spanned(mean, ' mW/cm²'), `over the LED field; ${modelled}`),
      entry(
        'Peak irradiance',
        'distance-table',
        peak ? spanned(peak, ' mW/cm²') : 'not known',
        peak
          ? `${modelled}; it warms: `
          : 'this near single LEDs may show, and the readings do not tell how; it is above the mean, and it warms: ',
        link('/cautions/#skin-and-heat', 'skin and heat'),
      ),
      entry(
        'Energy',
        'running-cost',
        energy ? energyWords(energy) : '–',
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
        cost ? spanned(cost, '', (it) => money(it, currency, it < 1 ? 4 : 2)) : '–',
        cost ? `tariff of ${showDate(tariff.date)}: ${tariff.price} ${currency}/kWh, ${tariff.source}` : noDraw,
      ),
      entry(
        'Evenly lit share of the body',
        'distance-table',
        `${Math.round(100 * body.evenShare)} %`,
        'gets at least 80 % of the mean over a flat figure 45 cm wide; rough, no interval is known',
      ),
    ),
    eyeNotice(panel, cm, eye, longer, isBeyond),
    ...(panel.model ? [bodyDrawing(reckoned, plan.height, panel.model.field)] : []),
    ...(panel.flicker
      ? [html('p', {}, html('strong', {}, 'Flicker. '), panel.flicker, ' ', link('/cautions/#flicker', 'More'), '.')]
      : []),
    html(
      'p',
      { class: 'small' },
      'Also read ',
      link('/cautions/#medicines-and-conditions-that-sensitise', 'which medicines sensitise'),
      ' and ',
      link('/cautions/', 'all cautions'),
      '. Minutes are arithmetic, not a recommendation. ',
      link(`/panels/${panel.slug}/`, `All figures of the ${panel.name}`),
      '.',
    ),
  ];
}

/** Where the time is longer than that after which the infrared limit would be used up: so, or at its upper end only. */
function longerWords({ value, high = value }: Ranged, { cautiousSeconds }: EyeShare): string | undefined {
  if (high <= cautiousSeconds) return undefined;
  const which = value > cautiousSeconds ? 'This is longer' : 'At the upper end of its interval this is longer';
  return `${which} than the ${limitTime(cautiousSeconds)} after which the infrared limit for the eye would be used up, looking towards the panel.`;
}

const limitTime = (seconds: number) => timeWords(roundedTo(seconds, 'low'));

/** The eyes' caution for this panel and distance, in the guide's own words. */
function eyeNotice(
  panel: PlanPanel,
  cm: number,
  eye: EyeShare | undefined,
  longer: string | undefined,
  isBeyond: boolean,
): HTMLElement {
  const notice = (...content: Array<Node | string | undefined>) =>
    html(
      'aside',
      { class: 'notice', 'aria-labelledby': 'plan-eyes' },
      html('h3', { id: 'plan-eyes' }, 'Eyes'),
      ...content,
      html('p', {}, 'Don’t look into the LEDs, and wear the eye protection that the maker prescribes.'),
      html(
        'p',
        { class: 'small' },
        `${CLOSING} `,
        link('/methods/infrared-eye/', 'How it is worked out'),
        ', ',
        link('/cautions/#eyes', 'what to do'),
        '.',
      ),
    );
  if (!eye) {
    const reason = 'absent' in panel.infrared ? panel.infrared.absent : 'the beam is not known';
    return notice(html('p', {}, `What reaches an eye can’t be told: ${reason}.`));
  }
  const { share, cautious, cautiousSeconds } = eye;
  const end =
    share.high === undefined
      ? 'the value itself is used, for its uncertainty is not known'
      : `at the cautious end of the interval ${fixed(roundedTo(cautious, 'high'), cautious < 100 ? 1 : 0)} %`;
  return notice(
    html(
      'p',
      {},
      `Looking towards the panel from ${cm} cm, near-infrared alone gives ${figure(share.value)} % of the limit for long exposures, 100 W/m² (IEC 62471:2006, 4.3.7, seen in secondary sources only); ${end}${isBeyond ? ', which is that of the nearest distance from 5 to 60 cm' : ''}. `,
      Number.isFinite(cautiousSeconds)
        ? `Taken so, the limit would be used up after ${limitTime(cautiousSeconds)}.`
        : 'Taken so, it lies no higher than the limit for long exposures, up to which the standard limits no time.',
    ),
    longer === undefined ? undefined : html('p', {}, html('strong', {}, longer.replace(/^This/, 'The planned time'))),
  );
}
