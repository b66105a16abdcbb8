/** Where a reader writes prices of their own, and the list of those that are calculated with. */
import { money } from '../../../words/format.ts';
import { html } from '../../shared/browser/dom.ts';
import { type GuideState, hasOwnPrices, plainNumber } from './guide-address.ts';
import type { PackedOffers } from './offers.ts';

export interface OwnPricesForm {
  /** Shows the prices of a state; with what they lead to where that is known. */
  show(state: GuideState, offers?: PackedOffers, stepUps?: (slug: string) => Array<Node | string>): void;
}

/**
 * @param panels that have a row
 * @param set takes a price of a panel up, or leaves it off
 * @param reset leaves all off
 */
export function ownPricesForm(
  form: HTMLFormElement,
  panels: ReadonlyArray<{ slug: string; name: string }>,
  set: (slug: string, price: number | undefined) => void,
  reset: () => void,
): OwnPricesForm {
  const find = <T extends HTMLElement>(selector: string) => form.querySelector<T>(selector) as T;
  const status = find('[data-own-status]');
  const panel = find<HTMLSelectElement>('#own-panel');
  const byName = panels.toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
  panel.append(...byName.map(({ slug, name }) => html('option', { value: slug }, name)));
  find('[data-own-add]').addEventListener('click', () => {
    const field = find<HTMLInputElement>('#own-price');
    const price = plainNumber(field.value);
    if (panel.value === '' || !price) {
      status.textContent = 'Choose a panel and write a price above 0.';
      (panel.value === '' ? panel : field).focus();
      return;
    }
    field.value = '';
    set(panel.value, price);
  });
  find('[data-own-reset]').addEventListener('click', () => {
    reset();
    panel.focus();
  });
  return {
    show(state, offers, stepUps) {
      find('[data-own-list]').replaceChildren(
        ...[...state.own].map(([slug, price]) => {
          const offer = offers?.panels.find((it) => it.slug === slug);
          const name = offer?.name ?? slug;
          const remove = html('button', { type: 'button', 'aria-label': `Remove your price of ${name}` }, 'Remove');
          remove.addEventListener('click', () => set(slug, undefined));
          const amount = (it: number) => (offers ? money(it, offers.currency) : String(it));
          const words = `${name}: ${amount(price)} (the guide: ${offer ? amount(offer.price) : '–'}). `;
          return html('li', {}, words, ...(stepUps?.(slug) ?? []), ' ', remove);
        }),
      );
      const isWanted = hasOwnPrices(state);
      find('[data-own-reset]').hidden = !isWanted;
      status.textContent = isWanted
        ? 'Prices, prices of a watt, ranks and the frontier are yours now, and say so.'
        : '';
    },
  };
}
