/** The planner's form: what is written in it as a plan, and a plan written into it. */
import { CM_PER_INCH } from '../../../measure/unit-factors.ts';
import { html } from '../../shared/browser/dom.ts';
import {
  FARTHEST_CM,
  LEAST_EXPOSURE,
  LEAST_HEIGHT,
  MOST_EXPOSURE,
  MOST_HEIGHT,
  NEAREST_CM,
  type Plan,
  within,
} from './plan-address.ts';
import type { PlanPanel } from './plan-panel.ts';

/** An element that the page has; an Error where it has none. */
export function find<T extends HTMLElement>(selector: string): T {
  const element = document.querySelector<T>(selector);
  if (!element) throw new Error(`the page has no ${selector}`);
  return element;
}

/** The fields of the form. */
export interface PlanFields {
  panel: HTMLSelectElement;
  distance: HTMLInputElement;
  unit: HTMLSelectElement;
  exposure: HTMLInputElement;
  height: HTMLInputElement;
  heightUnit: HTMLElement;
}

/** Finds the fields, and lets the panels be chosen. */
export function planFields(panels: readonly PlanPanel[]): PlanFields {
  const panel = find<HTMLSelectElement>('#plan-panel');
  fillSelect(panel, panels);
  return {
    panel,
    distance: find('#plan-distance'),
    unit: find('#plan-unit'),
    exposure: find('#plan-exposure'),
    height: find('#plan-height'),
    heightUnit: find('[data-plan-height-unit]'),
  };
}

const unitOf = ({ unit }: PlanFields): Plan['unit'] => (unit.value === 'in' ? 'in' : 'cm');
const cmOf = (unit: Plan['unit']) => (unit === 'in' ? CM_PER_INCH : 1);

/** Writes a plan into the form. */
export function fillForm(fields: PlanFields, plan: Plan): void {
  fields.panel.value = plan.panel ?? '';
  fields.unit.value = plan.unit;
  fields.distance.value = plan.cm === undefined ? '' : written(plan.cm, plan.unit);
  fields.exposure.value = plan.exposure === undefined ? '' : String(plan.exposure);
  fields.height.value = written(plan.height, plan.unit);
  fields.heightUnit.textContent = plan.unit;
}

/** A length as it stands in its field. */
const written = (cm: number, unit: Plan['unit']) => String(Number((cm / cmOf(unit)).toFixed(2)));

/** The length of a field, cm; the one before where the field still shows it, so that no rounding moves it. */
function lengthOf(field: HTMLInputElement, unit: Plan['unit'], before: number | undefined, low: number, high: number) {
  if (before !== undefined && field.value === written(before, unit)) return before;
  return field.value === ''
    ? undefined
    : within(String(Number((Number(field.value) * cmOf(unit)).toFixed(3))), low, high);
}

/** The same plan in the unit that is chosen now. */
export const inChosenUnit = (fields: PlanFields, plan: Plan): Plan => ({ ...plan, unit: unitOf(fields) });

/**
 * What is written in the form, and what of it can't be used, in words; the fields are marked so.
 *
 * @param before the plan until now; its height stays where none can be read
 */
export function readForm(fields: PlanFields, before: Plan): { plan: Plan; odd: string } {
  const unit = unitOf(fields);
  const cm = lengthOf(fields.distance, unit, before.cm, NEAREST_CM, FARTHEST_CM);
  const exposure = within(fields.exposure.value, LEAST_EXPOSURE, MOST_EXPOSURE);
  const height = lengthOf(fields.height, unit, before.height, LEAST_HEIGHT, MOST_HEIGHT);
  const checks = [
    {
      field: fields.distance,
      isOdd: fields.distance.value !== '' && cm === undefined,
      wanted: `The distance is from ${NEAREST_CM} to ${FARTHEST_CM} cm.`,
    },
    {
      field: fields.exposure,
      isOdd: fields.exposure.value !== '' && exposure === undefined,
      wanted: `The exposure is above 0 and up to ${MOST_EXPOSURE} J/cm².`,
    },
    {
      field: fields.height,
      isOdd: height === undefined,
      wanted: `The height is from ${LEAST_HEIGHT} to ${MOST_HEIGHT} cm.`,
    },
  ];
  for (const { field, isOdd } of checks) field.setAttribute('aria-invalid', String(isOdd));
  return {
    plan: {
      ...(fields.panel.value !== '' && { panel: fields.panel.value }),
      ...(cm !== undefined && { cm }),
      unit,
      ...(exposure !== undefined && { exposure }),
      height: height ?? before.height,
    },
    odd: checks.flatMap(({ isOdd, wanted }) => (isOdd ? [wanted] : [])).join(' '),
  };
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
