/** The field for the reading that is taken now: its digits and Enter, and the next place is there. */
import { unitSigns } from '../../../../words/format.ts';
import { html } from '../../../shared/browser/dom.ts';
import { type Act, counting, type Run } from '../run.ts';
import { find } from '../sheet-form.ts';
import { choose } from './kept-choices.ts';
import { startKeypad } from './keypad.ts';
import { chooseUnit, type Pad } from './pad-context.ts';
import { type Place, STEPS, type Step } from './places.ts';
import { readTyped, unitsOf } from './typed.ts';
import { nextPlace, progressOf, readAt } from './way.ts';

export interface EntryForm {
  /** Puts a reading into the field, as a meter on a cable shows it; what the tester has typed stays. */
  fill(text: string): void;
  focus(): void;
}

/** What an entry at a place does to the run: another reading, or another value where the file has one of it. */
export function actFor(run: Run, { path, isList }: Place, written: string, at: string): Act {
  const before = isList ? undefined : counting(run, path).at(-1);
  if (before) return { kind: 'correct', id: before.id, written, reason: 'Read again', at };
  return { kind: 'enter', path, written, at };
}

/**
 * @param entered is told what was entered where, once it is on the disk
 */
export function startEntry(pad: Pad, entered: (place: Place, written: string) => void): EntryForm {
  const form = find('[data-pad-entry]') as HTMLFormElement;
  const field = find('#pad-value') as HTMLInputElement;
  const unit = find('#pad-unit') as HTMLSelectElement;
  const step = find('#pad-step') as HTMLSelectElement;
  const rounds = find('#pad-rounds') as HTMLSelectElement;
  const fault = find('#pad-fault');
  const place = () => pad.places[pad.at] as Place;
  const say = (text: string) => {
    fault.textContent = text;
    field.setAttribute('aria-invalid', String(text !== ''));
  };
  const go = (at: number) => {
    say('');
    pad.go(at);
    field.focus();
  };

  /** Enters one reading at the present place, and goes on once it is on the disk. */
  const enter = async (text: string) => {
    const here = place();
    const { at } = pad;
    if (text === '') return go(Math.min(at + 1, pad.places.length - 1));
    const back = () => {
      // Unless the next reading is being typed already.
      if (field.value === '') field.value = text;
    };
    const typed = readTyped(text, here, pad.unitOf(here));
    if ('fault' in typed) {
      back();
      return say(typed.fault);
    }
    try {
      await pad.perform(actFor(pad.run, here, typed.written, new Date().toISOString()));
    } catch {
      // Told at the top of the page.
      return back();
    }
    entered(here, typed.written);
    // Who has gone elsewhere meanwhile stays there.
    if (pad.at === at) pad.go(nextPlace(pad.places, pad.run, at, pad.rounds));
  };
  /** Readings come faster than a disk may write: each waits for the place that the one before it leads to. */
  let turn = Promise.resolve();

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const text = field.value.trim();
    field.value = '';
    say('');
    turn = turn.then(() => enter(text));
  });
  field.addEventListener('input', () => say(''));
  field.addEventListener('keydown', (event) => {
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
    event.preventDefault();
    go(pad.at + (event.key === 'ArrowDown' ? 1 : -1));
  });
  find('[data-pad-back]').addEventListener('click', () => go(pad.at - 1));
  find('[data-pad-on]').addEventListener('click', () => go(pad.at + 1));
  unit.addEventListener('change', () => {
    chooseUnit(place(), unit.value);
    field.focus();
  });
  step.addEventListener('change', () => go(firstOf(pad, step.value as Step)));
  rounds.value = String(pad.rounds);
  rounds.addEventListener('change', () => {
    pad.rounds = Number(rounds.value);
    choose('rounds', rounds.value);
    pad.show();
    field.focus();
  });
  startKeypad(field, form);

  let shown: Place | undefined;
  let filled = '';
  pad.add(() => {
    const here = place();
    const all = progressOf(pad.run, pad.places);
    find('[data-pad-progress]').textContent = `${all.read} of ${all.of} places read`;
    const count = readAt(pad.run, here).length;
    const which = here.isList && count > 0 ? `, reading ${count + 1}` : '';
    const label = find('[data-pad-place]');
    label.dataset.path = here.path;
    label.textContent = `${here.name}${which}`;
    find('#pad-where').textContent = here.where;
    find('[data-pad-rounds]').hidden = here.step !== 'grid';
    step.replaceChildren(...stepOptions(pad));
    step.value = here.step;
    if (shown?.path !== here.path) {
      unit.replaceChildren(...unitsOf(here).map((it) => html('option', { value: it }, unitSigns(it))));
      unit.value = pad.unitOf(here);
    }
    shown = here;
  });
  return {
    fill: (text) => {
      if (field.value !== '' && field.value !== filled) return;
      filled = text;
      field.value = text;
      say('');
    },
    focus: () => field.focus(),
  };
}

function stepOptions(pad: Pad): HTMLOptionElement[] {
  return (Object.keys(STEPS) as Step[]).flatMap((it) => {
    const { read, of } = progressOf(
      pad.run,
      pad.places.filter((place) => place.step === it),
    );
    return of === 0 ? [] : [html('option', { value: it }, `${STEPS[it]} (${read}/${of})`)];
  });
}

/** The first place of a step without a reading, or its first one. */
function firstOf(pad: Pad, step: Step): number {
  const all = [...pad.places.keys()].filter((i) => pad.places[i]?.step === step);
  return all.find((i) => readAt(pad.run, pad.places[i] as Place).length === 0) ?? all[0] ?? 0;
}
