/** A pasted column: what goes where is shown before it counts. */
import { html } from '../../../shared/browser/dom.ts';
import { find } from '../sheet-form.ts';
import { type PastedValue, readColumn } from './column.ts';
import { actFor } from './entry-form.ts';
import type { Pad } from './pad-context.ts';
import { nextPlace } from './way.ts';

/** @param done puts the cursor back to the reading that is taken now */
export function startPaste(pad: Pad, done: () => void): void {
  const field = find('#pad-paste') as HTMLTextAreaElement;
  const place = find('[data-pad-pasted]');
  let values: PastedValue[] = [];

  const show = () => {
    values = readColumn(field.value, pad.places, pad.at, pad.run.grid, pad.unitOf);
    const good = values.filter((it) => it.written !== undefined);
    const take = html('button', { type: 'button', disabled: good.length === 0 }, takeWords(good.length, values.length));
    take.addEventListener('click', () => void accept());
    place.replaceChildren(...(values.length === 0 ? [] : [tableOf(values), html('p', { class: 'pad-actions' }, take)]));
  };
  const accept = async () => {
    const at = new Date().toISOString();
    const taken = values.filter((it) => it.written !== undefined && it.place !== undefined);
    const acts = taken.flatMap((it) =>
      it.place && it.written !== undefined ? [actFor(pad.run, it.place, it.written, at)] : [],
    );
    await pad.perform(...acts);
    // What went nowhere stays in the field, so that nothing is lost.
    field.value = values
      .filter((it) => it.written === undefined)
      .map((it) => it.text)
      .join('\n');
    const last = pad.places.findIndex((it) => it.path === taken.at(-1)?.place?.path);
    pad.go(nextPlace(pad.places, pad.run, Math.max(last, 0), pad.rounds));
    done();
  };
  field.addEventListener('input', show);
  // From the present place on: another place, another table.
  let shownAt = pad.at;
  pad.add(() => {
    if (shownAt === pad.at) return;
    shownAt = pad.at;
    show();
  });
}

const takeWords = (good: number, all: number) => {
  const readings = `${good} ${good === 1 ? 'reading' : 'readings'}`;
  return good === all ? `Take ${readings}` : `Take ${readings} of ${all}`;
};

function tableOf(values: readonly PastedValue[]): HTMLElement {
  return html(
    'table',
    { class: 'pad-table' },
    html('thead', {}, html('tr', {}, ...['Pasted', 'Goes to', 'As'].map((it) => html('th', { scope: 'col' }, it)))),
    html(
      'tbody',
      {},
      ...values.map((it) =>
        html(
          'tr',
          {},
          html('td', {}, it.text),
          html('td', {}, it.place?.name ?? 'nowhere'),
          html('td', {}, it.written ?? it.fault ?? ''),
        ),
      ),
    ),
  );
}
