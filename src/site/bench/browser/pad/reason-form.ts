/** Asks for a reason, in the row of the entry that it is for. */
import { html } from '../../../shared/browser/dom.ts';

/** Usual reasons; own words always go too. */
export const STRIKE_REASONS = [
  'The sensor slipped',
  'A hand or a sleeve was in the way',
  'Read at another point',
  'The display had not settled',
  'The panel had not settled',
  'The panel was switched or dimmed',
] as const;

export const ACCEPT_REASONS = [
  'Read again, and it is so',
  'An LED sits right before the point',
  'An LED is out',
  'A fan or a rail shades the point',
] as const;

export const CORRECT_REASONS = ['Typed wrongly', 'Read wrongly from the display', 'The unit was another one'] as const;

interface Asked {
  /** `Strike 74` */
  title: string;
  /** Word on the button. */
  doing: string;
  reasons: readonly string[];
  /** Asks for another value, too, beginning with this one. */
  value?: string;
}

const OWN = '';
let count = 0;

/**
 * A form with the usual reasons and a field for one's own words.
 *
 * @param done takes the reason, and the value where one was asked for; says what is wrong with them, if anything is
 * @param left is called when the tester lets it be
 */
export function reasonForm(
  { title, doing, reasons, value }: Asked,
  done: (reason: string, value: string) => string | undefined,
  left: () => void,
): HTMLFormElement {
  count += 1;
  const id = (name: string) => `reason-${count}-${name}`;
  const select = html(
    'select',
    { id: id('usual') },
    ...reasons.map((it) => html('option', {}, it)),
    html('option', { value: OWN }, 'In own words'),
  );
  const own = html('input', { id: id('own'), type: 'text', autocomplete: 'off', maxlength: 200 });
  const ownRow = html('p', { hidden: true }, html('label', { for: id('own') }, 'Why'), own);
  const field = html('input', {
    id: id('value'),
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    value: value ?? '',
  });
  const fault = html('p', { class: 'pad-fault', role: 'alert' });
  const form = html(
    'form',
    { class: 'pad-reason', 'aria-label': title, novalidate: true },
    value !== undefined && html('p', {}, html('label', { for: id('value') }, 'Right value'), field),
    html('p', {}, html('label', { for: id('usual') }, 'Reason'), select),
    ownRow,
    html('button', { type: 'submit' }, doing),
    html('button', { type: 'button', 'data-leave': true }, 'Leave as it is'),
    fault,
  );
  select.addEventListener('change', () => {
    ownRow.hidden = select.value !== OWN;
    if (!ownRow.hidden) own.focus();
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const reason = select.value === OWN ? own.value.trim() : select.value;
    const wrong =
      reason === '' ? 'A reason in a few words, so that readers of the file know.' : done(reason, field.value);
    fault.textContent = wrong ?? '';
  });
  form.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') left();
  });
  form.querySelector('[data-leave]')?.addEventListener('click', left);
  return form;
}
