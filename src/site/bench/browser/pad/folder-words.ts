/** What came of saving into a folder, in words. No DOM. */
import type { FolderError } from '../save-folder.ts';

export function folderWords({ fault, found, message }: FolderError): string {
  switch (fault) {
    case 'not-there':
      return 'This browser can’t write into folders: download the file, and put it there.';
    case 'none-chosen':
      return 'No folder was chosen.';
    case 'refused':
      return 'The browser or the system does not allow it.';
    case 'no-guide':
      return 'There is no guide.yaml in that folder, nor in its content folder.';
    case 'changed':
      return found === undefined
        ? 'The file is not in the folder any more. Nothing was written.'
        : 'The file has been changed in the folder meanwhile; nothing was written. What you see now is made from it as it is there: look, and save again.';
    case 'photo-there':
      return `Another picture named ${found} is there already; nothing was written.`;
    case 'failed':
      return `It could not be saved (${message}).`;
  }
}
