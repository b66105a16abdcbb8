/** The parts of the tools, each folded behind its button. */
import { type GuideState, hasOwnPrices, SETS } from './guide-address.ts';

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

/** Whether a part of the tools does something to the ranking, which its button says while the part is folded. */
export function showUse(button: HTMLElement, state: GuideState, filters: readonly string[]): void {
  const isInUse =
    button.dataset.part === 'own' ? hasOwnPrices(state) : filters.some((name) => isFilterSet(state, name));
  const words = button.querySelector('span');
  if (words) words.textContent = isInUse ? ' · in use' : '';
}
