/** The number pad: large keys for gloves, in the place of the browser's own keyboard. */
import { find } from '../sheet-form.ts';
import { choice, choose } from './kept-choices.ts';

/** Puts the pad's keys to work on a field; its Enter key is that of the form. */
export function startKeypad(field: HTMLInputElement, form: HTMLFormElement): void {
  const keys = find('[data-pad-keys]');
  const button = find('[data-pad-keys-shown]');
  const show = (isShown: boolean) => {
    keys.hidden = !isShown;
    button.setAttribute('aria-pressed', String(isShown));
    // The browser's keyboard would lie over the keys.
    field.inputMode = isShown ? 'none' : 'decimal';
  };
  const chosen = choice('keys');
  show(chosen === undefined ? matchMedia('(pointer: coarse)').matches : chosen === 'yes');
  button.addEventListener('click', () => {
    show(button.getAttribute('aria-pressed') !== 'true');
    choose('keys', keys.hidden ? 'no' : 'yes');
    field.focus();
  });
  // The field keeps the focus, and its place for the next figure.
  keys.addEventListener('pointerdown', (event) => event.preventDefault());
  keys.addEventListener('click', (event) => {
    const key = (event.target as Element).closest<HTMLElement>('[data-key]')?.dataset.key;
    if (key === undefined) return;
    if (key === 'enter') form.requestSubmit();
    else press(field, key);
  });
}

function press(field: HTMLInputElement, key: string): void {
  const from = field.selectionStart ?? field.value.length;
  const to = field.selectionEnd ?? from;
  if (key === 'back') field.setRangeText('', from === to ? Math.max(0, from - 1) : from, to, 'end');
  else field.setRangeText(key, from, to, 'end');
  field.dispatchEvent(new Event('input', { bubbles: true }));
}
