/** Words about the session, and photographs with the text that goes beside each. */
import { html } from '../../../shared/browser/dom.ts';
import { drawPhoto, PHOTO_ACCEPT, type RefusedPhoto, takePhotos } from '../camera-photo.ts';
import { find } from '../sheet-form.ts';
import type { Pad } from './pad-context.ts';
import { storeWords } from './store-words.ts';

const REFUSED: Readonly<Record<RefusedPhoto['refused'], string>> = {
  kind: 'is of a kind that the guide can’t show: JPEG, PNG, WebP or AVIF',
  empty: 'is empty',
  full: 'was not taken: the device has no room left',
};

export function startTexts(pad: Pad): void {
  const fields = [...document.querySelectorAll<HTMLTextAreaElement>('[data-pad-text]')];
  for (const it of fields) {
    it.addEventListener('change', () => {
      const key = it.dataset.padText ?? '';
      void pad.perform({ kind: 'set', field: 'texts', key, value: it.value.trim() }).catch(() => undefined);
    });
  }
  pad.add(() => {
    for (const it of fields) {
      if (it !== document.activeElement) it.value = pad.run.texts[it.dataset.padText ?? ''] ?? '';
    }
  });
}

export function startPhotos(pad: Pad): void {
  const place = find('[data-pad-photos]');
  const said = find('[data-pad-photos-said]');
  const list = html('ul', { class: 'pad-photos pad-readings' });
  const fault = html('p', { class: 'pad-fault', role: 'alert' });
  const input = html('input', {
    id: 'pad-photo',
    type: 'file',
    accept: PHOTO_ACCEPT,
    capture: 'environment',
    multiple: true,
  });
  place.replaceChildren(
    html('p', {}, html('label', { for: 'pad-photo' }, 'Photographs, from the camera or a file'), input),
    fault,
    list,
  );

  input.addEventListener('change', async () => {
    fault.textContent = '';
    try {
      const { refused } = await takePhotos(pad.store, pad.run, input.files ?? []);
      fault.textContent = refused.map(({ name, refused: why }) => `${name} ${REFUSED[why]}.`).join(' ');
    } catch (error) {
      fault.textContent = storeWords(error);
    }
    input.value = '';
    await draw();
    list.querySelector<HTMLInputElement>('input:placeholder-shown')?.focus();
  });

  const rowOf = (file: string, picture: Blob): HTMLElement => {
    const canvas = html('canvas', { 'aria-hidden': 'true' });
    void drawPhoto(picture, canvas, 96);
    const id = `shows-${file}`;
    const text = html('input', {
      id,
      type: 'text',
      placeholder: 'Red light on the wall at 6 in',
      maxlength: 200,
      value: pad.run.photos.find((it) => it.file === file)?.shows ?? '',
    });
    text.addEventListener('change', () => {
      const shows = text.value.trim();
      void pad
        .perform(shows === '' ? { kind: 'unphoto', file } : { kind: 'photo', file, shows })
        .then(say, () => undefined);
    });
    return html(
      'li',
      {},
      canvas,
      html('span', { class: 'pad-name' }, html('label', { for: id }, `What ${file} shows`), text),
    );
  };
  const say = () => {
    const named = pad.run.photos.length;
    const without = list.children.length - named;
    const words = [
      list.children.length > 0 &&
        `${list.children.length} ${list.children.length === 1 ? 'photograph' : 'photographs'}`,
      without > 0 && `${without} without a text, left out of the file`,
    ];
    said.textContent = words.filter(Boolean).join(', ');
  };
  async function draw(): Promise<void> {
    const photos = await pad.store.photos(pad.run.id);
    list.replaceChildren(...photos.map(({ file, picture }) => rowOf(file, picture)));
    say();
  }
  void draw().catch((error: unknown) => {
    fault.textContent = storeWords(error);
  });
}
