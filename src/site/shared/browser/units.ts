/**
 * Shows lengths, magnetic fields and prices in the units that the reader prefers, and remembers them here alone. The
 * choice is the same on every page, so no page holds it.
 */
import { html } from './dom.ts';

/** Where the choice is kept; no cookie, nothing leaves the browser. */
const KEY = 'panel-ledger-units';

const form = document.querySelector<HTMLFormElement>('form[data-units]');

/** What there is to choose, each with its first way chosen: what a page shows without a script. */
const CHOICES = [
  ['length', 'Lengths', ['cm', 'centimetres'], ['in', 'inches']],
  ['magnetic', 'Magnetic field', ['µT', 'microtesla'], ['mG', 'milligauss']],
  ['price', 'Prices', ['base', form?.dataset.units ?? ''], ['priced', 'as priced']],
] as const;

function choice([name, legend, ...ways]: (typeof CHOICES)[number]): HTMLElement {
  const labels = ways.map(([value, label], i) =>
    html('label', { class: 'choice' }, html('input', { type: 'radio', name, value, checked: i === 0 }), ` ${label}`),
  );
  return html('fieldset', {}, html('legend', {}, legend), ...labels);
}

form?.replaceChildren(
  ...CHOICES.map(choice),
  html('p', { class: 'small soft' }, 'Kept in this browser alone, without cookies.'),
);

/** What was chosen before; nothing where storage is closed or holds something odd. */
function accepted(): Record<string, unknown> {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return typeof found === 'object' && found !== null ? { ...found } : {};
  } catch {
    return {};
  }
}

function keep(choice: Record<string, string>): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(choice));
  } catch {
    // Storage is closed: the choice holds for this page.
  }
}

const radios = [...(form?.querySelectorAll<HTMLInputElement>('input[type=radio]') ?? [])];

/** Shows what stands in a chosen unit, and hides its other; for what other scripts have drawn as well. */
export function showUnits(within: ParentNode = document): void {
  for (const { value, checked } of radios) {
    for (const it of within.querySelectorAll<HTMLElement>(`[data-u="${value}"]`)) it.hidden = !checked;
    if (value !== 'in') continue;
    for (const it of within.querySelectorAll<HTMLElement>('[data-in]')) {
      // What stands there as the page comes.
      it.dataset.cm ??= it.textContent;
      it.textContent = (checked ? it.dataset.in : it.dataset.cm) ?? '';
    }
  }
}

if (form) {
  const before = accepted();
  for (const it of radios) if (before[it.name] === it.value) it.checked = true;
  form.hidden = false;
  showUnits();
  form.addEventListener('change', () => {
    showUnits();
    keep(Object.fromEntries(radios.filter((it) => it.checked).map((it) => [it.name, it.value])));
  });
  form.addEventListener('submit', (event) => event.preventDefault());
}
