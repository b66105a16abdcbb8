/** The planner's state in the address: `/plan/?panel=slug&cm=30&exposure=12&height=181&unit=in`. No DOM. */
import { USUAL_HEIGHT } from '../../../measure/person.ts';

export interface Plan {
  panel?: string;
  /** Distance from the LEDs, cm; none is suggested. */
  cm?: number;
  /** How the reader writes the distance. */
  unit: 'cm' | 'in';
  /** Radiant exposure that is asked for, J/cm²; nothing is suggested. */
  exposure?: number;
  /** Of the person, cm. */
  height: number;
}

/** Distances that can be planned for, cm. */
export const NEAREST_CM = 5;
export const FARTHEST_CM = 200;
export const LEAST_HEIGHT = 50;
export const MOST_HEIGHT = 250;
export const LEAST_EXPOSURE = 1e-6;
export const MOST_EXPOSURE = 10_000;
const LONGEST = 2000;
const LONGEST_NAME = 40;

/** A number written plainly, within limits; undefined for anything else. */
export function within(text: string, low: number, high: number): number | undefined {
  const trimmed = text.trim();
  if (!/^\d{1,6}(\.\d{1,6})?$/.test(trimmed)) return undefined;
  const value = Number(trimmed);
  return value >= low && value <= high ? value : undefined;
}

/** The panel that a name of today or of before means. */
type SlugOf = (name: string) => string | undefined;

/** Reads the query of an address. Never throws; what it can't use is named in `said`. */
export function readPlan(query: string, slugOf: SlugOf): { plan: Plan; said: string } {
  const plan: Plan = { unit: 'cm', height: USUAL_HEIGHT };
  if (query.length > LONGEST) return { plan, said: 'The address is too long to be a plan; it was left aside.' };
  const odd: string[] = [];
  for (const [name, value] of new URLSearchParams(query)) {
    if (value === '') continue;
    if (!set(plan, name, value, slugOf)) odd.push(`“${`${name}=${value}`.slice(0, LONGEST_NAME)}”`);
  }
  return { plan, said: odd.length > 0 ? `Left aside from the address: ${odd.slice(0, 3).join(', ')}.` : '' };
}

function set(plan: Plan, name: string, value: string, slugOf: SlugOf): boolean {
  switch (name) {
    case 'panel':
      return assign(slugOf(value), (it) => {
        plan.panel = it;
      });
    case 'cm':
      return assign(within(value, NEAREST_CM, FARTHEST_CM), (it) => {
        plan.cm = it;
      });
    case 'exposure':
      return assign(within(value, LEAST_EXPOSURE, MOST_EXPOSURE), (it) => {
        plan.exposure = it;
      });
    case 'height':
      return assign(within(value, LEAST_HEIGHT, MOST_HEIGHT), (it) => {
        plan.height = it;
      });
    case 'unit':
      if (value !== 'in' && value !== 'cm') return false;
      plan.unit = value;
      return true;
    default:
      return false;
  }
}

function assign<T>(value: T | undefined, to: (value: T) => void): boolean {
  if (value === undefined) return false;
  to(value);
  return true;
}

/** Writes an address; what is as usual is left out. */
export function planAddress({ panel, cm, unit, exposure, height }: Plan): string {
  const query = new URLSearchParams();
  if (panel) query.set('panel', panel);
  if (cm !== undefined) query.set('cm', String(cm));
  if (unit !== 'cm') query.set('unit', unit);
  if (exposure !== undefined) query.set('exposure', String(exposure));
  if (height !== USUAL_HEIGHT) query.set('height', String(height));
  const text = query.toString();
  return `/plan/${text === '' ? '' : `?${text}`}`;
}
