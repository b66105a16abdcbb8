import { bracketClass } from './row-pieces.ts';

/** A row's share of a bracket. */
interface Share {
  element: HTMLElement;
  lane: number;
  /** The bracket, among all of the table. */
  bracket: number;
}

/** Brackets as the build drew them, and as they are drawn anew where rows between their ends are left out. */
export class DrawnTies {
  readonly #rows: readonly HTMLTableRowElement[];
  #shares: ReadonlyArray<readonly Share[]> | undefined;
  #last = 0;

  constructor(rows: readonly HTMLTableRowElement[]) {
    this.#rows = rows;
  }

  /** They are not as the build drew them. */
  get isPainted(): boolean {
    return this.#shares !== undefined;
  }

  /** To be called where other brackets were put into the rows. */
  forget(): void {
    this.#shares = undefined;
  }

  /**
   * Draws brackets from the first to the last of their rows that is left; none round a row that is left alone.
   *
   * @param byRank rows of each body by rank, all of them
   * @param left rows of one body that are left, as they are shown
   * @param count of them that are in the page
   */
  paint(byRank: ReadonlyArray<readonly number[]>, left: readonly number[], count: number): void {
    this.#shares ??= this.#read(byRank);
    const shares = this.#shares;
    const has = (row: number | undefined, bracket: number) =>
      row !== undefined && shares[row]?.some((it) => it.bracket === bracket) === true;
    for (let at = 0; at < count; at++) {
      for (const { element, lane, bracket } of shares[left[at] as number] ?? []) {
        const [isAfter, isBefore] = [has(left[at - 1], bracket), has(left[at + 1], bracket)];
        element.className = bracketClass(lane, !isAfter, !isBefore);
        element.hidden = !isAfter && !isBefore;
      }
    }
  }

  /** Which rows a bracket joins, from where brackets begin in the order of rank. */
  #read(byRank: ReadonlyArray<readonly number[]>): Share[][] {
    const shares: Share[][] = this.#rows.map(() => []);
    for (const body of byRank) {
      const inLane: number[] = [];
      for (const row of body) {
        for (const element of this.#rows[row]?.cells[0]?.querySelectorAll<HTMLElement>('.tie') ?? []) {
          const lane = Number(/ t(\d)/.exec(element.className)?.[1]);
          // Once painted, its class names tell no more where a bracket begins.
          if (element.dataset.bracket !== undefined) inLane[lane] = Number(element.dataset.bracket);
          else if (element.classList.contains('a')) inLane[lane] = this.#last++;
          element.dataset.bracket = String(inLane[lane]);
          shares[row]?.push({ element, lane, bracket: inLane[lane] ?? -1 });
        }
      }
    }
    return shares;
  }
}
