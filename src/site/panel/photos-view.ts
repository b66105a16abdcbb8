import type { PanelEntry } from '../../ledger/ledger.ts';
import { showDate } from '../../words/format.ts';
import { type PhotoVariant, photoPictures } from '../shared/photo-files.ts';

/** A photo as a page prints it. */
export interface ShownPhoto {
  /** One for each of the new formats: its type, and its pictures by their widths. */
  sources: Array<{ type: string; srcset: string }>;
  /** How wide it stands there, by the width of the window. */
  sizes: string;
  /** For readers of neither format; its sides keep the place. */
  src: string;
  width: number;
  height: number;
  /** The largest one, alone. */
  whole: string;
  /** What is to be seen. */
  shows: string;
  /** "Taken 17 Nov 2026. Drawn by the library." */
  origin: string;
}

/** Heights of photos in their row, rem, and the window from which on they are larger: in photos.css too. */
const HEIGHT = { phone: 13, desk: 18 };
const DESK = '40rem';

/** A panel's photos and its sessions', in the tester's order. */
export function photosView({ slug, photos }: Pick<PanelEntry, 'slug' | 'photos'>): ShownPhoto[] {
  return photos.map((photo) => {
    const { avif, webp, fallback } = photoPictures(slug, photo);
    const { shows, by, date, file } = photo;
    const width = (height: number) => Math.ceil((height * file.width) / file.height);
    return {
      sources: [
        { type: 'image/avif', srcset: sourceSet(avif) },
        { type: 'image/webp', srcset: sourceSet(webp) },
      ],
      sizes: `(min-width: ${DESK}) ${width(HEIGHT.desk)}rem, ${width(HEIGHT.phone)}rem`,
      src: fallback.address,
      width: fallback.width,
      height: fallback.height,
      whole: (webp.at(-1) ?? fallback).address,
      shows,
      origin: [date && `Taken ${showDate(date)}`, by?.replace(/\.$/, '')]
        .flatMap((it) => (it ? [`${it}.`] : []))
        .join(' '),
    };
  });
}

const sourceSet = (variants: readonly PhotoVariant[]) =>
  variants.map(({ address, width }) => `${address} ${width}w`).join(', ');
