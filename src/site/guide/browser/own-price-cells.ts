/** Shows what was calculated with a reader's own prices beside the ranking, and puts the guide's own back. */
import { money } from '../../../words/format.ts';
import { DOUBT_MARK } from '../../../words/marks.ts';
import { elementOf, html } from '../../shared/browser/dom.ts';
import { markPieces } from '../../shared/browser/figure-pieces.ts';
import type { PackedOffers } from './offers.ts';
import { type Calculated, type Calculation, figureText, type OwnPrices, stepUpsFrom } from './own-prices.ts';
import { replace, restore } from './replaced.ts';

function element(name: string, content: string | ReadonlyArray<Node | string>, className?: string): HTMLElement {
  const it = document.createElement(name);
  it.append(...(typeof content === 'string' ? [content] : content));
  if (className) it.className = className;
  return it;
}

/** A panel by its name, marked where its power is in doubt. */
export function panelLink(offers: PackedOffers, slug: string): HTMLElement {
  const offer = offers.panels.find((it) => it.slug === slug);
  const link = anchor(`/panels/${slug}/`, offer?.name ?? slug);
  return element('span', [link, ...doubtOf(offers, slug)]);
}

/** The mark of a panel whose power is in doubt; nothing where it is not. */
function doubtOf(offers: PackedOffers, slug: string): Element[] {
  const offer = offers.panels.find((it) => it.slug === slug);
  if (!offer?.isInDoubt) return [];
  const dagger = { mark: DOUBT_MARK, label: 'its power is in doubt, see the flags' };
  return markPieces(dagger, `/panels/${slug}/#flags`, offer.name).map(elementOf);
}

/** Draws the frontier's table anew, where the page has one. */
export function paintFrontier(calculation: Calculation | undefined, offers: PackedOffers): void {
  const body = document.querySelector<HTMLElement>('[data-frontier] tbody');
  const close = document.querySelector<HTMLElement>('[data-frontier-close]');
  if (!body || !close) return;
  if (!calculation) {
    restore(body);
    restore(close);
    return;
  }
  const optical = new Map(offers.panels.map((it) => [it.slug, it.optical.value]));
  const rows = calculation.frontier.map((slug) => {
    const it = calculation.panels.get(slug) as Calculated;
    const head = element('th', [panelLink(offers, slug)]);
    head.setAttribute('scope', 'row');
    const price = element('td', [it.priceText, ...(it.isOwn ? [element('small', ' your price')] : [])], 'n');
    const power = element('td', `${Number((optical.get(slug) ?? 0).toPrecision(3))} W`, 'n');
    return element('tr', [head, price, power]);
  });
  replace(body, rows);
  const names = calculation.close.map((slug) => panelLink(offers, slug));
  replace(close, [
    'With your prices. ',
    ...(names.length > 0 ? ['Close calls, beaten by no more than the uncertainty: ', ...separated(names), '.'] : []),
  ]);
}

function separated(nodes: readonly Node[]): Array<Node | string> {
  return nodes.flatMap((it, i) => (i === 0 ? [it] : [', ', it]));
}

/** Step-ups from a panel at a reader's price, in a sentence. */
export function stepUpWords(offers: PackedOffers, prices: OwnPrices, slug: string): Array<Node | string> {
  const [best] = stepUpsFrom(offers, prices, slug);
  if (!best) return ['No step-up from it at that price.'];
  const { extraPrice, extraPower, extraPricePerWatt } = best;
  const difference = money(Math.abs(extraPrice), offers.currency);
  return [
    'Best step-up from it',
    ...doubtOf(offers, slug),
    ': ',
    panelLink(offers, best.panel),
    `, ${figureText(extraPower, offers.currency)} more for ${difference} ${extraPrice < 0 ? 'less' : 'more'}${extraPricePerWatt ? `, ${figureText(extraPricePerWatt, offers.currency)} for the extra light` : ''}.`,
  ];
}

function anchor(href: string, text: string): HTMLElement {
  return html('a', { href }, text);
}
