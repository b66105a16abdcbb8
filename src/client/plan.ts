/** The planner's page: what a session comes to, as the reader types. */
import { CLOSING } from '../measure/exposure/limit.ts';
import { fixed, money, showDate } from '../present/format.ts';
import type { PlanData, PlanPanel } from '../present/plan-data.ts';
import { html } from './dom.ts';
import { FARTHEST_CM, MOST_EXPOSURE, NEAREST_CM, type Plan, planAddress, readPlan, within } from './plan-address.ts';
import { bodyDrawing } from './plan-drawing.ts';
import { type EyeShare, type Ranged, type Reckoned, reckonPlan } from './plan-reckoning.ts';

const form = document.querySelector<HTMLFormElement>('#plan');
const INCH = 2.54;

if (form) void start(form);

async function start(place: HTMLFormElement): Promise<void> {
  const find = <T extends HTMLElement>(selector: string) => document.querySelector<T>(selector) as T;
  const said = find('[data-plan-said]');
  let data: PlanData;
  try {
    const response = await fetch('/data/plan.json');
    data = (await response.json()) as PlanData;
  } catch {
    said.textContent = 'The panels could not be read, so nothing can be planned now.';
    return;
  }
  const panels = new Map(data.panels.map((it) => [it.slug, it]));
  const select = find<HTMLSelectElement>('#plan-panel');
  fillSelect(select, data.panels);
  const fields = {
    distance: find<HTMLInputElement>('#plan-distance'),
    unit: find<HTMLSelectElement>('#plan-unit'),
    exposure: find<HTMLInputElement>('#plan-exposure'),
    height: find<HTMLInputElement>('#plan-height'),
  };
  const factor = () => (fields.unit.value === 'in' ? INCH : 1);
  let plan: Plan = readPlan('', () => false).plan;

  const fill = () => {
    select.value = plan.panel ?? '';
    fields.distance.value = String(Number((plan.cm / factor()).toFixed(2)));
    fields.exposure.value = plan.exposure === undefined ? '' : String(plan.exposure);
    fields.height.value = String(plan.height);
  };
  const show = (before = '') => {
    const panel = plan.panel === undefined ? undefined : panels.get(plan.panel);
    const result = find('[data-plan-result]');
    if (!panel) {
      said.textContent = [before, 'Choose a panel.'].filter(Boolean).join(' ');
      result.replaceChildren();
      return;
    }
    const reckoned = reckonPlan(panel, plan, data);
    if (!reckoned) {
      said.textContent = `${before} Nothing can be planned with the ${panel.name}: ${panel.reason}.`.trim();
      result.replaceChildren();
      return;
    }
    said.textContent = [before, summary(panel, plan, reckoned)].filter(Boolean).join(' ');
    result.replaceChildren(...resultNodes(panel, plan, reckoned, data));
  };
  const follow = (isNew: boolean) => {
    const cm = within(String(Number(fields.distance.value) * factor()).slice(0, 7), NEAREST_CM, FARTHEST_CM);
    const exposure = within(fields.exposure.value, 1e-6, MOST_EXPOSURE);
    const height = within(fields.height.value, 50, 250);
    const odd = [
      cm === undefined && `The distance is from ${NEAREST_CM} to ${FARTHEST_CM} cm.`,
      fields.exposure.value !== '' &&
        exposure === undefined &&
        `The exposure is above 0 and up to ${MOST_EXPOSURE} J/cm².`,
      height === undefined && 'The height is from 50 to 250 cm.',
    ].filter(Boolean);
    plan = {
      ...(select.value !== '' && { panel: select.value }),
      cm: cm ?? plan.cm,
      ...(exposure !== undefined && { exposure }),
      height: height ?? plan.height,
    };
    history[isNew ? 'pushState' : 'replaceState'](null, '', planAddress(plan));
    show(odd.join(' '));
  };
  const apply = () => {
    const found = readPlan(location.search, (slug) => panels.has(slug));
    plan = found.plan;
    fill();
    show(found.said);
  };

  place.addEventListener('submit', (event) => event.preventDefault());
  let typedIn: EventTarget | null = null;
  place.addEventListener('input', (event) => {
    if (event.target === fields.unit) {
      fill();
      return;
    }
    const isTyping = event.target instanceof HTMLInputElement;
    follow(!isTyping || typedIn !== event.target);
    typedIn = isTyping ? event.target : null;
  });
  addEventListener('popstate', () => {
    typedIn = null;
    apply();
  });
  place.hidden = false;
  apply();
}

/** Panels by size class; those whose light is not modelled can't be chosen, and say why. */
function fillSelect(select: HTMLSelectElement, panels: readonly PlanPanel[]): void {
  for (const [group, own] of Map.groupBy(panels, (it) => it.group)) {
    select.append(
      html(
        'optgroup',
        { label: group },
        ...own.map((it) =>
          html(
            'option',
            { value: it.slug, disabled: it.reason !== undefined },
            it.reason ? `${it.name} (${it.reason})` : it.name,
          ),
        ),
      ),
    );
  }
}

/** A number with as many digits as its size deserves. */
function figure(value: number): string {
  const size = Math.abs(value);
  return fixed(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3);
}

const spanned = ({ value, low, high }: Ranged, unit: string) =>
  `${figure(value)}${unit} (${figure(low)} to ${figure(high)})`;
const minutes = ({ value, low, high }: Ranged): Ranged => ({ value: value / 60, low: low / 60, high: high / 60 });

function summary(panel: PlanPanel, plan: Plan, { seconds, mean }: Reckoned): string {
  if (!seconds)
    return `${panel.name} at ${plan.cm} cm: ${spanned(mean, ' mW/cm²')} on the mean. Write a radiant exposure for the minutes.`;
  return `${panel.name} at ${plan.cm} cm: ${spanned(minutes(seconds), ' min')} for ${plan.exposure} J/cm².`;
}

function link(href: string, text: string): HTMLElement {
  return html('a', { href }, text);
}

function entry(name: string, method: string, text: string, note?: string): HTMLElement {
  return html(
    'div',
    {},
    html('dt', {}, link(`/methods/${method}/`, name)),
    html('dd', {}, text, note !== undefined && html('small', {}, ` ${note}`)),
  );
}

function resultNodes(panel: PlanPanel, plan: Plan, reckoned: Reckoned, data: PlanData): Node[] {
  const { mean, peak, seconds, energy, cost, body, eye, isBeyond } = reckoned;
  const { currency, tariff } = data;
  const modelled = isBeyond ? 'modelled; beyond 60 cm the interval of 60 cm is taken' : 'modelled';
  const noTime = 'write a radiant exposure';
  const noDraw = 'absent' in panel.mains ? panel.mains.absent : noTime;
  return [
    html('h2', {}, `${panel.name}, ${plan.cm} cm (${figure(plan.cm / INCH)} in)`),
    html(
      'dl',
      { class: 'figures' },
      entry(
        'Minutes',
        'radiant-exposure',
        seconds ? spanned(minutes(seconds), ' min') : '–',
        seconds ? `for ${plan.exposure} J/cm² at the mean irradiance; ${modelled}` : noTime,
      ),
      entry('Mean irradiance', 'distance-table', spanned(mean, ' mW/cm²'), `over the LED field; ${modelled}`),
      entry('Peak irradiance', 'distance-table', spanned(peak, ' mW/cm²'), modelled),
      entry(
        'Energy',
        'running-cost',
        energy ? spanned(energy, ' kWh') : '–',
        energy ? 'from the mains, both channels on' : noDraw,
      ),
      entry(
        'Cost',
        'running-cost',
        cost
          ? `${money(cost.value, currency, 4)} (${money(cost.low, currency, 4)} to ${money(cost.high, currency, 4)})`
          : '–',
        cost ? `tariff of ${showDate(tariff.date)}: ${tariff.price} ${currency}/kWh, ${tariff.source}` : noDraw,
      ),
      entry(
        'Evenly lit share of the body',
        'distance-table',
        `${Math.round(100 * body.evenShare)} %`,
        'gets at least 80 % of the mean over a flat figure 45 cm wide; rough, no interval is known',
      ),
    ),
    eyeNotice(panel, plan, eye, seconds),
    ...(panel.model ? [bodyDrawing(reckoned, plan.height, panel.model.field)] : []),
    html(
      'p',
      { class: 'small' },
      'Cautions: ',
      link('/cautions/#skin-and-heat', 'skin and heat'),
      ', ',
      link('/cautions/#mains-electricity', 'mains electricity'),
      ', ',
      link('/cautions/#medicines-and-conditions-that-sensitise', 'medicines that sensitise'),
      ', ',
      link('/cautions/', 'all of them'),
      '. Minutes are arithmetic, not a recommendation. ',
      link(`/panels/${panel.slug}/`, `All figures of the ${panel.name}`),
      '.',
    ),
    ...(panel.flicker
      ? [html('p', {}, html('strong', {}, 'Flicker. '), panel.flicker, ' ', link('/cautions/#flicker', 'More'), '.')]
      : []),
  ];
}

/** The eyes' caution for this panel and distance, and whether the planned time is longer than the limit's. */
function eyeNotice(panel: PlanPanel, plan: Plan, eye: EyeShare | undefined, seconds: Ranged | undefined): HTMLElement {
  const title = html('h3', { id: 'plan-eyes' }, 'Eyes');
  const closing = html(
    'p',
    { class: 'small' },
    `${CLOSING} `,
    link('/methods/infrared-eye/', 'How it is worked out'),
    ', ',
    link('/cautions/#eyes', 'what to do'),
    '.',
  );
  if (!eye) {
    const reason = 'absent' in panel.infrared ? panel.infrared.absent : 'the beam is not known';
    return html(
      'aside',
      { class: 'notice', 'aria-labelledby': 'plan-eyes' },
      title,
      html('p', {}, `What reaches an eye can’t be told: ${reason}. Don’t look into the LEDs.`),
      closing,
    );
  }
  const { share, cautiousSeconds } = eye;
  const isTimed = Number.isFinite(cautiousSeconds);
  const time = `${Math.floor(cautiousSeconds)} s (${figure(cautiousSeconds / 60)} min)`;
  const isLonger = isTimed && seconds !== undefined && seconds.high > cautiousSeconds;
  return html(
    'aside',
    { class: 'notice', 'aria-labelledby': 'plan-eyes' },
    title,
    html(
      'p',
      {},
      `Looking towards the panel from ${plan.cm} cm, near-infrared alone gives ${figure(share.value)} % of the limit for long exposures, 100 W/m² (IEC 62471:2006, 4.3.7, seen in secondary sources only), at the cautious end of the interval ${figure(share.high)} %. `,
      isTimed
        ? `Taken so, the limit would be used up after ${time}.`
        : 'Taken so, it lies no higher than the limit for long exposures, up to which the standard limits no time.',
    ),
    isLonger &&
      html(
        'p',
        {},
        html(
          'strong',
          {},
          `The planned time is longer than the ${time} after which the infrared limit for the eye would be used up, looking towards the panel.`,
        ),
      ),
    html('p', {}, 'Don’t look into the LEDs, and wear the eye protection that the maker prescribes.'),
    closing,
  );
}
