/** Sets the parts of an open run to work. */
import { find } from '../sheet-form.ts';
import { startEnd } from './end-part.ts';
import { startEntry } from './entry-form.ts';
import { startExchange } from './exchange.ts';
import { fileKeeper } from './known-file.ts';
import { startMeter, startReadBack } from './meter-fold.ts';
import type { Pad } from './pad-context.ts';
import { startPaste } from './paste-fold.ts';
import { startPhotos, startTexts } from './photo-fold.ts';
import { startPicture } from './picture.ts';
import { startReadings } from './readings-list.ts';
import { startSetting } from './setting-fold.ts';
import { oddPaths, startTold } from './told-part.ts';
import { startWarmUp } from './warm-fold.ts';
import { workClient } from './work-client.ts';
import type { MadeFile } from './work-messages.ts';

export async function startParts(pad: Pad): Promise<void> {
  const readBack = startReadBack();
  const entry = startEntry(pad, (_, written) => readBack.say(written));
  startMeter(entry);
  startPicture(pad, () => oddPaths(pad));
  startTold(pad, entry.focus);
  startReadings(pad, entry.focus);
  startPaste(pad, entry.focus);
  startSetting(pad);
  startTexts(pad);
  startPhotos(pad);
  startExchange(pad);
  startUndo(pad);
  entry.focus();
  startWork(pad);
  await startWarmUp(pad, entry.focus);
}

/** Has the run worked out beside the page after each change, with the panel's file as far as it is known. */
function startWork(pad: Pad): void {
  let file: MadeFile | undefined;
  const { data } = pad;
  const failed = (why: string) => pad.alarm(`The figures can’t be worked out: ${why}. Readings are kept all the same.`);
  const client = workClient(
    pad.setup.bench,
    (made) => {
      file = made.file;
      if ('fault' in made.worked) failed(made.worked.fault);
      else pad.worked = made.worked;
      pad.show();
    },
    failed,
  );
  const keeper = fileKeeper(data ? { text: data.text, data } : {}, () => {
    worked = undefined;
    pad.show();
  });
  let worked: unknown;
  startEnd(pad, keeper, () => file);
  pad.add(() => {
    if (worked === pad.run) return;
    worked = pad.run;
    client.work(pad.run, keeper.known());
  });
}

/** Undo and redo by buttons, and by the keys that all programs have for them; in a field with text these are the field's. */
function startUndo(pad: Pad): void {
  const undo = find('[data-pad-undo]') as HTMLButtonElement;
  const redo = find('[data-pad-redo]') as HTMLButtonElement;
  undo.addEventListener('click', () => void pad.undo().catch(() => undefined));
  redo.addEventListener('click', () => void pad.redo().catch(() => undefined));
  addEventListener('keydown', (event) => {
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || event.altKey || (key !== 'z' && key !== 'y')) return;
    const field = event.target;
    const hasText = (field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement) && field.value !== '';
    if (hasText) return;
    event.preventDefault();
    const isRedo = key === 'y' || event.shiftKey;
    void (isRedo ? pad.redo() : pad.undo()).catch(() => undefined);
  });
  pad.add(() => {
    const { acts, undone } = pad.desk.log();
    undo.disabled = acts.length === 0;
    redo.disabled = undone.length === 0;
  });
}
