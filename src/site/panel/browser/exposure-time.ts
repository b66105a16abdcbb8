import { timeRangeWords } from '../../../words/time-words.ts';
import { html } from '../../shared/browser/dom.ts';
import { numberField } from './number-field.ts';

/**
 * The time to the radiant exposure that a reader types in, in the table by distance. Without a script the table has the
 * time for each 1 J/cm² instead, in seconds.
 */

/** More than this is a slip of the hand, J/cm². */
const MOST = 10_000;

/** A time that stays on one line. */
const whole = (time: string) => time.replaceAll(' ', '\u00a0');

const form = document.querySelector<HTMLFormElement>('form[data-exposure]');
const head = document.querySelector<HTMLElement>('[data-exposure-head]');
const cells = [...document.querySelectorAll<HTMLElement>('[data-seconds]')];

/** Where the interval of a cell's value stands. */
const intervalOf = (cell: HTMLElement) => cell.closest('td')?.querySelector('small');

const input = numberField({ id: 'exposure-field', name: 'exposure', 'aria-describedby': 'exposure-note' });
const status = html('p', { class: 'small', role: 'status' });

if (form && head && cells.length > 0) {
  form.prepend(html('label', { for: 'exposure-field' }, 'J/cm² that you or your clinician ask for'), ' ', input, ' ');
  form.append(' ', status);
  const places = [head, ...cells, ...cells.flatMap((it) => intervalOf(it) ?? [])];
  const before = new Map(places.map((it) => [it, it.textContent]));
  const restore = () => {
    for (const [place, text] of before) place.textContent = text;
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
    head.textContent = `Time for ${wanted.toLocaleString('en-GB')} J/cm²`;
    for (const cell of cells) {
      const [value = Number.NaN, low = value, high = value] = (cell.dataset.seconds ?? '')
        .split(' ')
        .map((it) => wanted * Number(it));
      const shown = timeRangeWords({ value, low, high });
      cell.textContent = whole(shown.value);
      const beneath = intervalOf(cell);
      if (beneath) beneath.textContent = ` (${shown.interval.split(' to ').map(whole).join(' to ')})`;
    }
    status.textContent = 'The table gives the time for it. Arithmetic, not a recommendation.';
  };
  form.hidden = false;
  form.addEventListener('submit', (event) => event.preventDefault());
  input.addEventListener('input', show);
}
