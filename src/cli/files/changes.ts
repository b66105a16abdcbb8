import { isUtf8 } from 'node:buffer';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { errorCode } from '../../build/error-code.ts';
import { EditError } from '../../content/edit/edit-error.ts';
import { freshHash } from '../../content/read/files/file-hash.ts';

/** What a file shall hold: a text, bytes, or what is in another file, which is never read as a whole. */
export type NewContent = string | Uint8Array | CopyOf;

/** The content of a file outside the folder, as it was when it was looked at. */
export interface CopyOf {
  copyOf: string;
  sha256: string;
}

/** One file as it was when it was read, and as it shall be. */
export interface FileChange {
  /** In the content folder, with forward slashes; after the moves. */
  path: string;
  /** Undefined for a file that must not be there yet. */
  before: string | Uint8Array | undefined;
  /** Undefined for a file that goes. */
  after: NewContent | undefined;
}

/** What one command changes in a content folder: all of it, or nothing. */
export interface Changes {
  /** Files and folders that get another name, before anything else; nothing may be there yet. */
  moves?: ReadonlyArray<{ from: string; to: string }>;
  files: readonly FileChange[];
}

/**
 * A file of the content folder as text, to be edited.
 *
 * @param path in the folder
 * @throws EditError where it is not UTF-8, which an edit would spoil
 */
export function readText(folder: string, path: string): string {
  const bytes = readFileSync(join(folder, path));
  if (!isUtf8(bytes))
    throw new EditError(`${path} is not in UTF-8; \`npm run check\` says where. Nothing was changed.`);
  return bytes.toString('utf8');
}

/** The file's bytes, by which it is known again; null where there is none. */
export function stampOf(file: string): string | null {
  try {
    return freshHash(file);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
}

/** The same for what is not in a file of the folder yet. */
export function stamp(content: NewContent): string {
  return isCopy(content) ? content.sha256 : createHash('sha256').update(content).digest('hex');
}

export const isCopy = (content: NewContent): content is CopyOf => typeof content === 'object' && 'copyOf' in content;
