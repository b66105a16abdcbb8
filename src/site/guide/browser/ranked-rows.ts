import type { FilterRow } from './guide-filter.ts';
import { decodeRow, shownNumber, shownNumbers } from './row-data.ts';
import { numbered } from './row-orders.ts';
import { SortableTable, TESTED } from './sortable-table.ts';

/** The ranking with what its rows hold, in the order in which the page came. */
export function rankedRows(table: HTMLTableElement): { sortable: SortableTable; rows: FilterRow[] } {
  const hidden = table.dataset.numbers?.split(' ') ?? [];
  const heads = [...(table.tHead?.rows[0]?.cells ?? [])];
  const shown = heads.flatMap(({ dataset }, at) => (dataset.n === undefined ? [] : [{ name: dataset.n, at }]));
  const rows = [...table.tBodies].flatMap((body) =>
    [...body.rows].flatMap(({ cells, dataset: { f } }): FilterRow[] => {
      if (f === undefined) return [];
      const data = decodeRow(f, hidden);
      // The first element of a cell has the figure in the guide's own unit.
      const textOf = (at: number) => cells[at]?.firstElementChild?.textContent ?? '';
      const numbers = { ...data.numbers };
      for (const { name, at } of shown) numbers[name] = shownNumber(textOf(at));
      const wavelengths = shownNumbers(ownText(cells[heads.length - 1]));
      return [{ ...data, numbers, wavelengths, sizeClass: body.dataset.class ?? '' }];
    }),
  );
  const numberOf = new Map(heads.map(({ dataset }) => [dataset.col, dataset.n]));
  const sortable: SortableTable = new SortableTable(table, (column) => {
    if (column === TESTED) return Float64Array.from(rows, (it) => Date.parse(it.tested ?? ''));
    const name = numberOf.get(column);
    if (name !== undefined) return Float64Array.from(rows, (it) => it.numbers[name] ?? Number.NaN);
    return numbered(rows.map((_, i) => sortable.nameOf(i)));
  });
  return { sortable, rows };
}

/** A cell's text without that of its elements: peaks stand between their drawing and the day that they may be from. */
function ownText(cell: Element | undefined): string {
  return [...(cell?.childNodes ?? [])].map((it) => (it instanceof Text ? it.data : '')).join('');
}
