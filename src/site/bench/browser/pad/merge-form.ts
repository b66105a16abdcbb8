/** Two runs of one session held against each other, field by field. */
import { html } from '../../../shared/browser/dom.ts';
import type { BenchStore } from '../bench-store.ts';
import { type Conflict, mergeRuns, type Side } from '../merge-runs.ts';
import { newLog, type Run } from '../run.ts';

const SIDES: ReadonlyArray<{ side: Side; head: string }> = [
  { side: 'mine', head: 'Here' },
  { side: 'theirs', head: 'In the file' },
];

/**
 * What the two say differently, each to be decided; then they are put together as a run of its own, and both stay as they are.
 *
 * @param nameOf a place, in words
 * @param together takes the run that comes of it
 */
export function mergeForm(
  mine: Run,
  theirs: Run,
  nameOf: (path: string) => string,
  together: (run: Run) => Promise<void>,
): HTMLElement {
  const { conflicts } = mergeRuns(mine, theirs);
  const added = theirs.entries.length;
  const taken = new Map<string, Side>();
  const fault = html('p', { class: 'pad-fault', role: 'alert' });
  const form = html(
    'form',
    { 'aria-label': 'The two runs held against each other' },
    html('p', {}, leadOf(conflicts, added)),
    conflicts.length > 0 && tableOf(conflicts, nameOf, taken),
    html('p', { class: 'pad-actions' }, html('button', { type: 'submit' }, 'Put them together as a run of its own')),
    fault,
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const { run } = mergeRuns(mine, theirs, Object.fromEntries(taken));
    void together(run).catch((error: unknown) => {
      fault.textContent = error instanceof Error ? error.message : String(error);
    });
  });
  return form;
}

function leadOf(conflicts: readonly Conflict[], added: number): string {
  const has = `The file has ${added} ${added === 1 ? 'reading' : 'readings'}.`;
  if (conflicts.length === 0) return `${has} Nowhere do the two say different things.`;
  const places = conflicts.length === 1 ? 'one place' : `${conflicts.length} places`;
  return `${has} The two say different things in ${places}: choose what counts.`;
}

function tableOf(
  conflicts: readonly Conflict[],
  nameOf: (path: string) => string,
  taken: Map<string, Side>,
): HTMLElement {
  const choice = ({ path, mine, theirs, taken: first }: Conflict, i: number, side: Side) => {
    const id = `merge-${i}-${side}`;
    const radio = html('input', { type: 'radio', id, name: `merge-${i}`, checked: side === first });
    radio.addEventListener('change', () => taken.set(path, side));
    const text = side === 'mine' ? mine : theirs;
    return html('td', {}, html('label', { for: id, class: 'choice' }, radio, text === '' ? 'nothing' : text));
  };
  return html(
    'table',
    { class: 'pad-table' },
    html(
      'thead',
      {},
      html(
        'tr',
        {},
        html('th', { scope: 'col' }, 'Field'),
        ...SIDES.map(({ head }) => html('th', { scope: 'col' }, head)),
      ),
    ),
    html(
      'tbody',
      {},
      ...conflicts.map((it, i) =>
        html('tr', {}, html('th', { scope: 'row' }, nameOf(it.path)), ...SIDES.map(({ side }) => choice(it, i, side))),
      ),
    ),
  );
}

/** Keeps a run under an id of its own, with the pictures of the run that it was made from. */
export async function keepAsOwn(store: BenchStore, run: Run): Promise<string> {
  const id = crypto.randomUUID();
  await store.begin(newLog({ ...run, id }));
  for (const { file, picture } of await store.photos(run.id)) await store.savePhoto(id, file, picture);
  return id;
}
