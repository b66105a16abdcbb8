import { accessSync, constants, existsSync, mkdirSync, mkdtempSync, readdirSync, rmdirSync, statSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { UsageError } from '../content/read/usage-error.ts';
import { errorCode } from './error-code.ts';

/** What the system says of a place that can't be written, in words. */
const CAUSES: Readonly<Record<string, string>> = {
  EACCES: 'this user may not write there',
  EPERM: 'this user may not write there',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the quota of the disk is used up',
  ENOTDIR: 'a file lies where a folder is needed',
  EEXIST: 'a file lies where a folder is needed',
  EISDIR: 'a folder lies where a file is needed',
  EBUSY: 'it is in use',
  EXDEV: 'it lies on another disk, or is a disk of its own',
  EMFILE: 'too many files are open',
  EIO: 'the disk fails',
};

const PLACELESS: ReadonlySet<string> = new Set(['ENOSPC', 'EDQUOT', 'EMFILE', 'EIO']);

/**
 * Sees before any work that a build can put its output in place.
 *
 * @param target the folder that the finished site takes the place of
 * @param growing the folder in which it grows; made where it is not there
 * @throws UsageError with one line where it can't
 */
export function ensureWritable(target: string, growing: string): void {
  try {
    const parent = dirname(resolve(target));
    for (const place of [parent, target]) {
      if (existsSync(place) && !statSync(place).isDirectory()) {
        throw Object.assign(new Error('no folder'), { code: 'ENOTDIR', path: place });
      }
    }
    if (existsSync(target) && !isGuideOrEmpty(target)) throw new UsageError(NO_GUIDE(target));
    if (!existsSync(parent)) throw new UsageError(NO_PARENT(target, parent));
    accessSync(parent, constants.W_OK);
    tryFolderIn(parent);
    mkdirSync(growing, { recursive: true });
    accessSync(growing, constants.W_OK);
  } catch (error) {
    throw outputFault(error, [target, growing, dirname(resolve(target))]) ?? error;
  }
}

/** Some places grant everything and take nothing, such as those in which a system tells of itself. */
function tryFolderIn(parent: string): void {
  try {
    rmdirSync(mkdtempSync(join(parent, '.ledger-')));
  } catch (error) {
    const code = errorCode(error);
    if (code !== 'ENOENT') throw Object.assign(new Error(`${parent} takes no folder`), { code, path: parent });
    throw new UsageError(`${parent} takes no folder (${code}). Nothing was built: name another place.`);
  }
}

/** A folder that a build may take the place of: everything in it goes. */
function isGuideOrEmpty(folder: string): boolean {
  const names = readdirSync(folder);
  return names.length === 0 || (names.includes('index.html') && (names.includes('data') || names.includes('404.html')));
}

const NO_GUIDE = (folder: string) =>
  `${folder} holds other things than a built guide, and they would be lost. Nothing was built: name an empty or a new folder.`;

const NO_PARENT = (folder: string, parent: string) =>
  `${folder} can't be written: there is no folder ${parent}. Nothing was built: make it first, or name another place.`;

/**
 * A fault of the disk in one of the folders that a build writes, in one line; undefined for any other fault, of which
 * a trace tells more.
 *
 * @param ended what has not been done for it
 */
export function outputFault(
  error: unknown,
  folders: readonly string[],
  ended = 'Nothing was built.',
): UsageError | undefined {
  const { code, path, dest } = error as NodeJS.ErrnoException & { dest?: string };
  const cause = code === undefined ? undefined : CAUSES[code];
  if (!cause) return undefined;
  const place = [path, dest].find((it) => it !== undefined && folders.some((folder) => isWithin(it, folder)));
  // A write to a file that is open names no place; these causes are clear without one.
  if (place === undefined && (path !== undefined || !PLACELESS.has(code ?? ''))) return undefined;
  return new UsageError(`${place ?? folders[0]} can't be written: ${cause} (${code}). ${ended}`);
}

function isWithin(path: string, folder: string): boolean {
  const [inner, outer] = [resolve(path), resolve(folder)];
  return inner === outer || inner.startsWith(outer.endsWith(sep) ? outer : outer + sep);
}
