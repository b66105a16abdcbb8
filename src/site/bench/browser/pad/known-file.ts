/** The panel's own file, as far as the page has it: from the site, or from the tester's disk. */
import type { ContentFolder, PanelFile } from '../save-folder.ts';
import type { KnownFile } from './work-messages.ts';

export interface FileKeeper {
  known(): KnownFile;
  /** Where its text is from, in words; undefined where the page has no text of it. */
  from(): string | undefined;
  /** The folder in which to save, once one was chosen. */
  folder(): ContentFolder | undefined;
  /** Takes a text as the file's. */
  take(text: string, from: string): void;
  /** Takes a folder, with the panel's file in it; undefined where it has none. */
  takeFolder(folder: ContentFolder, file: PanelFile | undefined): void;
}

/** @param changed is called when the file is another one than before */
export function fileKeeper(first: KnownFile, changed: () => void): FileKeeper {
  let known = first;
  let from = first.text === undefined ? undefined : 'as this site’s server has it';
  let folder: ContentFolder | undefined;
  return {
    known: () => known,
    from: () => from,
    folder: () => folder,
    take: (text, where) => {
      known = { ...known, text };
      from = where;
      changed();
    },
    takeFolder: (chosen, file) => {
      folder = chosen;
      if (file) {
        known = { ...known, text: file.text };
        from = `as it is in ${chosen.name}`;
      }
      changed();
    },
  };
}
