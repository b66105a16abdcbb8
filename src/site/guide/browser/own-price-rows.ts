/** Writes prices, prices of a watt, their intervals and ranks that a reader's own prices make into the ranking. */

import type { Dagger } from '../../../words/flags.ts';
import { isAlone, rankFigure } from '../../../words/rank-words.ts';
import { elementOf } from '../../shared/browser/dom.ts';
import { figurePieces, markPieces } from '../../shared/browser/figure-pieces.ts';
import { inGuide } from '../../shared/browser/site-path.ts';
import { alignment, type ColumnFigure } from './column-alignment.ts';
import { placedOn, type Scale } from './interval-scale.ts';
import type { Calculated, Calculation } from './own-prices.ts';
import { original, replace, restore } from './replaced.ts';
import { PRICE_FILTER, type RowData } from './row-data.ts';
import { bracketPieces, intervalPieces } from './row-pieces.ts';
import { tieBrackets } from './tie-brackets.ts';

/** The ranking with all of its rows, those too that are not in the page just now, and what each holds. */
export interface PaintedTable {
  element: HTMLTableElement;
  rows: readonly HTMLTableRowElement[];
  data: readonly RowData[];
  /** The numbers of the rows as the page came, which are put back. */
  numbers: ReadonlyArray<RowData['numbers']>;
}

type Column = 'rank' | 'watt' | 'bar' | 'price';

/** Writes a calculation into the ranking; the guide's own figures where there is none. */
export function paintRows(table: PaintedTable, calculation: Calculation | undefined): void {
  const cells = cellsOf(table.element);
  const at = (row: HTMLTableRowElement, column: Column) => row.cells[cells.index[column]] as HTMLElement;
  if (!calculation) {
    table.rows.forEach((row, i) => {
      for (const column of COLUMNS) restore(at(row, column));
      const data = table.data[i];
      if (data) data.numbers = table.numbers[i] ?? {};
    });
    return;
  }
  const isEmitted = table.element.dataset.basis === 'emitted';
  const painted = table.rows.flatMap((row, i) => {
    const data = table.data[i];
    const it = data && calculation.panels.get(data.slug);
    const perWatt = isEmitted ? it?.perEmittedWatt : it?.perWatt;
    const rank = isEmitted ? it?.emittedRank : it?.rank;
    return data && it && perWatt && rank ? [{ row, data, it, perWatt, rank }] : [];
  });
  const watts = alignment(painted.map((it) => it.perWatt));
  const prices = alignment(painted.map(({ it }) => ({ value: it.priceText })));
  const ties = tiesOf(painted.map(({ it, rank }) => ({ table: it.table, rank })));
  const scale = table.element.dataset.scale?.split(' ').map(Number) as Scale | undefined;
  for (const { row, data, it, perWatt, rank } of painted) {
    const own = it.isOwn ? 'your price' : '';
    const rankCell = at(row, 'rank');
    replace(rankCell, [
      rankFigure(rank),
      ...markPieces(...markOf(rankCell)).map(elementOf),
      ...bracketPieces(ties.get(it.slug) ?? { parts: [], others: [] }).map(elementOf),
      ...(isAlone(rank) ? [] : [small(' yours')]),
    ]);
    const watt = at(row, 'watt');
    replace(watt, figure(perWatt, [perWatt.interval, own].filter(Boolean).join(', '), watts(perWatt), watt));
    const interval = scale && perWatt.ends && placedOn(scale, perWatt.amount, perWatt.ends);
    replace(at(row, 'bar'), intervalPieces(interval).map(elementOf));
    const price = { value: it.priceText };
    replace(at(row, 'price'), figure(price, own, prices(price)));
    data.numbers = { ...data.numbers, [PRICE_FILTER]: it.price, [cells.watt]: perWatt.amount };
  }
}

const COLUMNS = ['rank', 'watt', 'bar', 'price'] as const;

/** Which cell of a row is which, and the name of the watt's number. */
function cellsOf(table: HTMLTableElement): { index: Readonly<Record<Column, number>>; watt: string } {
  const heads = [...(table.tHead?.rows[0]?.cells ?? [])];
  const bar = heads.findIndex((it) => it.className === 'scale');
  const price = heads.findIndex((it) => it.dataset.col === 'price');
  return { index: { rank: 0, watt: bar - 1, bar, price }, watt: heads[bar - 1]?.dataset.n ?? '' };
}

/** Brackets within each group that is ranked together. */
function tiesOf(ranked: ReadonlyArray<Pick<Calculated, 'table' | 'rank'>>) {
  const groups = Map.groupBy(ranked, (it) => it.table);
  return new Map(
    [...groups.values()].flatMap((group) => {
      const ranks = new Map(
        group.toSorted((a, b) => a.rank.place - b.rank.place).map(({ rank }) => [rank.panel, rank]),
      );
      return [...tieBrackets([...ranks.keys()], (panel) => ranks.get(panel)?.tiedWith ?? [])];
    }),
  );
}

function small(text: string): HTMLElement {
  const it = document.createElement('small');
  it.textContent = text;
  return it;
}

/** A figure as the build writes it into a cell, with the marks that the cell came with. */
function figure(shown: ColumnFigure, remark: string, aligned: string, marked?: HTMLElement) {
  const [dagger, flagsAt] = marked ? markOf(marked) : [];
  const carried = marked && carriedIn(marked);
  const { value, plusMinus } = shown;
  return figurePieces(
    {
      shown: { value, ...(plusMinus && { plusMinus }), unit: '', text: value },
      ...(dagger && { dagger }),
      ...(carried && { carried }),
    },
    { remark, flagsAt, aligned },
  ).map(elementOf);
}

/** The mark of doubt that a cell came with, and where it leads: other prices do not take a doubt away. */
function markOf(cell: HTMLElement): [dagger: Dagger | undefined, href?: string] {
  const mark = original(cell).find(
    (it): it is HTMLAnchorElement => it instanceof HTMLAnchorElement && it.matches('.dagger'),
  );
  if (!mark) return [undefined];
  return [{ mark: mark.text, label: mark.getAttribute('aria-label') ?? '' }, inGuide(mark.getAttribute('href') ?? '')];
}

/** The day that a cell came with, of readings that were not taken again: other prices do not make it newer. */
function carriedIn(cell: HTMLElement): string | undefined {
  const mark = original(cell).find((it) => it instanceof HTMLElement && it.matches('.carried'));
  return mark?.textContent?.trim();
}
