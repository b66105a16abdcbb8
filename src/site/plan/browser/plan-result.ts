/** What a planned session comes to, as elements of the page. */
import { BODY_WIDTH } from '../../../measure/beam/body-map.ts';
import { TABLE_DISTANCES } from '../../../measure/beam/table-distances.ts';
import { CM_PER_INCH } from '../../../measure/unit-factors.ts';
import type { Dagger } from '../../../words/flags.ts';
import { elementOf, html } from '../../shared/browser/dom.ts';
import { carriedPieces, markPieces } from '../../shared/browser/figure-pieces.ts';
import type { Plan } from './plan-address.ts';
import type { Calculated } from './plan-calculation.ts';
import { bodyDrawing } from './plan-drawing.ts';
import { eyeNotice } from './plan-eye.ts';
import type { Doubted, PlanData, PlanPanel } from './plan-panel.ts';
import {
  costWords,
  durationWords,
  energyWords,
  inOneLine,
  plainNumber,
  type SpanWords,
  spanWords,
} from './plan-words.ts';

const link = (href: string, ...text: Array<Node | string | false>) => html('a', { href }, ...text);

/** A number that leads to its method, how far it may be off, and its marks. */
function linked(method: string, { value, spread, unit }: SpanWords, marks: readonly Element[] = []): Node[] {
  const isPlusMinus = /^± [\d.]/.test(spread);
  const behind = unit === '' ? '' : ` ${unit}`;
  return [
    link(
      `/methods/${method}/`,
      html('b', {}, value),
      isPlusMinus && html('span', { class: 'pm' }, ` ${spread}`),
      behind,
    ),
    ...marks,
    ...(isPlusMinus || spread === '' ? [] : [html('span', { class: 'pm' }, ` ${spread}`)]),
  ];
}

/** The same for the middle of a sentence, where both ends of an interval would run on into it. */
const inBrackets = ({ spread, ...words }: SpanWords): SpanWords => ({
  ...words,
  spread: spread.includes(' to ') ? `(${spread})` : spread,
});

/** One of the lesser figures. */
function entry(name: string, value: readonly Node[] | string, ...notes: Array<Node | string>): HTMLElement {
  return html(
    'div',
    {},
    html('dt', {}, name),
    html('dd', {}, ...(typeof value === 'string' ? [value] : value)),
    html('dd', { class: 'small soft' }, ...notes),
  );
}

/** The marks of what a part is made of, each kind once; what can't be right is in no plan. */
function marksOf({ slug, doubts = {}, carried = {} }: PlanPanel, ...parts: Doubted[]): Element[] {
  const [mark] = parts.flatMap((it): Dagger[] => (doubts[it] ? [doubts[it]] : []));
  const days = parts.map((it) => carried[it]);
  const day = days.find((it) => it !== undefined);
  const isWhole = days.every((it) => it === day) || day?.startsWith('in part ');
  return [
    ...markPieces(mark, `/panels/${slug}/#flags`),
    ...carriedPieces(day === undefined || isWhole ? day : `in part ${day}`),
  ].map(elementOf);
}

/** All that the page shows of a plan whose distance is given. */
export function planResult(panel: PlanPanel, plan: Plan, calculated: Calculated, data: PlanData): Node[] {
  const { seconds, isBeyond } = calculated;
  const cm = plan.cm ?? 0;
  const [nearest, farthest] = [Math.min(...TABLE_DISTANCES), Math.max(...TABLE_DISTANCES)];
  const mean = linked('distance-table', inBrackets(spanWords(calculated.mean, 'mW/cm²')), marksOf(panel, 'mean'));
  const basis = isBeyond
    ? ` over the LED field, from the model of its light; the interval is that of the nearest distance from ${nearest} to ${farthest} cm.`
    : ' over the LED field, from the model of its light.';
  return [
    html(
      'section',
      { class: 'plan-out', 'aria-labelledby': 'planned' },
      html(
        'h2',
        { id: 'planned' },
        `${panel.name}, ${cm} cm (${plainNumber(cm / CM_PER_INCH)} in)${plan.exposure === undefined ? '' : `, ${plan.exposure} J/cm²`}`,
      ),
      seconds &&
        html('p', { class: 'big' }, ...linked('radiant-exposure', durationWords(seconds), marksOf(panel, 'mean'))),
      seconds
        ? html('p', { class: 'small soft' }, `for ${plan.exposure} J/cm² at a mean of `, ...mean, basis)
        : html('p', { class: 'plan-mean' }, 'Mean: ', ...mean, html('span', { class: 'soft' }, basis)),
      eyeNotice(panel, plan, seconds, marksOf(panel, 'infrared')),
      lesserFigures(panel, calculated, data),
      html('p', { class: 'small plan-on' }, link(`/panels/${panel.slug}/`, `All figures of the ${panel.name}`)),
    ),
    ...(panel.model ? [bodyDrawing(calculated, plan.height, panel.model.field)] : []),
  ];
}

function lesserFigures(
  panel: PlanPanel,
  { peak, seconds, energy, cost, body }: Calculated,
  data: PlanData,
): HTMLElement {
  const warms = link('/cautions/#skin-and-heat', 'it warms');
  return html(
    'dl',
    { class: 'plan-figures' },
    ...(energy
      ? [
          entry(
            'Energy',
            linked('running-cost', energyWords(energy), marksOf(panel, 'mean', 'mains')),
            ...(cost ? [`${inOneLine(costWords(cost, data.currency))} at the mains`] : []),
          ),
        ]
      : seconds && 'absent' in panel.mains
        ? [entry('Energy', '–', panel.mains.absent)]
        : []),
    peak
      ? entry('Peak', linked('distance-table', spanWords(peak, 'mW/cm²'), marksOf(panel, 'peak')), warms)
      : entry('Peak', 'not known', 'so near, single LEDs may show; it is above the mean, and ', warms),
    entry(
      'Evenly lit',
      linked('distance-table', { value: `${Math.round(100 * body.evenShare)} %`, spread: '', unit: '' }),
      `of a flat figure ${BODY_WIDTH} cm wide; rough, no interval is known`,
    ),
  );
}
