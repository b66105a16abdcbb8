/**
 * A ranking table that readers can sort by its headings and that can be narrowed to some of its rows. The order that
 * the page comes with needs no script; this only adds to it.
 *
 * Laying out and painting live rows costs far more than sorting, so a long table keeps its first rows in the
 * page and the rest aside until they are asked for. Their texts stay in the page, where the browser's own search finds
 * them; a find brings all rows back, as printing does.
 */

/** A table of more rows is long; shorter ones are live as a whole. */
const LONG = 40;
/** Rows that a long table keeps live: about what a screen holds. */
const LIVE_ROWS = 12;

/** Long enough for the rows to be painted first, ms. */
const AFTER_PAINT = 100;

/** A row's words as they read. */
const searchedText = (row: HTMLTableRowElement) =>
  [...row.cells].map((cell) => cell.textContent?.replace(/\s+/g, ' ').trim()).join(' ');

/** Sort values of a column, one a row; NaN for a gap, which comes last both ways. Texts are numbered by their order. */
type Column = Float64Array;

const collator = new Intl.Collator('en', { numeric: true });

/** Numbers texts by their order, equal ones alike: comparing them is slow, and is done once. */
function numbered(texts: readonly string[]): Float64Array {
  const order = texts.map((_, i) => i).sort((a, b) => collator.compare(texts[a] as string, texts[b] as string));
  const numbers = new Float64Array(texts.length);
  let number = 0;
  order.forEach((row, at) => {
    const before = order[at - 1];
    if (before !== undefined && collator.compare(texts[before] as string, texts[row] as string) !== 0) number = at;
    numbers[row] = number;
  });
  return numbers;
}

/** How a table is sorted: the id of a column, and which way. */
export interface Sorting {
  column: string;
  direction: 'ascending' | 'descending';
}

/** The column of the panels' names, which are sorted as texts. */
const NAME = 'name';

/** The name of a heading's or a cell's column; the head of a row is the panel's name. */
const columnOf = (cell: HTMLElement) => cell.dataset.col ?? NAME;

const directionOf = (text: string | null | undefined): Sorting['direction'] =>
  text === 'descending' ? 'descending' : 'ascending';

export class SortableTable {
  readonly id: string;
  readonly rows: readonly HTMLTableRowElement[];
  /** Called after a reader has sorted the table. */
  onSort: ((sorting: Sorting) => void) | undefined;
  readonly #body: HTMLTableSectionElement;
  readonly #heads: HTMLTableCellElement[];
  /** By the name of the column. */
  readonly #columns = new Map<string, Column>();
  /** Orders that were worked out, by column and direction. */
  readonly #orders = new Map<string, number[]>();
  /** The heading that the page came sorted by. */
  readonly #first: HTMLTableCellElement | undefined;
  #order: number[];
  /** 1 for a row that is left; undefined while all are. */
  #isLeft: Uint8Array | undefined;
  #isAllShown: boolean;
  readonly #more: HTMLButtonElement | undefined;
  readonly #none: HTMLParagraphElement;
  /** Texts of the rows that are left but aside, for find-in-page. */
  readonly #aside: HTMLElement | undefined;
  #texts: string[] | undefined;
  #asideTimer: ReturnType<typeof setTimeout> | undefined;

  constructor(table: HTMLTableElement) {
    this.#body = table.tBodies[0] as HTMLTableSectionElement;
    this.#heads = [...(table.tHead?.rows[0]?.cells ?? [])];
    this.id = table.id.replace(/^table-/, '');
    this.rows = [...this.#body.rows];
    this.#order = this.rows.map((_, i) => i);
    this.#isAllShown = this.rows.length <= LONG;
    this.#first = this.#heads.find((head) => head.hasAttribute('aria-sort'));
    this.#none = document.createElement('p');
    this.#none.className = 'soft';
    this.#none.hidden = true;
    this.#none.textContent = 'None of these panels is left by the filters.';
    table.after(this.#none);
    for (const head of this.#heads) this.#addButton(head);
    // Names take longest to put in order; that is done while nobody waits.
    setTimeout(() => this.#column(NAME), 0);
    if (!this.#isAllShown) {
      this.#aside = this.#addAside(table);
      this.#more = this.#addMore(table);
      this.#lay();
      addEventListener('beforeprint', () => this.#showAll());
    }
  }

  /** Narrows the table to some of its rows, in the order in which the page came; all of them for undefined. */
  narrow(isLeft: Uint8Array | undefined): void {
    this.#isLeft = isLeft;
    this.#lay();
  }

  /** Sorts as told, or as the page came. */
  sort(sorting: Sorting | undefined): void {
    const head = sorting && this.#headOf(sorting.column);
    if (sorting && head) this.#sortBy(head, sorting.direction);
    else this.#unsort();
    this.#lay();
  }

  /** To be called where the sort values of rows have changed; the order is brought up to date. */
  refresh(): void {
    this.#columns.clear();
    this.#orders.clear();
    this.#texts = undefined;
    const sorted = this.#heads.find((head) => head.hasAttribute('aria-sort'));
    if (sorted) this.#sortBy(sorted, directionOf(sorted.getAttribute('aria-sort')));
    this.#lay();
  }

  #headOf(column: string): HTMLTableCellElement | undefined {
    return this.#heads.find((head) => columnOf(head) === column);
  }

  #addButton(head: HTMLTableCellElement): void {
    const label = head.firstChild;
    if (!label || label.nodeType !== Node.TEXT_NODE) return;
    const button = document.createElement('button');
    button.type = 'button';
    button.append(label.textContent?.trim() ?? '');
    label.replaceWith(button);
    button.addEventListener('click', () => this.#press(head));
  }

  #addMore(table: HTMLTableElement): HTMLButtonElement {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'more';
    button.addEventListener('click', () => this.#showAllFromButton());
    table.after(button);
    return button;
  }

  /** A block that is not drawn and yet searched, where browsers can do that; elsewhere it is as good as absent. */
  #addAside(table: HTMLTableElement): HTMLElement {
    const aside = document.createElement('div');
    aside.className = 'aside-rows';
    aside.setAttribute('hidden', 'until-found');
    aside.addEventListener('beforematch', () => this.#showAll());
    table.after(aside);
    return aside;
  }

  /** Brings the searched texts up to date once the rows are painted, so that nobody waits for it. */
  #fillAside(aside: HTMLElement, order: readonly number[]): void {
    clearTimeout(this.#asideTimer);
    this.#asideTimer = setTimeout(() => {
      this.#texts ??= this.rows.map(searchedText);
      const texts = this.#texts;
      aside.textContent = order.map((i) => texts[i]).join('\n');
    }, AFTER_PAINT);
  }

  #showAll(): void {
    this.#isAllShown = true;
    clearTimeout(this.#asideTimer);
    this.#aside?.remove();
    this.#more?.remove();
    this.#lay();
  }

  /** Shows all rows and goes on where the reader was: the button that had the focus is gone. */
  #showAllFromButton(): void {
    const next = LIVE_ROWS;
    this.#showAll();
    this.#body.rows[next]?.querySelector('a')?.focus();
  }

  #column(name: string): Column {
    const known = this.#columns.get(name);
    if (known) return known;
    // All rows have the same cells in the same order: asking each cell of thousands for its name takes far longer.
    const at = [...(this.rows[0]?.cells ?? [])].findIndex((cell) => columnOf(cell) === name);
    const cells = this.rows.map((row) => row.cells[at]);
    const column = cells.some((cell) => cell?.hasAttribute('data-v'))
      ? Float64Array.from(cells, (cell) => Number.parseFloat(cell?.dataset.v ?? ''))
      : numbered(cells.map((cell) => cell?.textContent?.trim() ?? ''));
    this.#columns.set(name, column);
    return column;
  }

  #press(head: HTMLTableCellElement): void {
    const before = head.getAttribute('aria-sort');
    const opposite = before === 'ascending' ? 'descending' : 'ascending';
    const direction = before ? opposite : directionOf(head.dataset.first);
    this.#sortBy(head, direction);
    this.#lay();
    this.onSort?.({ column: columnOf(head), direction });
  }

  #sortBy(head: HTMLTableCellElement, direction: Sorting['direction']): void {
    const name = columnOf(head);
    const key = `${name} ${direction}`;
    let order = this.#orders.get(key);
    if (!order) {
      const sign = direction === 'ascending' ? 1 : -1;
      const numbers = this.#column(name);
      order = this.rows.map((_, i) => i);
      order.sort((a, b) => {
        const [x, y] = [numbers[a] as number, numbers[b] as number];
        if (Number.isNaN(x) || Number.isNaN(y)) return Number(Number.isNaN(x)) - Number(Number.isNaN(y));
        return sign * (x - y);
      });
      this.#orders.set(key, order);
    }
    this.#order = order;
    this.#mark(head, direction);
  }

  #unsort(): void {
    this.#order = this.rows.map((_, i) => i);
    this.#mark(this.#first, 'ascending');
  }

  #mark(head: HTMLTableCellElement | undefined, direction: Sorting['direction']): void {
    for (const other of this.#heads) other.removeAttribute('aria-sort');
    head?.setAttribute('aria-sort', direction);
  }

  #lay(): void {
    const isLeft = this.#isLeft;
    const left = isLeft ? this.#order.filter((i) => isLeft[i] === 1) : this.#order;
    const live = this.#isAllShown ? left : left.slice(0, LIVE_ROWS);
    this.#body.replaceChildren(...live.map((i) => this.rows[i] as HTMLTableRowElement));
    this.#none.hidden = left.length > 0;
    if (this.#aside && !this.#isAllShown) this.#fillAside(this.#aside, left.slice(LIVE_ROWS));
    if (this.#more) {
      this.#more.hidden = left.length <= LIVE_ROWS;
      this.#more.textContent = `Show all ${left.length} rows (sorting is slower then)`;
    }
  }
}
