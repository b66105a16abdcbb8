import { readdirSync } from 'node:fs';
import { extname, join } from 'node:path';
import { PHOTOS } from '../schema/photo.ts';
import { linksIn } from './body-links.ts';
import { texts } from './fields.ts';
import { type PhotoFile, readPhotoFile } from './photo-file.ts';
import type { Source } from './source.ts';

/** What lies beside a panel's index. */
export interface PanelPhotos {
  /** Photos that its front matter lists, by the names of their files. */
  listed: ReadonlyMap<string, PhotoFile>;
  /** Names of pictures that neither the front matter nor the notes name. */
  unnamed: readonly string[];
}

/** Where lists of photos stand in a panel's front matter. */
export const PHOTO_FILES = [
  ['photos', '*', 'file'],
  ['sessions', '*', 'photos', '*', 'file'],
] as const;

/** Where else a picture's file may be named: it is published then as it is. */
const OTHER_FILES = [
  ['sessions', '*', 'wallPhoto', 'file'],
  ['sessions', '*', 'otherFiles', '*', 'file'],
];

/** The pictures beside a panel's index. */
export function panelPhotos(source: Source, folder: string): PanelPhotos {
  const names = PHOTO_FILES.flatMap((keys) => texts(source, ...keys)).map((it) => it.value);
  const listed = new Map(
    names.flatMap((name) => {
      const file = readPhotoFile(join(folder, name));
      return file ? [[name, file] as const] : [];
    }),
  );
  const elsewhere = new Set(OTHER_FILES.flatMap((keys) => texts(source, ...keys)).map((it) => it.value));
  const others = picturesIn(folder).filter((it) => !listed.has(it) && !elsewhere.has(it));
  // Notes are parsed for this where there is a picture that they might name.
  const inNotes = new Set(others.length > 0 ? linksIn(source).map((it) => nameOf(it.address)) : []);
  return { listed, unnamed: others.filter((it) => !inNotes.has(it)) };
}

/** Names of the pictures in a folder. */
export function picturesIn(folder: string): string[] {
  return readdirSync(folder)
    .filter((it) => PHOTOS.includes(extname(it).toLowerCase()))
    .toSorted();
}

function nameOf(address: string): string {
  const name = address.replace(/^\.\//, '');
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}
