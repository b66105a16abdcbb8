import type { FilterRow } from './guide-filter.ts';
import { decodeRow } from './row-data.ts';
import { numbered } from './row-orders.ts';
import { SortableTable, TESTED } from './sortable-table.ts';

/** The ranking with what its rows hold, in the order in which the page came. */
export function rankedRows(table: HTMLTableElement): { sortable: SortableTable; rows: FilterRow[] } {
  const names = table.dataset.numbers?.split(' ') ?? [];
  const rows = [...table.tBodies].flatMap((body) =>
    [...body.rows].flatMap(({ dataset: { f } }): FilterRow[] =>
      f === undefined ? [] : [{ ...decodeRow(f, names), sizeClass: body.dataset.class ?? '' }],
    ),
  );
  const numberOf = new Map(
    [...table.querySelectorAll<HTMLElement>('thead th[data-n]')].map(({ dataset }) => [dataset.col, dataset.n ?? '']),
  );
  const sortable: SortableTable = new SortableTable(table, (column) => {
    if (column === TESTED) return Float64Array.from(rows, (it) => Date.parse(it.tested ?? ''));
    const name = numberOf.get(column);
    if (name !== undefined) return Float64Array.from(rows, (it) => it.numbers[name] ?? Number.NaN);
    return numbered(sortable.rows.map((row) => row.querySelector('th a')?.textContent ?? ''));
  });
  return { sortable, rows };
}
