/** The runs that this browser holds, with how far each has come. */
import { showDate } from '../../../../words/format.ts';
import { html } from '../../../shared/browser/dom.ts';
import type { BenchStore } from '../bench-store.ts';
import { type Run, runOf } from '../run.ts';
import { find } from '../sheet-form.ts';
import type { PadSetup } from './pad-setup.ts';
import { gridOf, placesOf } from './places.ts';
import { progressOf } from './way.ts';

/** The address of a run. */
export const runAddress = (id: string) => `/bench/#${id}`;

const nameOf = (setup: PadSetup, { panel }: Run) =>
  setup.panels.find((it) => it.slug === panel.slug)?.name ?? `${makerName(setup, panel.maker)} ${panel.model}`.trim();

const makerName = (setup: PadSetup, id: string) => setup.makers.find((it) => it.id === id)?.name ?? id;

/** A run's panel and day: `Kelpwright Plover, 21 Nov 2026`. */
export const runTitle = (setup: PadSetup, run: Run) => `${nameOf(setup, run)}, ${showDate(run.date)}`;

const clockTime = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
});

/** Draws the list, newest first; where it is empty, nothing. */
export async function showRuns(setup: PadSetup, store: BenchStore): Promise<void> {
  const place = find('[data-pad-list]');
  const summaries = await store.list();
  const rows = await Promise.all(
    summaries.map(async ({ id, changed }) => {
      const stored = await store.load(id);
      return stored ? rowOf(setup, store, runOf(stored.log), changed) : undefined;
    }),
  );
  place.replaceChildren(
    ...(summaries.length === 0
      ? []
      : [html('h2', {}, 'Runs on this device'), html('ul', { class: 'pad-runs' }, ...rows)]),
  );
}

function rowOf(setup: PadSetup, store: BenchStore, run: Run, changed: string): HTMLElement {
  const title = runTitle(setup, run);
  const { read, of } = progressOf(run, placesOf(run, gridOf(run, setup.field(run.panel.slug))));
  const state = run.isFinished ? 'finished' : `${read} of ${of} places read`;
  const remove = html('button', { type: 'button', 'aria-label': `Remove ${title}` }, 'Remove');
  const row = html(
    'li',
    {},
    html('a', { href: runAddress(run.id) }, title),
    html('span', {}, `${state}, last ${clockTime.format(new Date(changed)).replace('Sept', 'Sep')}`),
    remove,
  );
  remove.addEventListener('click', () =>
    askRemoval(row, remove, title, () => store.remove(run.id).then(() => showRuns(setup, store))),
  );
  return row;
}

/** There is no way back, so it is asked once more in the row itself. */
function askRemoval(row: HTMLElement, button: HTMLElement, title: string, remove: () => Promise<void>): void {
  const sure = html('button', { type: 'button' }, 'Remove its readings and photographs for good');
  const leave = html('button', { type: 'button' }, 'Keep it');
  const asked = html('span', { class: 'pad-actions', role: 'group', 'aria-label': title }, sure, leave);
  button.replaceWith(asked);
  leave.focus();
  leave.addEventListener('click', () => {
    asked.replaceWith(button);
    button.focus();
  });
  sure.addEventListener('click', () => void remove().catch(() => row.append(' It could not be removed.')));
}
