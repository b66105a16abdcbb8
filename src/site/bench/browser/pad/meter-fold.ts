/** A meter on a cable: its last number waits beside the field, and Enter takes it. Reading back by voice. */
import { html } from '../../../shared/browser/dom.ts';
import { hasHid, hidMeter } from '../hid-meter.ts';
import { type MeterFeed, MeterFeedError } from '../meter-feed.ts';
import { readLine } from '../meter-line.ts';
import { meterPattern } from '../meter-pattern.ts';
import { BAUD_RATES, hasSerial, serialMeter } from '../serial-meter.ts';
import { find } from '../sheet-form.ts';
import { speech } from '../speech.ts';
import type { EntryForm } from './entry-form.ts';
import { choice, choose } from './kept-choices.ts';
import { feedWords, patternWords, refusalWords } from './meter-words.ts';

/** Says what was entered, where the tester asked for it. */
export interface ReadBack {
  say(written: string): void;
}

const USUAL_RATE = '9600';

export function startReadBack(): ReadBack {
  const voice = speech();
  const button = html('button', { type: 'button', 'aria-pressed': 'false' }, 'Read each reading back');
  const said = html('span', { class: 'small', role: 'status' });
  let isOn = choice('voice') === 'yes';
  const show = () => {
    button.setAttribute('aria-pressed', String(isOn));
    said.textContent = isOn && !voice.isThere() ? 'This device has no English voice of its own yet.' : '';
  };
  button.addEventListener('click', () => {
    isOn = !isOn;
    choose('voice', isOn ? 'yes' : undefined);
    if (!isOn) voice.quiet();
    show();
  });
  show();
  find('[data-pad-meter]').append(html('p', {}, button, ' ', said));
  return { say: (written) => isOn && voice.sayReading(written) };
}

export function startMeter(form: EntryForm): void {
  const rate = html('select', { id: 'pad-rate' }, ...BAUD_RATES.map((it) => html('option', {}, String(it))));
  rate.value = choice('rate') ?? USUAL_RATE;
  const pattern = html('input', {
    id: 'pad-pattern',
    type: 'text',
    autocomplete: 'off',
    spellcheck: 'false',
    placeholder: 'E = {number} {unit}',
    value: choice('pattern') ?? '',
  });
  const fault = html('p', { class: 'pad-fault', role: 'alert' });
  const line = html('p', { role: 'status' });
  const buttons = html('p', { class: 'pad-actions' });
  find('[data-pad-meter]').prepend(
    html(
      'p',
      {},
      'A meter that sends lines of text: the number in its last line goes into the field, and Enter takes it. Left empty, the pattern takes the last number of a line.',
    ),
    html(
      'div',
      { class: 'pad-pairs' },
      html('p', {}, html('label', { for: 'pad-rate' }, 'Signs a second (baud)'), rate),
      html('p', {}, html('label', { for: 'pad-pattern' }, 'Pattern of a line'), pattern),
    ),
    buttons,
    fault,
    line,
  );
  let feed: MeterFeed | undefined;

  const readPattern = () => {
    const found = meterPattern(pattern.value);
    const isFaulty = 'fault' in found && found.fault !== 'empty';
    fault.textContent = 'fault' in found ? patternWords(found) : '';
    pattern.setAttribute('aria-invalid', String(isFaulty));
    return 'pattern' in found ? found.pattern : undefined;
  };
  const heard = (text: string) => {
    const known = readPattern();
    const read = readLine(text, known ? { pattern: known } : {});
    if ('refused' in read) {
      line.textContent = `“${text}” ${refusalWords(read)}`;
      return;
    }
    line.textContent = `“${text}” is ${read.written}.`;
    form.fill(read.written);
  };
  const close = async () => {
    await feed?.close();
    feed = undefined;
    drawButtons();
  };
  const open = async (made: MeterFeed) => {
    fault.textContent = '';
    try {
      await made.open();
      feed = made;
      made.onLine(heard);
      made.onEnd((error) => {
        fault.textContent = feedWords(error);
        void close();
      });
      form.focus();
    } catch (error) {
      fault.textContent = feedWords(error instanceof MeterFeedError ? error : new MeterFeedError('failed', error));
    }
    drawButtons();
  };
  const button = (text: string, work: () => void) => {
    const made = html('button', { type: 'button' }, text);
    made.addEventListener('click', work);
    return made;
  };
  function drawButtons(): void {
    const ways = feed
      ? [button('Let go of the meter', () => void close())]
      : [
          hasSerial() && button('Serial port', () => void open(serialMeter({ baudRate: Number(rate.value) }))),
          hasHid() && button('USB device (HID)', () => void open(hidMeter())),
        ].filter((it) => it instanceof HTMLElement);
    buttons.replaceChildren(...(ways.length > 0 ? ways : ['This browser has no way to a meter on a cable.']));
  }
  rate.addEventListener('change', () => choose('rate', rate.value === USUAL_RATE ? undefined : rate.value));
  pattern.addEventListener('change', () => {
    readPattern();
    choose('pattern', pattern.value.trim() || undefined);
  });
  drawButtons();
}
