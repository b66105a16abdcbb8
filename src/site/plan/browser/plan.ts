/** The planner's page: what a session comes to, as the reader types. */
import { OtherFormat, readJson } from '../../shared/browser/read-json.ts';
import { type Plan, planAddress, readPlan } from './plan-address.ts';
import { calculatePlan, eyeShare } from './plan-calculation.ts';
import { cautionNotice } from './plan-cautions.ts';
import { eyeWords } from './plan-eye-words.ts';
import { fillForm, find, inChosenUnit, planFields, readForm } from './plan-form.ts';
import { PLAN_FORMAT, type PlanData, type PlanPanel } from './plan-panel.ts';
import { planResult } from './plan-result.ts';
import { planSummary } from './plan-words.ts';

const form = document.querySelector<HTMLFormElement>('#plan');

if (form) void start(form);

async function start(place: HTMLFormElement): Promise<void> {
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
  const fields = planFields(data.panels);
  let plan: Plan = readPlan('', () => false).plan;

  const show = (before: string) => {
    const panel = plan.panel === undefined ? undefined : panels.get(plan.panel);
    // A panel's own cautions say all of it.
    find('[data-plan-every]').hidden = panel !== undefined;
    const { status, nodes } = shown(plan, panel, data);
    said.textContent = [before, status].filter((it) => it !== '').join(' ');
    find('[data-plan-result]').replaceChildren(...nodes);
  };
  const follow = (isNew: boolean) => {
    const { plan: written, odd } = readForm(fields, plan);
    plan = written;
    history[isNew ? 'pushState' : 'replaceState'](null, '', planAddress(plan));
    show(odd);
  };
  const apply = () => {
    const found = readPlan(location.search, (slug) => panels.has(slug));
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
      history.pushState(null, '', planAddress(plan));
      fillForm(fields, plan);
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

/** What the page shows of a plan: the status line, and the result with its cautions. */
function shown(plan: Plan, panel: PlanPanel | undefined, data: PlanData): { status: string; nodes: Node[] } {
  if (!panel) return { status: 'Choose a panel.', nodes: [] };
  if (panel.model && plan.cm === undefined) return { status: 'Write a distance.', nodes: [cautionNotice(panel)] };
  const calculated = calculatePlan(panel, plan, data);
  if (!calculated) {
    const eye = plan.cm === undefined ? undefined : eyeWords(panel, plan.cm, eyeShare(panel, plan.cm));
    return {
      status: `Nothing can be planned with the ${panel.name}: ${panel.reason}.`,
      nodes: [cautionNotice(panel, eye)],
    };
  }
  return { status: planSummary(panel, plan, calculated), nodes: planResult(panel, plan, calculated, data) };
}
