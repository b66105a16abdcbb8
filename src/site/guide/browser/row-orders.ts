import type { SortState } from './guide-address.ts';

/** The orders of rows, body by body, that are worked out when they are first asked for. */
export interface Orders {
  /** The rows of a body as a state sorts them, gaps last both ways. */
  of(body: number, sort: SortState): readonly number[];
  /** Works out what takes longest. */
  prepare(): void;
  /** To be called where numbers have changed. */
  forget(): void;
}

/** The column of the panels' names. */
const NAME = 'name';

/**
 * @param numbers what rows are sorted by in a column; NaN for a gap
 * @param bodies rows of each body
 */
export function sortOrders(
  numbers: (column: string) => Float64Array,
  bodies: ReadonlyArray<readonly number[]>,
): Orders {
  const columns = new Map<string, Float64Array>();
  const orders = new Map<string, readonly number[]>();
  const column = (name: string) => {
    const known = columns.get(name) ?? numbers(name);
    columns.set(name, known);
    return known;
  };
  return {
    of(body, { column: name, direction }) {
      const key = `${body} ${name} ${direction}`;
      const known = orders.get(key);
      if (known) return known;
      const sign = direction === 'ascending' ? 1 : -1;
      const values = column(name);
      const order = [...(bodies[body] ?? [])].sort((a, b) => {
        const [x, y] = [values[a] as number, values[b] as number];
        if (Number.isNaN(x) || Number.isNaN(y)) return Number(Number.isNaN(x)) - Number(Number.isNaN(y));
        return sign * (x - y);
      });
      orders.set(key, order);
      return order;
    },
    prepare() {
      column(NAME);
    },
    forget() {
      columns.clear();
      orders.clear();
    },
  };
}

const collator = new Intl.Collator('en', { numeric: true });

/** Numbers texts by their order, equal ones alike: comparing them is slow, and is done once. */
export function numbered(texts: readonly string[]): Float64Array {
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
