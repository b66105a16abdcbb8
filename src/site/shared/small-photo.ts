import type { PanelEntry } from '../../ledger/ledger.ts';
import { smallVariant } from './photo-files.ts';

/** A picture that stands for a panel where panels are picked. */
export interface SmallPhoto {
  src: string;
  width: number;
  height: number;
  alt: string;
}

/** The first of a panel's photos, small; undefined where it has none of its own. */
export function smallPhoto({ slug, photos }: Pick<PanelEntry, 'slug' | 'photos'>): SmallPhoto | undefined {
  const photo = photos.find((it) => it.date === undefined);
  if (!photo) return undefined;
  const { address: src, width, height } = smallVariant(slug, photo);
  return { src, width, height, alt: photo.shows };
}
