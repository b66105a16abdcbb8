import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { copyFile, mkdir } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { cacheFolder } from '../../content/read/cache-folder.ts';
import { writeWhole } from '../../content/read/write-whole.ts';
import type { Problem } from '../../content/schema/problem.ts';
import type { Ledger, Photo } from '../../ledger/ledger.ts';
import { type PhotoFormat, type PhotoVariant, photoVariants } from '../../site/shared/photo-files.ts';
import { forgetOld, noteUse } from '../forget-old.ts';

/**
 * Photos are worked on here, and not by Astro's pipeline, with the same library (sharp). Astro takes a picture in by an
 * import: it copies the original, place and all, into the output and takes it out again in the end, keeps its cache in
 * the folder that each build starts without, and tells addresses only to pages while they are rendered, when the data
 * files need them too.
 *
 * What was made is kept under what it was made of, so that a build makes only what is new.
 */
const store = () => join(cacheFolder(), 'photos');

/** How the formats are written. What is not named keeps the library's defaults; metadata are left out by these. */
const WRITE: Record<PhotoFormat, (image: Sharp) => Sharp> = {
  // One step of effort more takes four times as long, for an eighth fewer bytes.
  avif: (image) => image.avif({ quality: 55, effort: 3 }),
  webp: (image) => image.webp({ quality: 78, effort: 4 }),
  jpg: (image) => image.flatten({ background: '#ffffff' }).jpeg({ quality: 80, mozjpeg: true }),
};

/** Changes with the library and with the recipes, so that what another one made is not taken for this one's. */
const RECIPE = createHash('sha256')
  .update(JSON.stringify([sharp.versions, ...Object.values(WRITE).map(String)]))
  .digest('hex')
  .slice(0, 8);

/** A photo with the panel that lists it. */
interface Listed {
  slug: string;
  photo: Photo;
}

const listedIn = (ledger: Ledger): Listed[] =>
  [...ledger.panels.values()].flatMap(({ slug, photos }) => photos.map((photo) => ({ slug, photo })));

const storedAt = ({ file }: Photo, { width, format }: PhotoVariant) =>
  join(store(), `${file.mark}-${RECIPE}-${width}.${format}`);

/** What only shows when a photo is decoded. */
export interface PhotoFault extends Pick<Problem, 'found' | 'wanted' | 'hint'> {
  slug: string;
  name: string;
}

/** Which photos can't be shown. Those that a build has shown before can. */
export async function photoFaults(ledger: Ledger): Promise<PhotoFault[]> {
  const faults: PhotoFault[] = [];
  await eachOf(unmade(ledger), async ({ slug, photo }) => {
    const fault = await faultOf(photo);
    if (fault) faults.push({ slug, name: photo.name, ...fault });
  });
  return faults;
}

/** Makes what is not there yet of all photos, of which none may have a fault. */
export async function makePhotos(ledger: Ledger): Promise<void> {
  await eachOf(unmade(ledger), async ({ slug, photo }) => {
    for (const it of photoVariants(slug, photo)) await made(photo, it);
  });
}

const unmade = (ledger: Ledger): Listed[] =>
  listedIn(ledger).filter(({ slug, photo }) =>
    photoVariants(slug, photo).some((it) => !existsSync(storedAt(photo, it))),
  );

/** One photo a processor at a time: each is decoded in full, up to a hundred megapixels of it. */
async function eachOf(waiting: Listed[], work: (it: Listed) => Promise<void>): Promise<void> {
  const worker = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) await work(next);
  };
  await Promise.all(Array.from({ length: availableParallelism() }, worker));
}

/** Lays all pictures of all photos into the output. */
export async function writePhotos(ledger: Ledger, folder: string): Promise<void> {
  for (const { slug, photo } of listedIn(ledger)) {
    for (const it of photoVariants(slug, photo)) {
      const target = join(folder, it.address);
      await mkdir(dirname(target), { recursive: true });
      const stored = await made(photo, it);
      await copyFile(stored, target);
      noteUse(stored);
    }
  }
  forgetOld(store());
}

/** The file of one published picture, made now if need be; undefined where no photo has that address. */
export async function photoAt(ledger: Ledger, address: string): Promise<string | undefined> {
  for (const { slug, photo } of listedIn(ledger)) {
    const variant = photoVariants(slug, photo).find((it) => it.address === address);
    if (variant) return made(photo, variant);
  }
  return undefined;
}

/** Where a picture is kept; it is made where it is not there. */
async function made(photo: Photo, variant: PhotoVariant): Promise<string> {
  const path = storedAt(photo, variant);
  if (existsSync(path)) return path;
  writeWhole(path, await pictureOf(photo, variant).toBuffer());
  return path;
}

/** One published picture. */
export function pictureOf(photo: Photo, { width, height, format }: PhotoVariant): Sharp {
  // Turned before the camera's word for it goes with all its others.
  return WRITE[format](opened(photo).autoOrient().resize({ width, height, fit: 'fill' }));
}

const opened = ({ file }: Photo) => sharp(file.path, { failOn: 'error' });

async function faultOf(photo: Photo): Promise<Pick<Problem, 'found' | 'wanted' | 'hint'> | undefined> {
  const { file, name } = photo;
  let seen: { width: number; height: number };
  try {
    const image = opened(photo);
    seen = (await image.metadata()).autoOrient;
    // Decodes all of it, and keeps none.
    await image.stats();
  } catch (error) {
    const why = error instanceof Error ? error.message.trim().split('\n')[0] : String(error);
    return {
      found: `"${name}", which can’t be decoded: ${why}`,
      wanted: 'a whole picture',
      hint: 'copy it anew, or export it as JPEG or PNG',
    };
  }
  if (seen.width === file.width && seen.height === file.height) return undefined;
  return {
    found: `"${name}" of ${seen.width} × ${seen.height} pixels, whose head says ${file.width} × ${file.height}`,
    wanted: 'a picture that lies as it is seen',
    hint: 'turn it in a program for pictures and save it as JPEG',
  };
}
