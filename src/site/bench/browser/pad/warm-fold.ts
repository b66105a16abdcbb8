/** The warm-up: asks for readings at intervals, and says when the output has settled. */
import { differenceInSeconds } from 'date-fns/differenceInSeconds';
import { parseISO } from 'date-fns/parseISO';
import { settling, type WarmUpReading } from '../../../../measure/irradiance/settling.ts';
import { SETTLED_WINDOW } from '../../../../measure/log/settled-criterion.ts';
import { html } from '../../../shared/browser/dom.ts';
import { find } from '../sheet-form.ts';
import type { Pad } from './pad-context.ts';
import { readTyped } from './typed.ts';
import { clock, settledNote, settlingWords } from './warm-words.ts';

/** A warm-up as it is kept on this device; the file gets its time, and its outcome in the notes. */
interface WarmUp {
  /** When both channels were switched on, ISO 8601. */
  from: string;
  light: readonly WarmUpReading[];
  draw: readonly WarmUpReading[];
}

const SERIES = [
  { key: 'light', name: 'Light', quantity: 'irradiance', kind: 'irradiance' },
  { key: 'draw', name: 'Draw', quantity: 'power', kind: 'mains' },
] as const;

/** @param done puts the cursor back to the reading that is taken now */
export async function startWarmUp(pad: Pad, done: () => void): Promise<void> {
  const place = find('[data-pad-warm]');
  const said = find('[data-pad-warm-said]');
  const name = `warm-up ${pad.run.id}`;
  let warm = (await pad.store.kept(name)) as WarmUp | undefined;

  const keep = async (next: WarmUp | undefined) => {
    await pad.guard(pad.store.keep(name, next));
    warm = next;
    draw();
  };
  const seconds = ({ from }: WarmUp) => differenceInSeconds(new Date(), parseISO(from));
  const judged = (it: WarmUp) =>
    SERIES.filter(({ key }) => it[key].length > 0).map(({ key, name: of, kind }) => ({
      name: of,
      settling: settling(it[key], pad.setup.resolution(pad.run, kind)),
    }));

  const tick = () => {
    if (!warm) return;
    const now = seconds(warm);
    const last = Math.max(-SETTLED_WINDOW, ...[...warm.light, ...warm.draw].map((it) => it.seconds));
    const due = last + SETTLED_WINDOW - now;
    said.textContent = `on for ${clock(now)}, ${due <= 0 ? 'a reading is due now' : `the next reading in ${clock(due)}`}`;
  };
  const button = (text: string, work: () => void) => {
    const made = html('button', { type: 'button' }, text);
    made.addEventListener('click', work);
    return made;
  };
  const takeTime = async (it: WarmUp) => {
    const note = settledNote(judged(it));
    const notes = [pad.run.texts.notes, note].filter(Boolean).join(' ');
    await pad.enterOnce('warmUp', `${Math.round(seconds(it) / 60)} min`);
    if (note !== '') await pad.perform({ kind: 'set', field: 'texts', key: 'notes', value: notes });
    done();
  };

  function draw(): void {
    const it = warm;
    if (!it) {
      said.textContent = '';
      place.replaceChildren(
        html(
          'p',
          {},
          'Settled are three readings at one spot, 15 minutes apart, that span less than 0.5 % of the last, for light and for draw. Leave the sensor where it is.',
        ),
        button('Both channels are on now', () => void keep({ from: new Date().toISOString(), light: [], draw: [] })),
      );
      return;
    }
    const outcome = judged(it).map((one) => settlingWords(one.name, one.settling));
    place.replaceChildren(
      ...SERIES.map((series) => formOf(it, series)),
      html('p', { role: 'status' }, outcome.join(' ')),
      tableOf(it),
      html(
        'p',
        { class: 'pad-actions' },
        button('Take this time as the warm-up', () => void takeTime(it).catch(() => undefined)),
        button('Begin anew', () => void keep(undefined)),
      ),
    );
    tick();
  }

  function formOf(it: WarmUp, { key, name: of, quantity }: (typeof SERIES)[number]): HTMLElement {
    const id = `pad-warm-${key}`;
    const unit = pad.unitOf({ quantity });
    const field = html('input', { id, type: 'text', inputmode: 'decimal', autocomplete: 'off' });
    const fault = html('span', { class: 'pad-fault', role: 'alert' });
    const form = html(
      'form',
      { class: 'pad-reason', novalidate: true, 'aria-label': `${of} while it warms up` },
      html('p', {}, html('label', { for: id }, `${of} now, ${unit}`), field),
      html('button', { type: 'submit' }, 'Enter'),
      fault,
    );
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      const typed = readTyped(field.value, { quantity, bounds: false }, unit);
      if ('fault' in typed) {
        fault.textContent = typed.fault;
        return;
      }
      const reading = { seconds: seconds(it), value: typed.reading.value };
      void keep({ ...it, [key]: [...it[key], reading] }).then(() => find(`#${id}`).focus());
    });
    return form;
  }

  draw();
  setInterval(tick, 1000);
}

function tableOf({ light, draw }: WarmUp): HTMLElement {
  const rows = [...light.map((it) => ({ ...it, of: 'Light' })), ...draw.map((it) => ({ ...it, of: 'Draw' }))];
  const cells = (it: (typeof rows)[number]) => [clock(it.seconds), it.of, String(it.value)];
  return html(
    'table',
    { class: 'pad-table', hidden: rows.length === 0 },
    html('thead', {}, html('tr', {}, ...['On for', 'Of', 'Reading'].map((it) => html('th', { scope: 'col' }, it)))),
    html(
      'tbody',
      {},
      ...rows
        .toSorted((a, b) => a.seconds - b.seconds)
        .map((it) => html('tr', {}, ...cells(it).map((cell) => html('td', {}, cell)))),
    ),
  );
}
