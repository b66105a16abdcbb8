/** The end of a run: its content file, to look at, to download, or to save into the folder. */
import { html } from '../../../shared/browser/dom.ts';
import { canSaveFolder, chooseFolder, download, FolderError, readPanelFile, savePanel } from '../save-folder.ts';
import { find } from '../sheet-form.ts';
import { folderWords } from './folder-words.ts';
import type { FileKeeper } from './known-file.ts';
import type { Pad } from './pad-context.ts';
import { progressOf } from './way.ts';
import type { MadeFile } from './work-messages.ts';

/** @param made the content file as the thread has made it, or nothing yet */
export function startEnd(pad: Pad, keeper: FileKeeper, made: () => MadeFile | undefined): void {
  const state = html('p', {});
  const finish = html('button', { type: 'button' });
  const lacking = html('div', { class: 'pad-asked' });
  const name = html('p', {});
  const text = html('pre', { class: 'pad-text', tabindex: 0, 'aria-label': 'Text of the content file' });
  const fold = html('details', {}, html('summary', {}, 'Look at it'), text);
  const save = html('button', { type: 'button' }, 'Save into the folder');
  const load = html('button', { type: 'button' }, 'Download');
  const actions = html('p', { class: 'pad-actions' }, save, load);
  const said = html('p', { role: 'status' });
  find('[data-pad-end]').replaceChildren(
    state,
    html('p', { class: 'pad-actions' }, finish),
    lacking,
    name,
    actions,
    said,
    fold,
  );
  save.hidden = !canSaveFolder();
  lacking.append(...askFile());

  finish.addEventListener('click', () => {
    const value = !pad.run.isFinished;
    void pad.perform({ kind: 'set', field: 'finished', value }).catch(() => undefined);
  });
  load.addEventListener('click', () => void downloadAll());
  save.addEventListener('click', () => void saveAll());

  const photos = async () => {
    const shown = new Set(pad.run.photos.map((it) => it.file));
    return (await pad.store.photos(pad.run.id)).filter((it) => shown.has(it.file));
  };
  const downloadAll = async () => {
    const file = made();
    if (!file || !('text' in file)) return;
    download(file.name.replace(/.*\//, ''), file.text);
    const pictures = await photos();
    for (const it of pictures) download(it.file, it.picture);
    const beside =
      pictures.length === 0
        ? ''
        : `, with ${pictures.length} ${pictures.length === 1 ? 'picture' : 'pictures'} beside it`;
    said.textContent = `Put it at ${file.name}${beside}.`;
  };
  const saveAll = async () => {
    try {
      const folder = keeper.folder() ?? (await chooseFolder());
      if (!keeper.folder()) {
        keeper.takeFolder(folder, await readPanelFile(folder, pad.run.panel.slug));
        // What is saved is what was seen: with a folder just chosen it is made anew upon the file there.
        if (!pad.run.panel.isNew) {
          said.textContent = 'Made upon the file in that folder. Look at it, and save again.';
          return;
        }
      }
      const file = made();
      if (!file || !('text' in file)) return;
      const before = keeper.known().text;
      const written = await savePanel(folder, {
        slug: pad.run.panel.slug,
        text: file.text,
        before,
        photos: await photos(),
      });
      said.textContent = written.length === 0 ? 'It is there already, as it is here.' : `Saved: ${written.join(', ')}.`;
    } catch (error) {
      const told = error instanceof FolderError ? error : new FolderError('failed', { cause: error });
      if (told.fault === 'changed' && told.found !== undefined) keeper.take(told.found, 'as it is in the folder now');
      said.textContent = folderWords(told);
    }
  };

  function askFile(): HTMLElement[] {
    const input = html('input', { id: 'pad-own-file', type: 'file', accept: '.md,.mdx,text/markdown' });
    const choose = html('button', { type: 'button', hidden: !canSaveFolder() }, 'Choose the content folder');
    choose.addEventListener('click', () => void saveAll());
    input.addEventListener('change', async () => {
      const file = input.files?.[0];
      if (file) keeper.take(await file.text(), `as in the file ${file.name} that you opened`);
    });
    return [
      html(
        'p',
        {},
        'The session goes into the panel’s own file, all else in it byte for byte as it is. That file lies on your disk and not on the site.',
      ),
      html('p', { class: 'pad-actions' }, choose, html('label', { for: 'pad-own-file' }, 'or open the file'), input),
    ];
  }

  pad.add(() => {
    const { read, of } = progressOf(pad.run, pad.places);
    const { isFinished } = pad.run;
    state.textContent = isFinished
      ? `Finished, with ${read} of ${of} places read.`
      : `A draft, with ${read} of ${of} places read: the published guide leaves the session out, and what is still to be read stands in it as a gap.`;
    finish.textContent = isFinished ? 'Make it a draft again' : 'All is read: finish';
    const file = made();
    const isThere = file !== undefined && 'text' in file;
    lacking.hidden = !(file && 'fault' in file && file.code === 'no file');
    actions.hidden = !isThere;
    fold.hidden = !isThere;
    name.textContent = file ? nameWords(file, keeper.from()) : '';
    const written = isThere ? file.text : '';
    if (text.textContent !== written) text.textContent = written;
  });
}

function nameWords(file: MadeFile, from: string | undefined): string {
  if ('text' in file) return `${file.name}${from ? `, ${from}, with this session` : ''}.`;
  if (file.code === 'no file') return '';
  if (file.code === 'session there') {
    return 'The panel’s file has a session of this day already. Choose another day, or open that session’s readings as another pad’s file and hold them against these.';
  }
  return `There is no content file: ${file.fault}.`;
}
