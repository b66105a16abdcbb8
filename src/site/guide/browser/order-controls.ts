/** The fields by which the ranking is sorted where headings are not at hand, or say too little: whether over all sizes. */
import { html } from '../../shared/browser/dom.ts';
import type { SortState } from './guide-address.ts';
import type { SortableTable } from './sortable-table.ts';

const DIRECTIONS = { ascending: 'lowest first', descending: 'highest first' } as const;

/** Returns what shows how the table is sorted. */
export function orderControls(
  form: HTMLFormElement,
  table: SortableTable,
  sort: (state: SortState) => void,
): (state: SortState) => void {
  const find = <T extends HTMLElement>(selector: string) => form.querySelector<T>(selector) as T;
  const scope = find<HTMLSelectElement>('#order-scope');
  const column = find<HTMLSelectElement>('#order-column');
  const direction = find<HTMLButtonElement>('[data-direction]');
  column.replaceChildren(...table.columns.map((it) => html('option', { value: it.id }, it.words)));
  let now = table.first;
  const change = (next: Partial<SortState>) => sort({ ...now, ...next });
  scope.addEventListener('change', () => change({ scope: scope.value === 'all' ? 'all' : 'each' }));
  column.addEventListener('change', () => {
    const first = table.columns.find((it) => it.id === column.value)?.first ?? 'ascending';
    change({ column: column.value, direction: first });
  });
  direction.addEventListener('click', () =>
    change({ direction: now.direction === 'ascending' ? 'descending' : 'ascending' }),
  );
  return (state) => {
    now = state;
    scope.value = state.scope;
    column.value = state.column;
    const [arrow, which] = direction.children;
    if (arrow) arrow.textContent = state.direction === 'ascending' ? '↑' : '↓';
    if (which) which.textContent = (state.column === 'name' ? NAMES : DIRECTIONS)[state.direction];
  };
}

const NAMES = { ascending: 'A to Z', descending: 'Z to A' } as const;
