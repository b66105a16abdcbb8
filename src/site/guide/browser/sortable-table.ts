/**
 * The ranking, which readers can sort by its headings, within each size class or over all, and narrow to some of its rows.
 * The order that the page comes with needs no script; this only adds to it.
 *
 * Laying out and painting live rows costs far more than sorting, so a long table keeps the first rows of each body in the
 * page and the rest aside until they are asked for. Their texts stay in the page, where the browser's own search finds
 * them; a find brings all rows back, as printing does. Bodies that can be seen are put in order first.
 */
import { html } from '../../shared/browser/dom.ts';
import { AFTER_PAINT, AsideRows } from './aside-rows.ts';
import { DrawnTies } from './drawn-ties.ts';
import type { SortState } from './guide-address.ts';
import { type Orders, sortOrders } from './row-orders.ts';

/** A table of more rows is long; shorter ones are live as a whole. */
const LONG = 150;
/** Rows of each body that a long table keeps live: about what a screen holds. */
const LIVE_ROWS = 12;

/** The day of the test stands under the name and has no heading. */
export const TESTED = 'tested';

/** A body of the table: a size class, or those of one that were measured otherwise. */
interface Body {
  element: HTMLTableSectionElement;
  head: HTMLTableRowElement;
  /** What can't be ranked, at its end. */
  unranked: HTMLTableRowElement | undefined;
  isApart: boolean;
  rows: readonly number[];
}

/** What a body holds as it is sorted and narrowed: the rows that are left, and those of them that are in the page. */
interface Laid {
  body: Body;
  left: readonly number[];
  live: readonly number[];
}

export class SortableTable {
  readonly rows: readonly HTMLTableRowElement[];
  /** As the page comes: by the price of a watt within each size class. */
  readonly first: SortState;
  /** Called after a reader has sorted the table. */
  onSort: ((sort: SortState) => void) | undefined;
  /** Called with rows that are about to be shown. */
  onLive: ((rows: readonly number[]) => void) | undefined;
  readonly #table: HTMLTableElement;
  readonly #heads: readonly HTMLTableCellElement[];
  readonly #bodies: readonly Body[];
  readonly #together: Body;
  readonly #orders: Orders;
  readonly #ties: DrawnTies;
  #sort: SortState;
  /** 1 for a row that is left; undefined while all are. */
  #isLeft: Uint8Array | undefined;
  #isAllShown: boolean;
  #isByRank = true;
  /** Bodies out of sight, which follow once those in sight are painted. */
  #waiting: readonly Laid[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #none: HTMLElement;
  readonly #aside: AsideRows | undefined;

  /**
   * @param numbers what rows are sorted by in a column; NaN for a gap
   */
  constructor(table: HTMLTableElement, numbers: (column: string) => Float64Array) {
    this.#table = table;
    this.#heads = [...table.querySelectorAll<HTMLTableCellElement>('thead th[data-col]')];
    const rows: HTMLTableRowElement[] = [];
    this.#bodies = [...table.tBodies].map((element) => {
      const own = [...element.rows];
      const from = rows.length;
      for (const row of own) if (row.dataset.f !== undefined) rows.push(row);
      return {
        element,
        head: own[0] as HTMLTableRowElement,
        unranked: own.find((it) => it.className === 'unranked'),
        isApart: element.dataset.apart !== undefined,
        rows: rows.slice(from).map((_, i) => from + i),
      };
    });
    this.rows = rows;
    this.#isAllShown = rows.length <= LONG;
    const ranked = this.#heads.find((head) => head.hasAttribute('aria-sort'));
    this.first = { scope: 'each', column: ranked?.dataset.col ?? '', direction: 'ascending' };
    this.#sort = this.first;
    this.#together = this.#addTogether();
    this.#orders = sortOrders(
      numbers,
      [...this.#bodies, this.#together].map((it) => it.rows),
    );
    this.#ties = new DrawnTies(rows);
    this.#none = html('p', { class: 'soft', hidden: true }, 'None of these panels is left by the filters.');
    table.after(this.#none);
    for (const head of this.#heads) this.#addButton(head);
    // Names take longest to put in order; that is done while nobody waits.
    setTimeout(() => this.#orders.prepare());
    if (!this.#isAllShown) {
      this.#aside = new AsideRows(table, this.rows, (isByButton) => this.#showAll(isByButton));
      addEventListener('beforeprint', () => this.#showAll(false));
    }
  }

  /** The columns that can be sorted by, with the end that comes first. */
  get columns(): Array<{ id: string; words: string; first: SortState['direction'] }> {
    const headed = this.#heads.map(({ dataset }) => ({
      id: dataset.col ?? '',
      words: dataset.words ?? '',
      first: dataset.first === 'descending' ? ('descending' as const) : ('ascending' as const),
    }));
    return [...headed, { id: TESTED, words: 'date tested', first: 'descending' }];
  }

  /** The panel of a row by its name. */
  nameOf(row: number): string {
    return this.rows[row]?.querySelector('th a')?.textContent ?? '';
  }

  /** Narrows the table to some of its rows, in the order in which the page came; all of them for undefined. */
  narrow(isLeft: Uint8Array | undefined): void {
    this.#isLeft = isLeft;
    this.#lay();
  }

  /** Sorts as told, or as the page came. */
  sort(sort: SortState | undefined): void {
    this.#sort = sort ?? this.first;
    this.#lay();
  }

  /** To be called where numbers or ranks of rows have changed; the order is brought up to date. */
  refresh(): void {
    this.#orders.forget();
    this.#ties.forget();
    this.#aside?.forget();
    this.#lay();
  }

  #addButton(head: HTMLTableCellElement): void {
    const button = html('button', { type: 'button' }, ...head.childNodes);
    head.append(button);
    button.addEventListener('click', () => {
      const column = head.dataset.col ?? '';
      const first = head.dataset.first === 'descending' ? 'descending' : 'ascending';
      const { scope, direction } = this.#sort;
      const opposite = direction === 'ascending' ? 'descending' : 'ascending';
      this.sort({ scope, column, direction: column === this.#sort.column ? opposite : first });
      this.onSort?.(this.#sort);
    });
  }

  /** A body for all that were measured alike, whatever their size. */
  #addTogether(): Body {
    const width = this.#bodies[0]?.head.cells[0]?.colSpan ?? 1;
    const title = html('th', { scope: 'rowgroup', role: 'rowheader', colspan: width }, 'All sizes together');
    const head = html('tr', { role: 'row', class: 'class' }, title);
    const element = html('tbody', { role: 'rowgroup', hidden: true }, head);
    const rows = this.#bodies.filter((it) => !it.isApart).flatMap((it) => it.rows);
    this.#table.tHead?.after(element);
    return { element, head, unranked: undefined, isApart: false, rows };
  }

  #showAll(isByButton: boolean): void {
    const at = this.#aside?.firstAside;
    this.#isAllShown = true;
    this.#aside?.remove();
    this.#lay();
    // The button that had the focus is gone: the reader goes on where the rows came to an end.
    if (isByButton && at !== undefined) this.rows[at]?.querySelector('a')?.focus();
  }

  /** Rows of all sizes say theirs, which else stands over them. */
  #nameSizes(live: readonly number[]): void {
    for (const i of live) {
      const head = this.rows[i]?.cells[1];
      if (!head || head.querySelector('.size')) continue;
      const name = this.#bodies.find((it) => it.rows.includes(i))?.element.dataset.name ?? '';
      head.querySelector('a')?.after(html('small', { class: 'size' }, ` ${name}`));
    }
  }

  #lay(): void {
    const isLeft = this.#isLeft;
    const isTogether = this.#sort.scope === 'all';
    this.#isByRank = !isTogether && this.#sort.column === this.first.column;
    const laid = [...this.#bodies, this.#together].map((body, at): Laid => {
      if (body === this.#together ? !isTogether : isTogether && !body.isApart) return { body, left: [], live: [] };
      const order = this.#orders.of(at, this.#sort);
      const left = isLeft ? order.filter((i) => isLeft[i] === 1) : order;
      return { body, left, live: this.#isAllShown ? left : left.slice(0, LIVE_ROWS) };
    });
    // Where the window is has to be asked before anything changes, or the page would be laid out for it.
    const soon = new Set(this.#isAllShown ? laid : inSight(laid));
    for (const head of this.#heads) {
      if (head.dataset.col === this.#sort.column) head.setAttribute('aria-sort', this.#sort.direction);
      else head.removeAttribute('aria-sort');
    }
    this.#table.classList.toggle('together', isTogether);
    this.#table.classList.toggle('untied', !this.#isByRank);
    for (const it of laid) if (soon.has(it)) this.#put(it);
    this.#waiting = laid.filter((it) => !soon.has(it));
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      for (const it of this.#waiting) this.#put(it);
    }, AFTER_PAINT);
    this.#none.hidden = laid.some(({ left }) => left.length > 0);
    this.#aside?.hold(laid.flatMap(({ left, live }) => left.slice(live.length)));
  }

  /** Puts the live rows of a body into the page. */
  #put({ body, left, live }: Laid): void {
    this.onLive?.(live);
    if (body === this.#together) this.#nameSizes(live);
    const isWhole = this.#sort.scope === 'each' && !this.#isLeft;
    const unranked = isWhole && body.unranked ? [body.unranked] : [];
    const wanted = [body.head, ...live.map((i) => this.rows[i] as HTMLTableRowElement), ...unranked];
    putInOrder(body.element, wanted);
    body.element.hidden = left.length === 0 && unranked.length === 0;
    if (!this.#isByRank || !(this.#isLeft || this.#ties.isPainted)) return;
    const byRank = this.#bodies.map((_, at) => this.#orders.of(at, this.first));
    this.#ties.paint(byRank, left, live.length);
  }
}

/** The bodies that can be seen, or will be where those before them become shorter; emptied ones cost nothing. */
function inSight(laid: readonly Laid[]): Laid[] {
  let rows = 0;
  // The body of all sizes stands first in the table.
  return laid
    .slice(-1)
    .concat(laid.slice(0, -1))
    .filter(({ body: { element }, live }) => {
      if (live.length === 0) return true;
      const { top, bottom } = element.getBoundingClientRect();
      const isSeen = !element.hidden && top < innerHeight;
      if ((!element.hidden && bottom < 0) || (rows >= LIVE_ROWS && !isSeen)) return false;
      rows += live.length;
      return true;
    });
}

/** Makes rows the children of a body in an order. Those that stay are not touched: they would be laid out anew. */
function putInOrder(body: HTMLElement, wanted: readonly HTMLElement[]): void {
  const staying = new Set<Element>(wanted);
  for (const it of [...body.children]) if (!staying.has(it)) it.remove();
  let next = body.firstElementChild;
  for (const it of wanted) {
    if (it === next) next = next.nextElementSibling;
    else body.insertBefore(it, next);
  }
}
