/** Says what a sum buys in each size class, in the place of the page's first answer, and puts that back. */
import type { Figure } from '../../../measure/figure.ts';
import type { Contender } from '../../../measure/money/ranking.ts';
import { money, showFigure } from '../../../words/format.ts';
import { elementOf, html } from '../../shared/browser/dom.ts';
import { figurePieces } from '../../shared/browser/figure-pieces.ts';
import { showUnits } from '../../shared/browser/units.ts';
import type { PackedOffer, PackedOffers } from './offers.ts';
import { panelLink } from './own-price-cells.ts';
import { figureText, lightText, type OwnPrices, priceOf, spend, spendByClass } from './own-prices.ts';
import { sizeOutline } from './size-outline.ts';

/** A class names so many panels that the readings do not tell apart; of a hundred, a dozen can tie. */
const MOST_NAMED = 3;

/** Where the answer stands, what it stands in for, and the heading of both. */
const place = () => document.querySelector<HTMLElement>('[data-spend-answer]');
const lowest = () => document.querySelector<HTMLElement>('[data-lowest]');
const heading = () => document.querySelector<HTMLElement>('#answers');
let ownHeading: string | null | undefined;

/** Takes the answer away, and shows what the page came with. */
export function clearAnswer(): void {
  place()?.replaceChildren();
  showInstead(undefined);
}

/** The answer's heading over it alone; the page's own list and heading without it. */
function showInstead(words: string | undefined): void {
  const [list, title] = [lowest(), heading()];
  if (!list || !title) return;
  ownHeading ??= title.textContent;
  list.hidden = words !== undefined;
  title.textContent = words ?? ownHeading;
}

/** Says what a sum buys; the page's own answer where none is given. */
export function paintAnswer(offers: PackedOffers, prices: OwnPrices, sum: number | undefined): void {
  const target = place();
  if (!target) return;
  if (sum === undefined) {
    clearAnswer();
    return;
  }
  const { currency } = offers;
  const answers = spendByClass(offers, prices, sum);
  const first = answers[0];
  if (!first) {
    target.replaceChildren(html('p', {}, ...tooLittle(offers, prices, sum)));
    showInstead(undefined);
    return;
  }
  const head = ['Size', 'Panel', 'Price', 'Light'].map((it) => html('th', { scope: 'col' }, it));
  const table = html(
    'table',
    {},
    html('thead', { class: 'unseen' }, html('tr', {}, ...head)),
    ...answers.map(({ table: id, best, asGood }) => {
      const tied = [best, ...asGood].toSorted((a, b) => a.price - b.price || a.panel.localeCompare(b.panel, 'en'));
      return classRows(offers, offers.tables[id]?.sizeClass ?? '', id, tied);
    }),
  );
  const { stepUp } = spend(offers, prices, sum) ?? {};
  const left = offers.panels.filter((it) => !it.isReference && priceOf(it, prices) <= sum);
  target.replaceChildren(
    table,
    html(
      'p',
      { class: 'small' },
      ...(stepUp
        ? [
            `${money(stepUp.extraPrice, currency)} more than the ${nameOf(offers, first.best.panel)} buys the `,
            panelLink(offers, stepUp.panel),
            `: ${figureText(stepUp.extraPower, currency)} more${stepUp.extraPricePerWatt ? `, ${withoutUnit(stepUp.extraPricePerWatt, currency)} for each` : ''}. `,
          ]
        : []),
      ...(left.length > 0
        ? ['Measured otherwise, so left out: ', ...listOf(left.map((it) => panelLink(offers, it.slug))), '. ']
        : []),
    ),
  );
  // Where the page goes by all the light, the reader is told that sums do not.
  const isFramed = document.querySelector<HTMLElement>('#ranking')?.dataset.basis === 'emitted';
  showInstead(`Most light ${isFramed ? 'in the frame ' : ''}for ${money(sum, currency)}, by size`);
  showUnits(target);
}

/** The rows of a class: its strongest panel for the sum, and those that the readings do not tell from it. */
function classRows(offers: PackedOffers, name: string, id: string, tied: readonly Contender[]): HTMLElement {
  const named = tied.slice(0, MOST_NAMED);
  const more = tied.length - named.length;
  const rows = named.map((it, i) => {
    const offer = offers.panels.find(({ slug }) => slug === it.panel);
    const head =
      i === 0 &&
      html(
        'th',
        { scope: 'rowgroup', rowspan: named.length },
        elementOf(sizeOutline(offer?.field)),
        html(
          'span',
          {},
          html('a', { href: `#${id}` }, name),
          tied.length > 1 && html('small', {}, ' a ', html('a', { href: '/methods/rank/' }, 'tie')),
          more > 0 && html('small', {}, ` with ${more} more`),
        ),
      );
    return html(
      'tr',
      { class: tied.length > 1 && 'tied' },
      head,
      html('td', {}, panelLink(offers, it.panel)),
      html('td', { class: 'n' }, ...priceCell(offers, offer, it.price)),
      html('td', { class: 'n' }, html('strong', {}, ...lightCell(offers, offer))),
    );
  });
  return html('tbody', {}, ...rows);
}

/** A price with the way to its calculation; the reader's own as such. */
function priceCell({ currency }: PackedOffers, offer: PackedOffer | undefined, price: number) {
  const plainly = (text: string) => ({ value: text, unit: '', text });
  const isOwn = price !== offer?.price;
  const other = !isOwn && offer.asked ? { other: plainly(offer.asked), unitKey: 'base', otherKey: 'priced' } : {};
  return figurePieces(
    { shown: plainly(money(price, currency)), ...other },
    isOwn ? { remark: 'your price' } : { href: `/panels/${offer.slug}/methodology/#real-price` },
  ).map(elementOf);
}

function lightCell({ currency }: PackedOffers, offer: PackedOffer | undefined) {
  if (!offer) return [];
  const href = `/panels/${offer.slug}/methodology/#optical-power`;
  return figurePieces(
    { shown: lightText(offer, currency), ...(offer.carried && { carried: offer.carried }) },
    { href },
  ).map(elementOf);
}

function tooLittle(offers: PackedOffers, prices: OwnPrices, sum: number): Array<Node | string> {
  const reference = offers.panels.filter((it) => it.isReference);
  const [cheapest] = reference.toSorted((a, b) => priceOf(a, prices) - priceOf(b, prices));
  const none = `No panel costs ${money(sum, offers.currency)} or less.`;
  if (!cheapest) return [none];
  return [
    `${none} The cheapest, at ${money(priceOf(cheapest, prices), offers.currency)}, is the `,
    panelLink(offers, cheapest.slug),
    '.',
  ];
}

/** `€2.54 ± 0.25`: what a watt costs, where the sentence says that it is a watt's. */
function withoutUnit(it: Figure, currency: string): string {
  const { value, plusMinus, interval } = showFigure(it, currency);
  return value + (plusMinus ? ` ± ${plusMinus}` : interval ? ` (${interval})` : '');
}

const nameOf = (offers: PackedOffers, slug: string) => offers.panels.find((it) => it.slug === slug)?.name ?? slug;

const listOf = (nodes: readonly Node[]) => nodes.flatMap((it, i) => (i === 0 ? [it] : [', ', it]));
