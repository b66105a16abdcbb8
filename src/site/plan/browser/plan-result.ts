/** What a planned session comes to, as elements of the page. */
import { BODY_WIDTH, EVEN_FROM } from '../../../measure/beam/body-map.ts';
import { TABLE_DISTANCES } from '../../../measure/beam/table-distances.ts';
import { CM_PER_INCH } from '../../../measure/unit-factors.ts';
import type { Dagger } from '../../../words/flags.ts';
import { showDate } from '../../../words/format.ts';
import { elementOf, html } from '../../shared/browser/dom.ts';
import { markPieces } from '../../shared/browser/figure-pieces.ts';
import type { Plan } from './plan-address.ts';
import { type Calculated, eyeShare } from './plan-calculation.ts';
import { cautionNotice } from './plan-cautions.ts';
import { bodyDrawing } from './plan-drawing.ts';
import { eyeWords, longerThanLimit, longerWords } from './plan-eye-words.ts';
import type { Doubted, PlanData, PlanPanel } from './plan-panel.ts';
import { costWords, energyWords, minutesWords, plainNumber, spanned } from './plan-words.ts';

function link(href: string, text: string): HTMLElement {
  return html('a', { href }, text);
}

function entry(
  name: string,
  method: string,
  [text, marks = []]: [string, Element[]?],
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
function marksOf({ slug, doubts = {} }: PlanPanel, ...parts: Doubted[]): Element[] {
  const [mark] = parts.flatMap((it): Dagger[] => (doubts[it] ? [doubts[it]] : []));
  return markPieces(mark, `/panels/${slug}/#flags`).map(elementOf);
}

/** All that the page shows of a plan whose distance is given. */
export function planResult(panel: PlanPanel, plan: Plan, calculated: Calculated, data: PlanData): Node[] {
  const { mean, peak, seconds, energy, cost, body, isBeyond } = calculated;
  const { currency, tariff } = data;
  const modelled = isBeyond
    ? `modelled; the interval is that of the nearest distance from ${Math.min(...TABLE_DISTANCES)} to ${Math.max(...TABLE_DISTANCES)} cm`
    : 'modelled';
  const noTime = 'write a radiant exposure';
  const noDraw = 'absent' in panel.mains ? panel.mains.absent : noTime;
  const cm = plan.cm ?? 0;
  const eye = eyeShare(panel, cm);
  const longer = seconds && longerThanLimit(seconds, eye);
  return [
    html('h2', {}, `${panel.name}, ${cm} cm (${plainNumber(cm / CM_PER_INCH)} in)`),
    html(
      'dl',
      { class: 'figures' },
      entry(
        'Minutes',
        'radiant-exposure',
        seconds ? [minutesWords(seconds), marksOf(panel, 'mean')] : ['–'],
        ...(seconds ? [`for ${plan.exposure} J/cm² at the mean irradiance; ${modelled}. `] : [noTime]),
        ...(longer ? [html('strong', {}, longerWords(longer, 'This'))] : []),
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
        cost ? [costWords(cost, currency), marksOf(panel, 'mean', 'mains')] : ['–'],
        cost ? `tariff of ${showDate(tariff.date)}: ${tariff.price} ${currency}/kWh, ${tariff.source}` : noDraw,
      ),
      entry(
        'Evenly lit share of the body',
        'distance-table',
        [`${Math.round(100 * body.evenShare)} %`],
        `gets at least ${Math.round(100 * EVEN_FROM)} % of the mean over a flat figure ${BODY_WIDTH} cm wide; rough, no interval is known`,
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
