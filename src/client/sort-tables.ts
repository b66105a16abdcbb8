/**
 * Lets readers sort the ranking tables by their headings. The order that the page comes with needs no script;
 * this only adds to it.
 *
 * Laying out and painting live rows costs far more than sorting, so a long table keeps its first rows in the
 * page and the rest aside until they are asked for. Printing brings all of them back.
 */

/** Rows that a long table keeps live. */
const LIVE_ROWS = 40;

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

class SortableTable {
  readonly #body: HTMLTableSectionElement;
  readonly #heads: HTMLTableCellElement[];
  readonly #rows: HTMLTableRowElement[];
  readonly #columns: Array<Column | undefined> = [];
  #order: number[];
  #shown: number;
  readonly #more: HTMLButtonElement | undefined;

  constructor(table: HTMLTableElement) {
    this.#body = table.tBodies[0] as HTMLTableSectionElement;
    this.#heads = [...(table.tHead?.rows[0]?.cells ?? [])];
    this.#rows = [...this.#body.rows];
    this.#order = this.#rows.map((_, i) => i);
    this.#shown = Math.min(LIVE_ROWS, this.#rows.length);
    this.#heads.forEach((head, column) => {
      this.#addButton(head, column);
    });
    // Names take longest to put in order; that is done while nobody waits.
    setTimeout(() => this.#column(0), 0);
    if (this.#rows.length > LIVE_ROWS) {
      this.#more = this.#addMore(table);
      this.#lay();
      addEventListener('beforeprint', () => this.#showAll());
    }
  }

  #addButton(head: HTMLTableCellElement, column: number): void {
    const label = head.firstChild;
    if (!label || label.nodeType !== Node.TEXT_NODE) return;
    const button = document.createElement('button');
    button.type = 'button';
    button.append(label.textContent?.trim() ?? '');
    label.replaceWith(button);
    button.addEventListener('click', () => this.#sort(column));
  }

  #addMore(table: HTMLTableElement): HTMLButtonElement {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'more';
    button.textContent = `Show all ${this.#rows.length} rows (sorting is slower then)`;
    button.addEventListener('click', () => this.#showAllFromButton());
    table.after(button);
    return button;
  }

  #showAll(): void {
    this.#shown = this.#rows.length;
    this.#more?.remove();
    this.#lay();
  }

  /** Shows all rows and goes on where the reader was: the button that had the focus is gone. */
  #showAllFromButton(): void {
    const next = this.#shown;
    this.#showAll();
    this.#body.rows[next]?.querySelector('a')?.focus();
  }

  #column(index: number): Column {
    const known = this.#columns[index];
    if (known) return known;
    const cells = this.#rows.map((row) => row.cells[index]);
    const column = cells.some((cell) => cell?.hasAttribute('data-v'))
      ? Float64Array.from(cells, (cell) => Number.parseFloat(cell?.dataset.v ?? ''))
      : numbered(cells.map((cell) => cell?.textContent?.trim() ?? ''));
    this.#columns[index] = column;
    return column;
  }

  #sort(index: number): void {
    const head = this.#heads[index] as HTMLTableCellElement;
    const before = head.getAttribute('aria-sort');
    const opposite = before === 'ascending' ? 'descending' : 'ascending';
    const direction = before ? opposite : (head.dataset.first ?? 'ascending');
    const sign = direction === 'ascending' ? 1 : -1;
    const numbers = this.#column(index);
    this.#order = this.#rows.map((_, i) => i);
    this.#order.sort((a, b) => {
      const [x, y] = [numbers[a] as number, numbers[b] as number];
      if (Number.isNaN(x) || Number.isNaN(y)) return Number(Number.isNaN(x)) - Number(Number.isNaN(y));
      return sign * (x - y);
    });
    for (const other of this.#heads) other.removeAttribute('aria-sort');
    head.setAttribute('aria-sort', direction);
    this.#lay();
  }

  #lay(): void {
    this.#body.replaceChildren(...this.#order.slice(0, this.#shown).map((i) => this.#rows[i] as HTMLTableRowElement));
  }
}

for (const table of document.querySelectorAll<HTMLTableElement>('table[data-sortable]')) new SortableTable(table);
