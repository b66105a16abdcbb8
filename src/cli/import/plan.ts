import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, parse as parsePath, resolve } from 'node:path';
import { editContent } from '../../content/edit/edit-content.ts';
import { fileHash } from '../../content/read/files/file-hash.ts';
import type { FilePlace } from '../../content/read/files/file-kind.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { sessionSchema } from '../../content/schema/session.ts';
import type { FileChange } from '../files/changes.ts';
import type { PanelFile } from '../files/panel-files.ts';
import type { SessionAt } from './target.ts';
import type { Understood } from './understood.ts';

/** A file with the place that it goes to. */
export interface Import {
  file: Understood;
  panel: PanelFile;
  session: SessionAt;
  place: FilePlace;
  /** Its name beside the panel's index: another one where a file of that name is there already. */
  name: string;
  /** It lies there already. */
  isThere: boolean;
  /** What the session says of it. */
  entry: unknown;
}

/**
 * The name that a file gets beside a panel's index: its own, or with a number where another file has that. Nothing that
 * is there is written over.
 *
 * @param taken names that files of the same import get
 * @throws UsageError where the same file is there under another name
 */
export function nameFor(
  { path, name, sha256 }: Understood,
  panel: PanelFile,
  folder: string,
  taken: ReadonlySet<string>,
): Pick<Import, 'name' | 'isThere'> {
  const beside = join(folder, dirname(panel.path));
  if (resolve(path) === resolve(beside, name)) return { name, isThere: true };
  const twin = readdirSync(beside).find(
    (it) => sizeAlike(join(beside, it), path) && fileHash(join(beside, it)) === sha256,
  );
  if (twin === name) return { name, isThere: true };
  if (twin !== undefined) {
    throw new UsageError(`${name} lies beside ${panel.path} already, as ${twin}. Nothing was written.`);
  }
  const { name: stem, ext } = parsePath(name);
  for (let i = 1; ; i++) {
    const own = i === 1 ? name : `${stem}-${i}${ext}`;
    if (!existsSync(join(beside, own)) && !taken.has(own)) return { name: own, isThere: false };
  }
}

function sizeAlike(one: string, other: string): boolean {
  try {
    return statSync(one).isFile() && statSync(one).size === statSync(other).size;
  } catch {
    return false;
  }
}

/** The changes of all imports together: each panel's file edited, and files put beside it. */
export function planImports(imports: readonly Import[]): FileChange[] {
  const texts = new Map<string, { before: string; after: string }>();
  const copies: FileChange[] = [];
  for (const { panel, session, place, entry, file, name, isThere } of imports) {
    const { path, text } = panel;
    const before = texts.get(path)?.before ?? text;
    const after = withEntry(texts.get(path)?.after ?? text, path, session.index, place, entry);
    texts.set(path, { before, after });
    if (isThere) continue;
    copies.push({
      path: `${path.slice(0, path.lastIndexOf('/') + 1)}${name}`,
      before: undefined,
      after: { copyOf: file.path, sha256: file.sha256 },
    });
  }
  return [...copies, ...[...texts].map(([path, it]) => ({ path, ...it }))];
}

const ORDER = Object.keys(sessionSchema.shape);

/** A panel's text with a file named at a place of a session, whose blocks are begun where they are not there. */
function withEntry(text: string, file: string, index: number, { path }: FilePlace, entry: unknown): string {
  const at = ['sessions', index] as const;
  if (path.at(-1) === '*') {
    return editContent(text, file, [{ do: 'insert', list: [...at, ...path.slice(0, -1)], item: entry, order: ORDER }]);
  }
  const [top = '', ...inner] = path;
  const add = (field: readonly string[], value: unknown) =>
    editContent(text, file, [{ do: 'add', field: [...at, ...field], value, order: ORDER }]);
  if (inner.length === 0) return add([top], entry);
  try {
    return add(path, entry);
  } catch {
    // The block is not there yet.
    return add(
      [top],
      inner.reduceRight<unknown>((value, key) => ({ [key]: value }), entry),
    );
  }
}
