/** What was entered: the last readings, and all of them. Each can be struck with a reason, corrected, or read again. */
import { html } from '../../../shared/browser/dom.ts';
import type { Entry } from '../run.ts';
import { find } from '../sheet-form.ts';
import type { Pad } from './pad-context.ts';
import { type Place, STEPS, type Step } from './places.ts';
import { CORRECT_REASONS, reasonForm, STRIKE_REASONS } from './reason-form.ts';
import { readTyped } from './typed.ts';

const LAST = 3;

/** A unit in proper signs behind a bare number. */
export const shownWritten = ({ written }: Pick<Entry, 'written'>, unit: string) =>
  /[a-zµ%°"]/i.test(written) ? written : `${written} ${unit}`;

/** @param left puts the cursor back to the reading that is taken now */
export function startReadings(pad: Pad, left: () => void): void {
  const last = find('[data-pad-last]');
  const all = find('[data-pad-all]');
  /** The form that is open, and whose it is: it outlives what is drawn anew around it. */
  let open: { id: number; form: HTMLFormElement } | undefined;
  const close = () => {
    open = undefined;
    pad.show();
    left();
  };

  const ask = (entry: Entry, title: string, doing: 'strike' | 'correct', place: Place | undefined) => {
    const name = place?.name ?? entry.path;
    const isStrike = doing === 'strike';
    const form = reasonForm(
      {
        title: `${title} ${entry.written}, ${name}`,
        doing: title,
        reasons: isStrike ? STRIKE_REASONS : CORRECT_REASONS,
        ...(!isStrike && { value: entry.written }),
      },
      (reason, value) => {
        if (isStrike) {
          void pad.perform({ kind: 'strike', id: entry.id, reason }).then(close, () => undefined);
          return undefined;
        }
        const typed = place ? readTyped(value, place, pad.unitOf(place)) : { written: value };
        if ('fault' in typed) return typed.fault;
        const at = new Date().toISOString();
        void pad
          .perform({ kind: 'correct', id: entry.id, written: typed.written, reason, at })
          .then(close, () => undefined);
        return undefined;
      },
      close,
    );
    open = { id: entry.id, form };
    pad.show();
    form.querySelector<HTMLElement>('input:not([hidden]), select')?.focus();
  };

  const rowOf = (entry: Entry, { hasForm, hasAgain }: { hasForm: boolean; hasAgain: boolean }): HTMLElement => {
    const index = pad.places.findIndex((it) => it.path === entry.path);
    const place = pad.places[index];
    const name = place?.name ?? entry.path;
    const label = (word: string) => ({ type: 'button', 'aria-label': `${word} ${entry.written}, ${name}` }) as const;
    const button = (word: string, work: () => void) => {
      const made = html('button', label(word), word);
      made.addEventListener('click', work);
      return made;
    };
    const isStruck = entry.struck !== undefined;
    const value = html('span', { class: 'pad-value' }, isStruck ? html('s', {}, entry.written) : entry.written);
    const remark = isStruck ? `struck: ${entry.struck}` : entry.accepted && `accepted: ${entry.accepted}`;
    return html(
      'li',
      {},
      html('span', { class: 'pad-name' }, name),
      value,
      remark ? html('span', { class: 'soft' }, remark) : undefined,
      html(
        'span',
        { class: 'pad-actions' },
        isStruck
          ? button('Restore', () => void pad.perform({ kind: 'unstrike', id: entry.id }).then(left, () => undefined))
          : button('Strike', () => ask(entry, 'Strike', 'strike', place)),
        !isStruck && button('Correct', () => ask(entry, 'Correct', 'correct', place)),
        hasAgain &&
          index >= 0 &&
          button('Again', () => {
            pad.go(index);
            left();
          }),
      ),
      hasForm && open?.id === entry.id && open.form,
    );
  };

  let drawn: unknown[] = [];
  pad.add(() => {
    const { entries } = pad.run;
    const fold = all.closest('details');
    // Drawn anew only where it changes: whoever is in the form would be put out of it.
    const now = [pad.run, open, fold?.open];
    if (now.every((it, i) => it === drawn[i])) return;
    drawn = now;
    // A form goes where the reading is in sight: into the list of all where that is open.
    const isAllOpen = fold?.open ?? false;
    last.replaceChildren(
      ...entries
        .slice(-LAST)
        .toReversed()
        .map((it) => rowOf(it, { hasForm: !isAllOpen, hasAgain: false })),
    );
    find('[data-pad-all-said]').textContent = countWords(entries);
    if (isAllOpen)
      all.replaceChildren(
        ...groups(pad).map(({ title, rows }) =>
          groupOf(
            title,
            rows.map((it) => rowOf(it, { hasForm: true, hasAgain: true })),
          ),
        ),
      );
  });
  all.closest('details')?.addEventListener('toggle', () => pad.show());
}

function countWords(entries: readonly Entry[]): string {
  const struck = entries.filter((it) => it.struck !== undefined).length;
  return `${entries.length} ${entries.length === 1 ? 'reading' : 'readings'}${struck > 0 ? `, ${struck} struck` : ''}`;
}

/** Entries by the parts of a session, in its order; what belongs to none of its places at the end. */
function groups({ run, places }: Pad): Array<{ title: string; rows: Entry[] }> {
  const order = new Map(places.map((it, i) => [it.path, i]));
  const stepOf = new Map(places.map((it) => [it.path, it.step]));
  const titled = (Object.keys(STEPS) as Step[]).map((step) => ({
    title: STEPS[step] as string,
    rows: run.entries
      .filter((it) => stepOf.get(it.path) === step)
      .toSorted((a, b) => (order.get(a.path) ?? 0) - (order.get(b.path) ?? 0) || a.id - b.id),
  }));
  const rest = run.entries.filter((it) => !stepOf.has(it.path));
  return [...titled, { title: 'Besides', rows: rest }].filter((it) => it.rows.length > 0);
}

const groupOf = (title: string, rows: HTMLElement[]) =>
  html('div', {}, html('h3', {}, title), html('ol', { class: 'pad-readings' }, ...rows));
