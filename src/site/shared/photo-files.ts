import { parse } from 'node:path';
import type { Photo } from '../../ledger/ledger.ts';

/** Formats that a photo is published in, the smallest first; the last one is for readers of neither. */
export type PhotoFormat = 'avif' | 'webp' | 'jpg';

/** One published picture of a photo. */
export interface PhotoVariant {
  format: PhotoFormat;
  width: number;
  height: number;
  /** Address in the guide. Another picture has another one, so that none is shown for it from a reader's store. */
  address: string;
}

/** Widths that a photo is published in, px: none is wider than the photo. */
const WIDTHS = [320, 640, 1280] as const;
/** Width for readers of neither new format. */
const FALLBACK = 640;
/** Longest side of the small one that stands in lists. */
const SMALL = 160;

/** What is published of one photo. */
export interface PhotoPictures {
  /** By width. */
  avif: PhotoVariant[];
  webp: PhotoVariant[];
  fallback: PhotoVariant;
  /** For lists. */
  small: PhotoVariant;
}

/** The pictures that are published of a panel's photo. */
export function photoPictures(slug: string, photo: Photo): PhotoPictures {
  const { width } = photo.file;
  const widths = [...new Set(WIDTHS.map((it) => Math.min(it, width)))];
  const at = variantOf(slug, photo);
  return {
    avif: widths.map((it) => at('avif', it)),
    webp: widths.map((it) => at('webp', it)),
    fallback: at('jpg', Math.min(FALLBACK, width)),
    small: smallVariant(slug, photo),
  };
}

/** The same in one list, each once. */
export function photoVariants(slug: string, photo: Photo): PhotoVariant[] {
  const { avif, webp, fallback, small } = photoPictures(slug, photo);
  const all = [...avif, ...webp, fallback, small];
  return [...new Map(all.map((it) => [it.address, it])).values()];
}

/** The small one. */
export function smallVariant(slug: string, photo: Photo): PhotoVariant {
  const { width, height } = photo.file;
  return variantOf(slug, photo)('webp', Math.round(width * Math.min(1, SMALL / Math.max(width, height))));
}

const variantOf = (slug: string, { name, file }: Photo) => {
  const stem = parse(name)
    .name.toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return (format: PhotoFormat, width: number): PhotoVariant => ({
    format,
    width,
    height: Math.max(1, Math.round((width * file.height) / file.width)),
    address: `/photos/${slug}/${[stem, file.mark, width].filter((it) => it !== '').join('-')}.${format}`,
  });
};
