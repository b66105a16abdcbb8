/** The form for a reader's own price: what it leads to is calculated by a script. */
import { html } from '../../shared/browser/dom.ts';
import { numberField } from './number-field.ts';

for (const form of document.querySelectorAll<HTMLFormElement>('form[data-own-price]')) {
  const { ownPrice: slug, currency } = form.dataset;
  form.append(
    html('label', { for: 'own-price-field' }, `Offered another price, ${currency}?`),
    ' ',
    numberField({ id: 'own-price-field', name: `own.${slug}`, required: true }),
    ' ',
    html('button', { type: 'submit' }, 'Try it in the guide'),
  );
  form.hidden = false;
}
