/** Steps of the keys within a plot, which is one stop of the Tab key. */
const STEPS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

/** Moves from a point's button to the next one by an arrow key. */
export function goBetween(event: KeyboardEvent): void {
  const step = STEPS[event.key];
  const from = event.target;
  if (step === undefined || !(from instanceof HTMLElement)) return;
  event.preventDefault();
  const to = step > 0 ? from.nextElementSibling : from.previousElementSibling;
  if (!(to instanceof HTMLElement)) return;
  from.tabIndex = -1;
  to.tabIndex = 0;
  to.focus();
}
