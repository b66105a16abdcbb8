/** The planner's page: what a session comes to, as the reader types. */
import { CM_PER_INCH } from '../../../words/other-unit.ts';
import { html } from '../../shared/browser/dom.ts';
import { OtherFormat, readJson } from '../../shared/browser/read-json.ts';
import { FARTHEST_CM, MOST_EXPOSURE, NEAREST_CM, type Plan, planAddress, readPlan, within } from './plan-address.ts';
import { calculatePlan, eyeShare } from './plan-calculation.ts';
import { cautionNotice, eyeWords } from './plan-cautions.ts';
import { PLAN_FORMAT, type PlanData, type PlanPanel } from './plan-panel.ts';
import { planResult, planSummary } from './plan-result.ts';

const form = document.querySelector<HTMLFormElement>('#plan');

if (form) void start(form);

async function start(place: HTMLFormElement): Promise<void> {
  const find = <T extends HTMLElement>(selector: string) => document.querySelector<T>(selector) as T;
  const said = find('[data-plan-said]');
  let data: PlanData;
  try {
    data = await readJson<PlanData>('/data/plan.json', 'the panels', PLAN_FORMAT);
  } catch (error) {
    said.textContent =
      error instanceof OtherFormat
        ? `Nothing can be planned now: ${error.message}.`
        : 'The panels could not be read, so nothing can be planned now.';
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
  const factor = () => (fields.unit.value === 'in' ? CM_PER_INCH : 1);
  let plan: Plan = readPlan('', () => false).plan;

  const fill = () => {
    select.value = plan.panel ?? '';
    fields.unit.value = plan.unit;
    fields.distance.value = plan.cm === undefined ? '' : String(Number((plan.cm / factor()).toFixed(2)));
    fields.exposure.value = plan.exposure === undefined ? '' : String(plan.exposure);
    fields.height.value = String(plan.height);
  };
  const show = (before = '') => {
    const panel = plan.panel === undefined ? undefined : panels.get(plan.panel);
    const result = find('[data-plan-result]');
    // A panel's own cautions say all of it.
    find('[data-plan-every]').hidden = panel !== undefined;
    if (!panel) {
      said.textContent = [before, 'Choose a panel.'].filter(Boolean).join(' ');
      result.replaceChildren();
      return;
    }
    if (panel.model && plan.cm === undefined) {
      said.textContent = [before, 'Write a distance.'].filter(Boolean).join(' ');
      result.replaceChildren(cautionNotice(panel));
      return;
    }
    const calculated = calculatePlan(panel, plan, data);
    if (!calculated) {
      said.textContent = `${before} Nothing can be planned with the ${panel.name}: ${panel.reason}.`.trim();
      const eye = plan.cm === undefined ? undefined : eyeWords(panel, plan.cm, eyeShare(panel, plan.cm));
      result.replaceChildren(cautionNotice(panel, eye));
      return;
    }
    said.textContent = [before, planSummary(panel, plan, calculated)].filter(Boolean).join(' ');
    result.replaceChildren(...planResult(panel, plan, calculated, data));
  };
  const follow = (isNew: boolean) => {
    const cm = within(String(Number((Number(fields.distance.value) * factor()).toFixed(3))), NEAREST_CM, FARTHEST_CM);
    const exposure = within(fields.exposure.value, 1e-6, MOST_EXPOSURE);
    const height = within(fields.height.value, 50, 250);
    const odd = [
      fields.distance.value !== '' && cm === undefined && `The distance is from ${NEAREST_CM} to ${FARTHEST_CM} cm.`,
      fields.exposure.value !== '' &&
        exposure === undefined &&
        `The exposure is above 0 and up to ${MOST_EXPOSURE} J/cm².`,
      height === undefined && 'The height is from 50 to 250 cm.',
    ].filter(Boolean);
    plan = {
      ...(select.value !== '' && { panel: select.value }),
      ...(cm !== undefined && { cm }),
      unit: fields.unit.value === 'in' ? 'in' : 'cm',
      ...(exposure !== undefined && { exposure }),
      height: height ?? plan.height,
    };
    fields.distance.setAttribute('aria-invalid', String(fields.distance.value !== '' && cm === undefined));
    fields.exposure.setAttribute('aria-invalid', String(fields.exposure.value !== '' && exposure === undefined));
    fields.height.setAttribute('aria-invalid', String(height === undefined));
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
      // The same distance, written otherwise.
      plan = { ...plan, unit: fields.unit.value === 'in' ? 'in' : 'cm' };
      history.pushState(null, '', planAddress(plan));
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
