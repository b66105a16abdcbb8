/**
 * Pictures from the tablet's camera, by `<input type="file" accept="image/jpeg,image/png,image/webp,image/avif"
 * capture="environment">`. They are kept as they come; what a camera writes into them is taken out by the build.
 */
import { type BenchStore, BenchStoreError } from './bench-store.ts';
import type { Run } from './run.ts';

/** For the input's `accept`: a tablet that takes pictures in another format then gives one of these. */
export const PHOTO_ACCEPT = 'image/jpeg,image/png,image/webp,image/avif';

/** Endings of files by the kind that the browser tells. */
const ENDINGS: Readonly<Record<string, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'image/avif': 'avif',
};

/** A picture that was not taken: it is of a kind that the guide can't show, there is nothing in it, or no room for it. */
export interface RefusedPhoto {
  /** As the device calls it. */
  readonly name: string;
  readonly refused: 'kind' | 'empty' | 'full';
}

/** A picture that is on the disk, and the name that it has there and beside the content file. */
export interface TakenPhoto {
  readonly file: string;
  readonly picture: Blob;
}

/**
 * The name of a run's next picture, such as `kelpwright-plover-2026-11-21-3.jpg`: the first number that is not in use.
 *
 * @param taken names that are in use: of this run's pictures, and of files beside the panel
 * @returns undefined for a kind that the guide can't show
 */
export function photoName(
  { panel, date }: Pick<Run, 'panel' | 'date'>,
  kind: string,
  taken: Iterable<string>,
): string | undefined {
  const ending = Object.hasOwn(ENDINGS, kind) ? ENDINGS[kind] : undefined;
  if (ending === undefined) return undefined;
  // Numbers are not used twice with different endings: file systems and people would mix them up.
  const used = new Set([...taken].map((it) => it.toLowerCase().replace(/\.\w+$/, '')));
  for (let number = 1; ; number++) {
    const name = `${panel.slug}-${date}-${number}`;
    if (!used.has(name.toLowerCase())) return `${name}.${ending}`;
  }
}

/**
 * Puts pictures into the store under names of their own, each on the disk before the next. What they show is asked
 * afterwards: an act `photo` with that text makes a picture part of the run; without one it lies beside the run unused.
 *
 * @param beside names of files that lie beside the panel already
 * @throws BenchStoreError except `full`, which is told of the picture
 */
export async function takePhotos(
  store: BenchStore,
  run: Pick<Run, 'id' | 'panel' | 'date' | 'photos'>,
  files: Iterable<File>,
  beside: Iterable<string> = [],
): Promise<{ taken: TakenPhoto[]; refused: RefusedPhoto[] }> {
  const names = new Set([...beside, ...run.photos.map((it) => it.file)]);
  for (const { file } of await store.photos(run.id)) names.add(file);
  const taken: TakenPhoto[] = [];
  const refused: RefusedPhoto[] = [];
  for (const picture of files) {
    const file = photoName(run, picture.type, names);
    if (file === undefined || picture.size === 0) {
      refused.push({ name: picture.name, refused: file === undefined ? 'kind' : 'empty' });
      continue;
    }
    try {
      // Read now: what a camera lends a page may be gone by the time that it is wanted.
      const copy = new Blob([await picture.arrayBuffer()], { type: picture.type });
      await store.savePhoto(run.id, file, copy);
      names.add(file);
      taken.push({ file, picture: copy });
    } catch (error) {
      if (!(error instanceof BenchStoreError) || error.fault !== 'full') throw error;
      refused.push({ name: picture.name, refused: 'full' });
    }
  }
  return { taken, refused };
}

/**
 * Draws a picture small. On a canvas, since the site's policy lets no picture be loaded from within the page.
 *
 * @param width of the drawing in CSS pixels; the height follows
 * @returns false where the browser can't read the picture
 */
export async function drawPhoto(picture: Blob, canvas: HTMLCanvasElement, width: number): Promise<boolean> {
  const pixels = Math.round(width * devicePixelRatio);
  try {
    const bitmap = await createImageBitmap(picture, { resizeWidth: pixels, resizeQuality: 'medium' });
    canvas.width = bitmap.width;
    canvas.height = bitmap.height;
    canvas.getContext('2d')?.drawImage(bitmap, 0, 0);
    bitmap.close();
    return true;
  } catch {
    return false;
  }
}
