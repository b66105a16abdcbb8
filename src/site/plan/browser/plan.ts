/** The planner's page: what a session comes to, as the reader types. */

import { html } from '../../shared/browser/dom.ts';
import { nameToday } from '../../shared/browser/former-names.ts';
import { OtherFormat, readJson } from '../../shared/browser/read-json.ts';
import { inSite } from '../../shared/browser/site-path.ts';
import { type Plan, planAddress, readPlan } from './plan-address.ts';
import { calculatePlan, eyeShare } from './plan-calculation.ts';
import { cautionNotice } from './plan-cautions.ts';
import { eyeWords } from './plan-eye-words.ts';
import { fillForm, find, inChosenUnit, planFields, readForm } from './plan-form.ts';
import { type PackedPlan, PLAN_FORMAT, type PlanData, type PlanPanel, unpackPlan } from './plan-panel.ts';
import { planResult } from './plan-result.ts';
import { planSummary } from './plan-words.ts';

const form = document.querySelector<HTMLFormElement>('#plan');

if (form) void start(form);

async function start(place: HTMLFormElement): Promise<void> {
  const said = find('[data-plan-said]');
  let data: PlanData;
  try {
    data = unpackPlan(await readJson<PackedPlan>('/data/plan.json', 'the panels', PLAN_FORMAT));
  } catch (error) {
    said.textContent =
      error instanceof OtherFormat
        ? `Nothing can be planned now: ${error.message}.`
        : 'The panels could not be read, so nothing can be planned now.';
    return;
  }
  const panels = new Map(data.panels.map((it) => [it.slug, it]));
  const slugOf = nameToday(data.panels);
  const fields = planFields(data.panels);
  let plan: Plan = readPlan('', () => undefined).plan;

  const show = (before: string) => {
    const panel = plan.panel === undefined ? undefined : panels.get(plan.panel);
    // A panel's own cautions say all of it.
    find('[data-plan-every]').hidden = panel !== undefined;
    const { status, isShown, result, cautions } = shown(plan, panel, data);
    said.textContent = [before, status].filter((it) => it !== '').join(' ');
    // What the result shows large is for those who hear it alone.
    said.classList.toggle('unseen', isShown && before === '');
    const { photo } = panel ?? {};
    find('[data-plan-photo]').replaceChildren(...(photo ? [html('img', { ...photo, alt: '' })] : []));
    find('[data-plan-result]').replaceChildren(...result);
    find('[data-plan-cautions]').replaceChildren(...cautions);
  };
  const follow = (isNew: boolean) => {
    const { plan: written, odd } = readForm(fields, plan);
    plan = written;
    history[isNew ? 'pushState' : 'replaceState'](null, '', inSite(planAddress(plan)));
    show(odd);
  };
  const apply = () => {
    const found = readPlan(location.search, slugOf);
    plan = found.plan;
    fillForm(fields, plan);
    show(found.said);
  };

  place.addEventListener('submit', (event) => event.preventDefault());
  let typedIn: EventTarget | null = null;
  place.addEventListener('input', (event) => {
    if (event.target === fields.unit) {
      // The same distance, written otherwise.
      plan = inChosenUnit(fields, plan);
      history.pushState(null, '', inSite(planAddress(plan)));
      fillForm(fields, plan);
      show('');
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

/** What the page shows of a plan. */
interface ShownPlan {
  /** For the status line. */
  status: string;
  /** The result says it too. */
  isShown: boolean;
  result: Node[];
  cautions: Node[];
}

function shown(plan: Plan, panel: PlanPanel | undefined, data: PlanData): ShownPlan {
  const only = (status: string, ...cautions: Node[]) => ({ status, isShown: false, result: [], cautions });
  if (!panel) return only('Choose a panel.');
  if (panel.model && plan.cm === undefined) return only('Write a distance.', cautionNotice(panel, {}));
  const calculated = calculatePlan(panel, plan, data);
  if (!calculated) {
    const eyes = plan.cm === undefined ? {} : { said: eyeWords(panel, plan.cm, eyeShare(panel, plan.cm)) };
    return only(`Nothing can be planned with the ${panel.name}: ${panel.reason}.`, cautionNotice(panel, eyes));
  }
  return {
    status: calculated.seconds ? planSummary(panel, plan, calculated.seconds) : 'Write an exposure for the time.',
    isShown: calculated.seconds !== undefined,
    result: planResult(panel, plan, calculated, data),
    cautions: [cautionNotice(panel, 'said')],
  };
}
