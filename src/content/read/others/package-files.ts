import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';

/** The files of a data package, by their paths below its descriptor. */
export interface PackageFiles {
  /** Its text; undefined where there is no such file. */
  text(path: string): string | undefined;
}

/** Bytes of the largest package that is read: a thousand panels take about 30 MB. */
export const LARGEST_PACKAGE = 256 * 1024 * 1024;

/** The files of a package in a folder. */
export function folderFiles(folder: string): PackageFiles {
  return {
    text: (path) => {
      const file = join(folder, path);
      return existsSync(file) && statSync(file).isFile() ? readFileSync(file, 'utf8') : undefined;
    },
  };
}

/**
 * The files of a package in a ZIP archive, wherever in it the descriptor lies.
 *
 * @throws where the bytes are no archive, or unpack to more than is read
 */
export function zipFiles(bytes: Uint8Array): PackageFiles {
  let total = 0;
  const files = unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      if (!/\.(json|csv)$/i.test(name)) return false;
      total += originalSize;
      if (total > LARGEST_PACKAGE) throw new Error(`it unpacks to more than ${LARGEST_PACKAGE / 1024 / 1024} MB`);
      return true;
    },
  });
  const descriptor = Object.keys(files)
    .filter((it) => /(^|\/)datapackage\.json$/.test(it))
    .toSorted((a, b) => a.length - b.length)[0];
  const root = descriptor?.replace(/datapackage\.json$/, '') ?? '';
  return {
    text: (path) => {
      const file = files[`${root}${path}`];
      return file && strFromU8(file);
    },
  };
}
