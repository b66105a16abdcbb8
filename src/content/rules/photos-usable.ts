import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import { fields, meant, problemAt } from '../read/fields.ts';
import { PHOTO_FILES } from '../read/listed-photos.ts';
import { PHOTO_KINDS, readPhotoFile } from '../read/photo-file.ts';
import { pictureKind } from '../read/picture.ts';
import { PHOTOS } from '../schema/photo.ts';
import { fieldPath } from '../schema/problem.ts';
import { nearest } from '../schema/suggest.ts';
import type { Rule } from './rule.ts';

/** Largest photo that is taken in. Our own choice: above what a camera of today writes. */
export const MOST_MEGABYTES = 25;
export const MOST_MEGAPIXELS = 100;

const MEGA = 1e6;
const ENDINGS = PHOTOS.join(', ');
const EXPORT = 'export it anew as JPEG or PNG; another ending does not change what it is';

interface Fault {
  found?: string;
  wanted: string;
  hint?: string | undefined;
}

/** Photos that a panel lists lie beside it, once each, and can be shown. */
export const photosUsable: Rule = {
  id: 'photos-usable',
  run: ({ panels }) =>
    [...panels.values()].flatMap((source) => {
      const beside = dirname(source.path);
      const before = new Map<string, PropertyKey[]>();
      return PHOTO_FILES.flatMap((keys) => fields(source.data, keys)).flatMap((field) => {
        const { value: name, path } = field;
        if (typeof name !== 'string' || name.trim() === '') return [];
        const first = before.get(name);
        before.set(name, first ?? path);
        const fault: Fault | undefined = first
          ? { wanted: `another picture: ${fieldPath(first)} names this one` }
          : faultOf(name, beside);
        if (!fault) return [];
        const { found, wanted, hint } = fault;
        return [{ ...problemAt(source, field, wanted, hint), ...(found && { found }) }];
      });
    }),
};

function faultOf(name: string, beside: string): Fault | undefined {
  if (/[/\\]/.test(name)) return { wanted: 'the name of a file beside this one, without a folder' };
  const path = join(beside, name);
  // Not by asking for the path: some disks take capitals for small letters, and the reader's server does not.
  const names = readdirSync(beside);
  if (!names.includes(name) || !existsSync(path) || !statSync(path).isFile()) {
    return { wanted: 'a file that is there, beside this one', hint: meant(nearest(name, names)) };
  }
  const kind = pictureKind(path);
  if (!PHOTOS.includes(extname(name).toLowerCase())) {
    return { wanted: `a picture that ends in ${ENDINGS}`, hint: kind && EXPORT };
  }
  if (!kind) return { wanted: `a picture: this file does not start like any of ${ENDINGS}`, hint: EXPORT };
  if (!PHOTO_KINDS.includes(kind)) {
    return { found: `"${name}", a ${kind.toUpperCase()} inside`, wanted: 'a JPEG, PNG, WebP or AVIF', hint: EXPORT };
  }
  const megabytes = statSync(path).size / MEGA;
  if (megabytes > MOST_MEGABYTES) {
    return {
      found: `"${name}" of ${megabytes.toFixed(1)} MB`,
      wanted: `a picture of at most ${MOST_MEGABYTES} MB`,
      hint: 'readers get 1280 pixels across at most: save it smaller',
    };
  }
  const file = readPhotoFile(path);
  if (!file) return { wanted: 'a picture whose size can be read: this file breaks off or is damaged', hint: EXPORT };
  const megapixels = (file.width * file.height) / MEGA;
  if (megapixels > MOST_MEGAPIXELS) {
    return {
      found: `"${name}" of ${file.width} × ${file.height} pixels`,
      wanted: `a picture of at most ${MOST_MEGAPIXELS} megapixels`,
      hint: 'readers get 1280 pixels across at most: save it smaller',
    };
  }
  return undefined;
}
