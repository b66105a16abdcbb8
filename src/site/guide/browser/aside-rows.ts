/** The rows of a long table that are not in the page just now: their texts, which are still found, and the way to them. */
import { html } from '../../shared/browser/dom.ts';

/** Long enough for the rows to be painted first, ms. */
export const AFTER_PAINT = 100;

/** A row's words as they read. */
const searchedText = (row: HTMLTableRowElement) =>
  [...row.cells].map((cell) => cell.textContent?.replace(/\s+/g, ' ').trim()).join(' ');

export class AsideRows {
  readonly #rows: readonly HTMLTableRowElement[];
  /** A block that is not drawn and yet searched, where browsers can do that; elsewhere it is as good as absent. */
  readonly #block: HTMLElement;
  readonly #more: HTMLButtonElement;
  #held: readonly number[] = [];
  #texts: string[] | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(table: HTMLTableElement, rows: readonly HTMLTableRowElement[], showAll: (isByButton: boolean) => void) {
    this.#rows = rows;
    this.#block = html('div', { class: 'aside-rows', hidden: 'until-found' });
    this.#block.addEventListener('beforematch', () => showAll(false));
    this.#more = html('button', { type: 'button', class: 'more' });
    this.#more.addEventListener('click', () => showAll(true));
    table.after(this.#more, this.#block);
  }

  /** The first row that is aside. */
  get firstAside(): number | undefined {
    return this.#held[0];
  }

  /** Says how many rows are aside, and brings the searched texts up to date once the others are painted. */
  hold(rows: readonly number[]): void {
    if (!this.#block.isConnected) return;
    this.#held = rows;
    this.#more.hidden = rows.length === 0;
    this.#more.textContent = `Show ${rows.length.toLocaleString('en-GB')} more rows (sorting is slower then)`;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#texts ??= this.#rows.map(searchedText);
      const texts = this.#texts;
      this.#block.textContent = rows.map((i) => texts[i]).join('\n');
    }, AFTER_PAINT);
  }

  /** To be called where rows have changed. */
  forget(): void {
    this.#texts = undefined;
  }

  remove(): void {
    clearTimeout(this.#timer);
    this.#block.remove();
    this.#more.remove();
  }
}
