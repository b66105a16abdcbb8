/** Shows what was calculated with a reader's own prices in the page, and puts the guide's own back. */
import { notKnownWords, remarkWords } from '../../../words/figure-words.ts';
import type { Dagger } from '../../../words/flags.ts';
import { money } from '../../../words/format.ts';
import { DOUBT_MARK } from '../../../words/marks.ts';
import { isAlone, rankText } from '../../../words/rank-words.ts';
import { elementOf } from '../../shared/browser/dom.ts';
import { figurePieces, markPieces } from '../../shared/browser/figure-pieces.ts';
import type { PackedOffers } from './offers.ts';
import { type Calculated, type Calculation, figureText, type OwnPrices, stepUpsFrom } from './own-prices.ts';
import { slugOf } from './row-data.ts';

/** What stood in a place before, to be put back. */
const before = new WeakMap<HTMLElement, { nodes: Node[]; value: string | undefined }>();

/** Puts other content in a place, remembering what the page came with. */
function replace(place: HTMLElement, content: ReadonlyArray<Node | string>, value?: number): void {
  if (!before.has(place)) before.set(place, { nodes: [...place.childNodes], value: place.dataset.v });
  place.replaceChildren(...content);
  if (value !== undefined) place.dataset.v = String(value);
}

function restore(place: HTMLElement): void {
  const it = before.get(place);
  if (!it) return;
  place.replaceChildren(...it.nodes);
  if (it.value !== undefined) place.dataset.v = it.value;
}

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

/** The mark of doubt that a cell came with: other prices do not take a doubt away. */
function markOf(cell: HTMLElement): { dagger: Dagger; href: string } | undefined {
  const mark = (before.get(cell)?.nodes ?? [...cell.childNodes]).find(
    (it): it is HTMLAnchorElement => it instanceof HTMLAnchorElement && it.matches('.dagger'),
  );
  return (
    mark && {
      dagger: { mark: mark.text, label: mark.getAttribute('aria-label') ?? '' },
      href: mark.getAttribute('href') ?? '',
    }
  );
}

/** A table with all of its rows, those too that are not in the page just now. */
export interface PaintedTable {
  element: HTMLTableElement;
  rows: readonly HTMLTableRowElement[];
}

/** Writes prices, prices per watt and ranks into the tables; the guide's own where there is no calculation. */
export function paintTables(tables: readonly PaintedTable[], calculation: Calculation | undefined): void {
  for (const { element: table, rows } of tables) {
    const isEmitted = table.dataset.basis === 'emitted';
    for (const row of rows) {
      const it = calculation?.panels.get(slugOf(row.dataset.f ?? ''));
      for (const cell of row.cells) {
        const column = PAINTED.find((name) => name === cell.dataset.col);
        if (!column) continue;
        if (it) paintCell(cell, column, it, isEmitted);
        else restore(cell);
      }
    }
  }
}

/** Columns that go with a price. */
const PAINTED = ['rank', 'price', 'price-per-watt', 'price-per-emitted-watt'] as const;

function paintCell(cell: HTMLElement, column: (typeof PAINTED)[number], it: Calculated, isEmitted: boolean): void {
  if (column === 'price') {
    replace(cell, figureCell({ value: it.priceText }, it.isOwn ? 'your price' : ''), it.price);
  } else if (column === 'rank') {
    const rank = isEmitted ? it.emittedRank : it.rank;
    const remark = rank && isAlone(rank) ? '' : `${rank && rank.tiedWith.length > 0 ? 'tie, ' : ''}with your prices`;
    if (rank) replace(cell, figureCell({ value: rankText(rank) }, remark, cell), rank.place);
  } else {
    const shown = column === 'price-per-watt' ? it.perWatt : it.perEmittedWatt;
    if (!shown) return;
    const { value, plusMinus, interval, absent } = shown;
    const remark = remarkWords(interval, it.isOwn ? 'at your price' : undefined, absent && notKnownWords());
    replace(cell, figureCell({ value, ...(plusMinus && { plusMinus }) }, remark, cell), shown.amount);
  }
}

/** A figure as the build writes it into a cell, with the mark that the cell came with. */
function figureCell(shown: { value: string; plusMinus?: string }, remark: string, marked?: HTMLElement) {
  const mark = marked && markOf(marked);
  return figurePieces(
    { shown: { ...shown, unit: '', text: shown.value }, ...(mark && { dagger: mark.dagger }) },
    { remark, flagsAt: mark?.href },
  ).map(elementOf);
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
  const it = document.createElement('a');
  it.href = href;
  it.textContent = text;
  return it;
}
