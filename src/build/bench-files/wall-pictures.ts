import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { extname, join } from 'node:path';
import { encode as encodePng } from 'fast-png';
import jpeg from 'jpeg-js';
import { cacheFolder } from '../../content/read/cache-folder.ts';
import { readAgain } from '../../content/read/files/bench-files.ts';
import { writeWhole } from '../../content/read/write-whole.ts';
import { madeOf } from '../../ledger/files/file-maker.ts';
import type { Ledger, SessionFile } from '../../ledger/ledger.ts';
import { at } from '../../measure/at.ts';
import { encodedOf } from '../../measure/wall/srgb.ts';
import type { WallLight } from '../../measure/wall/straighten.ts';
import { signalOf } from '../../measure/wall/wall-results.ts';
import { wallAddresses } from '../../site/files/wall-addresses.ts';
import { WALL_COLOURS, wallStep } from '../../site/files/wall-scale.ts';
import { buildStamp } from '../source-stamp.ts';

/** A picture that the build makes of a photo of the wall. */
export interface WallPicture {
  address: string;
  /** Stands for all that it is made of, the code too. */
  mark: string;
  bytes(): Uint8Array;
}

/** Pictures are kept under what they are made of, so that a build makes only what is new: each takes some 40 ms. */
export const wallStore = () => join(cacheFolder(), 'wall');

/** The straightened photo and the map of the light, of each photo of a wall. */
export function wallPictures({ panels }: Ledger): WallPicture[] {
  const all = [...panels.values()].flatMap(({ slug, sessions }) =>
    sessions.flatMap(({ files, made }) => {
      const file = files.find((it) => it.kind === 'wallPhoto');
      if (!madeOf(made, 'wallPhoto') || !file) return [];
      const addresses = wallAddresses(slug, file);
      const pixels = () => readAgain<'wallPhoto'>(file).light;
      return [
        { address: addresses.photo, mark: markOf('photo', file), bytes: () => straightPhoto(pixels()) },
        { address: addresses.map, mark: markOf('map', file), bytes: () => wallMap(pixels()) },
      ];
    }),
  );
  return [...new Map(all.map((it) => [it.address, it])).values()];
}

function markOf(what: string, { sha256, entry }: SessionFile): string {
  const of = JSON.stringify([buildStamp(), what, sha256, entry]);
  return createHash('sha256').update(of).digest('hex').slice(0, 32);
}

/** Where a picture is kept; it is made where it is not there. @throws where it can't be written */
export function wallPictureFile({ address, mark, bytes }: WallPicture): string {
  const file = join(wallStore(), `${mark}${extname(address)}`);
  if (!existsSync(file)) writeWhole(file, bytes());
  return file;
}

const JPEG_QUALITY = 82;

/** The rectangle of the photo as the camera showed it, straightened. */
export function straightPhoto({ columns, rows, red, green, blue }: WallLight): Uint8Array {
  const data = new Uint8Array(4 * columns * rows).fill(255);
  [red, green, blue].forEach((channel, k) => {
    for (let i = 0; i < channel.length; i += 1) data[4 * i + k] = Math.round(255 * encodedOf(at(channel, i)));
  });
  return jpeg.encode({ width: columns, height: rows, data }, JPEG_QUALITY).data;
}

/** The light of the rectangle in steps of its mean. */
export function wallMap(light: WallLight): Uint8Array {
  const { columns, rows } = light;
  const luminance = signalOf(light, 'luminance');
  const mean = luminance.reduce((sum, it) => sum + it, 0) / luminance.length;
  const data = new Uint8Array(3 * columns * rows);
  luminance.forEach((it, i) => {
    data.set(at(WALL_COLOURS, mean > 0 ? wallStep(it / mean) : 0), 3 * i);
  });
  return encodePng({ width: columns, height: rows, data, depth: 8, channels: 3 });
}
