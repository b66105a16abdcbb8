import type { PanelEntry } from '../../ledger/ledger.ts';
import type { SmallPhoto } from './browser/small-photo.ts';
import { smallVariant } from './photo-files.ts';

/** The first of a panel's own photos, small; undefined where it has none. */
export function smallPhoto({
  slug,
  photos,
}: Pick<PanelEntry, 'slug' | 'photos'>): (SmallPhoto & { alt: string }) | undefined {
  const photo = photos.find((it) => it.date === undefined);
  if (!photo) return undefined;
  const { address: src, width, height } = smallVariant(slug, photo);
  return { src, width, height, alt: photo.shows };
}

/** The same for a data file, to be spread into an entry: nothing where there is none. */
export function photoEntry(panel: Pick<PanelEntry, 'slug' | 'photos'>): { photo?: SmallPhoto } {
  const it = smallPhoto(panel);
  return it ? { photo: { src: it.src, width: it.width, height: it.height } } : {};
}
