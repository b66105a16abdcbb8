import { decimalsWithin, fixed } from '../../../words/format.ts';

/**
 * Minutes to the radiant exposure that a reader types in, in the table by distance. Without a script the table has the
 * time for each 1 J/cm² instead.
 */

/** More than this is a slip of the hand, J/cm². */
const MOST = 10_000;
const SECONDS_A_MINUTE = 60;

const form = document.querySelector<HTMLFormElement>('form[data-exposure]');
const head = document.querySelector<HTMLElement>('[data-exposure-head]');
const cells = [...document.querySelectorAll<HTMLElement>('[data-seconds]')];

/** A time in minutes, with the digits that its interval leaves. */
function minutes(value: number, low: number, high: number): string {
  const decimals = decimalsWithin(low, high);
  return `${fixed(value, decimals)} min (${fixed(low, decimals)} to ${fixed(high, decimals)})`;
}

if (form && head && cells.length > 0) {
  const input = form.querySelector('input') as HTMLInputElement;
  const status = form.querySelector('[role=status]') as HTMLElement;
  const before = { head: head.textContent ?? '', cells: cells.map((cell) => cell.textContent ?? '') };
  const restore = () => {
    head.textContent = before.head;
    cells.forEach((cell, i) => {
      cell.textContent = before.cells[i] as string;
    });
  };
  const show = () => {
    const wanted = input.valueAsNumber;
    const isEmpty = input.value === '' && !input.validity.badInput;
    const isUsable = wanted > 0 && wanted <= MOST;
    input.setAttribute('aria-invalid', String(!isEmpty && !isUsable));
    if (!isUsable) {
      restore();
      status.textContent = isEmpty ? '' : `Write a number above 0 and up to ${MOST.toLocaleString('en-GB')}.`;
      return;
    }
    head.textContent = `Minutes for ${wanted.toLocaleString('en-GB')} J/cm²`;
    for (const cell of cells) {
      const [value, low, high] = [cell.dataset.seconds, cell.dataset.low, cell.dataset.high].map(
        (it) => (wanted * Number(it)) / SECONDS_A_MINUTE,
      ) as [number, number, number];
      cell.textContent = minutes(value, low, high);
    }
    status.textContent = `The table gives the minutes for ${wanted.toLocaleString('en-GB')} J/cm². Arithmetic, not a recommendation.`;
  };
  form.hidden = false;
  form.addEventListener('submit', (event) => event.preventDefault());
  input.addEventListener('input', show);
}
