/// <reference types="wicg-file-system-access" />
/**
 * Writes a panel's file and its pictures straight into the guide's content folder, where the browser can. What has
 * changed there since it was read is never written over.
 */

/** A content folder, or the folder that has one. */
export interface ContentFolder {
  /** Its name, as the tester chose it. */
  readonly name: string;
  readonly panels: FileSystemDirectoryHandle;
  /** What was chosen; a browser's database can keep it. */
  readonly chosen: FileSystemDirectoryHandle;
}

/** The file of a panel as it stands in the folder. */
export interface PanelFile {
  readonly name: 'index.md' | 'index.mdx';
  readonly text: string;
  /** Other files beside it, such as pictures. */
  readonly beside: readonly string[];
}

/**
 * Why nothing was written, or no folder is there: `not-there` the browser can't write into folders: offer a download,
 * `none-chosen`, `refused` the tester or the browser does not allow it, `no-guide` it is no content folder, `changed` the
 * file is another one than the one that was read, `photo-there` another picture has that name, `failed` anything else.
 */
export type FolderFault = 'not-there' | 'none-chosen' | 'refused' | 'no-guide' | 'changed' | 'photo-there' | 'failed';

export class FolderError extends Error {
  readonly fault: FolderFault;
  /** With `changed`: the text that stands there now, undefined where there is no file any more. With `photo-there`: its name. */
  readonly found: string | undefined;
  constructor(fault: FolderFault, { found, cause }: { found?: string | undefined; cause?: unknown } = {}) {
    super(cause instanceof Error ? cause.message : `content folder: ${fault}`, { cause });
    this.fault = fault;
    this.found = found;
  }
}

/** Whether this browser can write into a folder at all. */
export const canSaveFolder = (): boolean => 'showDirectoryPicker' in globalThis;

/**
 * Asks the tester for the content folder; to be called from a press.
 *
 * @throws FolderError
 */
export async function chooseFolder(): Promise<ContentFolder> {
  if (!canSaveFolder()) throw new FolderError('not-there');
  return await inTerms(async () =>
    contentFolderIn(await showDirectoryPicker({ id: 'panel-ledger', mode: 'readwrite' })),
  );
}

/**
 * A folder that was chosen before; to be called from a press, since the browser may ask the tester once more.
 *
 * @throws FolderError
 */
export async function sameFolder(chosen: FileSystemDirectoryHandle): Promise<ContentFolder> {
  return await inTerms(async () => {
    const asked = { mode: 'readwrite' } as const;
    const isAllowed =
      (await chosen.queryPermission(asked)) === 'granted' || (await chosen.requestPermission(asked)) === 'granted';
    if (!isAllowed) throw new FolderError('refused');
    return await contentFolderIn(chosen);
  });
}

/**
 * The content folder in a folder: itself, or its `content/`.
 *
 * @throws FolderError `no-guide`
 */
export async function contentFolderIn(chosen: FileSystemDirectoryHandle): Promise<ContentFolder> {
  const inside = await found(chosen.getDirectoryHandle('content'));
  for (const folder of [chosen, inside]) {
    if (!folder || !(await found(folder.getFileHandle('guide.yaml')))) continue;
    const panels = await inTerms(() => folder.getDirectoryHandle('panels', { create: true }));
    return { name: folder === chosen ? chosen.name : `${chosen.name}/content`, panels, chosen };
  }
  throw new FolderError('no-guide');
}

const NAMES = ['index.md', 'index.mdx'] as const;

/** Reads the file of a panel; undefined where there is none. */
export async function readPanelFile({ panels }: ContentFolder, slug: string): Promise<PanelFile | undefined> {
  return await inTerms(async () => {
    const folder = await found(panels.getDirectoryHandle(slug));
    if (!folder) return undefined;
    for (const name of NAMES) {
      const text = await textOf(folder, name);
      if (text === undefined) continue;
      const beside: string[] = [];
      for await (const it of folder.keys()) if (it !== name) beside.push(it);
      return { name, text, beside: beside.toSorted() };
    }
    return undefined;
  });
}

/** What is to be written for a panel. */
export interface PanelToSave {
  readonly slug: string;
  readonly text: string;
  /** The text on which it was made; undefined for a new panel. Anything else in the folder is left as it is. */
  readonly before: string | undefined;
  readonly photos: readonly { readonly file: string; readonly picture: Blob }[];
}

/**
 * Writes pictures first and the file that names them last; each takes its place whole, or not at all. A picture that
 * is there already, the same to the byte, is left.
 *
 * @returns paths that were written, from the content folder
 * @throws FolderError `changed` or `photo-there` before anything is written
 */
export async function savePanel(folder: ContentFolder, { slug, text, before, photos }: PanelToSave): Promise<string[]> {
  const now = await readPanelFile(folder, slug);
  if (now?.text === text && photos.length === 0) return [];
  if (now?.text !== before && now?.text !== text) throw new FolderError('changed', { found: now?.text });
  return await inTerms(async () => {
    const panel = await folder.panels.getDirectoryHandle(slug, { create: true });
    const missing: (typeof photos)[number][] = [];
    for (const it of photos) {
      const there = await found(panel.getFileHandle(it.file));
      if (!there) missing.push(it);
      else if (!(await isSame(await there.getFile(), it.picture)))
        throw new FolderError('photo-there', { found: it.file });
    }
    const written: string[] = [];
    for (const { file, picture } of missing) {
      await write(panel, file, picture);
      written.push(`panels/${slug}/${file}`);
    }
    const name = now?.name ?? NAMES[0];
    if (now?.text !== text) {
      // Pictures take a while; somebody may have saved the file meanwhile.
      const last = await textOf(panel, name);
      if (last !== now?.text) throw new FolderError('changed', { found: last });
      await write(panel, name, text);
      written.push(`panels/${slug}/${name}`);
    }
    return written;
  });
}

/** Hands a file to the browser's downloads, where no folder can be written into. */
export function download(name: string, content: string | Blob): void {
  const blob = typeof content === 'string' ? new Blob([content], { type: 'text/markdown;charset=utf-8' }) : content;
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has to have begun before the address is taken back.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

async function write(folder: FileSystemDirectoryHandle, name: string, content: string | Blob): Promise<void> {
  const file = await folder.getFileHandle(name, { create: true });
  // What is written goes to a file beside it, which takes its place when it is closed.
  const target = await file.createWritable();
  try {
    await target.write(content);
  } catch (error) {
    await target.abort().catch(() => undefined);
    throw error;
  }
  await target.close();
}

async function textOf(folder: FileSystemDirectoryHandle, name: string): Promise<string | undefined> {
  const handle = await found(folder.getFileHandle(name));
  return handle && (await (await handle.getFile()).text());
}

async function isSame(one: Blob, other: Blob): Promise<boolean> {
  if (one.size !== other.size) return false;
  const [a, b] = await Promise.all([one.arrayBuffer(), other.arrayBuffer()]);
  const second = new Uint8Array(b);
  return new Uint8Array(a).every((byte, i) => byte === second[i]);
}

/** What is not there is no error. */
async function found<T>(handle: Promise<T>): Promise<T | undefined> {
  try {
    return await handle;
  } catch (error) {
    if (error instanceof DOMException && ['NotFoundError', 'TypeMismatchError'].includes(error.name)) return undefined;
    throw error;
  }
}

async function inTerms<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof FolderError) throw error;
    const faults: Record<string, FolderFault> = {
      AbortError: 'none-chosen',
      NotAllowedError: 'refused',
      SecurityError: 'refused',
      NoModificationAllowedError: 'refused',
    };
    throw new FolderError(faults[error instanceof DOMException ? error.name : ''] ?? 'failed', { cause: error });
  }
}
