/** The parts of the tools, each folded behind its button. */
import { type GuideState, SETS } from './guide-address.ts';

/** Opens a part of the tools by its button, or folds it. */
export function unfold(button: HTMLElement, isOpen: boolean): void {
  button.setAttribute('aria-expanded', String(isOpen));
  const part = document.querySelector<HTMLElement>(`#${button.getAttribute('aria-controls')}`);
  if (part) part.hidden = !isOpen;
}

/** A filter is set. */
export function isFilterSet(state: GuideState, name: string): boolean {
  if (name === 'since') return state.since !== undefined;
  if (name === 'claims') return state.hasHeld === true;
  const set = SETS.find((it) => it === name);
  return set ? (state.sets[set]?.length ?? 0) > 0 : state.ranges[name] !== undefined;
}

/** A part of the tools that the address speaks of stands open. */
export function isInUse(state: GuideState, part: string | undefined, filters: readonly string[]): boolean {
  if (part === 'own') return state.own.size > 0 || state.extra !== undefined;
  return filters.some((name) => isFilterSet(state, name));
}
