import { globSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { COLLECTIONS, entryId } from '../schema/collections.ts';
import { productFile, productFolder } from './product-folder.ts';
import { readFrontMatter, type SourceRead } from './read-source.ts';

/** Texts that come with the product, and that a file of the same name in the content folder takes the place of. */
export const TEXTS = ['methods', 'cautions'] as const;
export type TextCollection = (typeof TEXTS)[number];

/** Read once as long as they stay as they are: tests and the development server read content again and again. */
const known = new Map<string, { changed: number; read: SourceRead }>();

/** The folder of the product's texts, which is laid out as a content folder. */
export function textsFolder(): string {
  return join(productFolder(), 'src', 'texts');
}

/** Where the text of a name lies within a content folder. */
export function textName(collection: TextCollection, id: string): string {
  return COLLECTIONS[collection].pattern.replace('*', id);
}

/** The product's own pages of a collection, by name. */
export function productTexts(collection: TextCollection): ReadonlyMap<string, SourceRead> {
  const folder = textsFolder();
  return new Map(
    globSync(COLLECTIONS[collection].pattern, { cwd: folder })
      .toSorted()
      .map((name) => [entryId(name), readOnce(join(folder, name), collection)]),
  );
}

function readOnce(path: string, collection: TextCollection): SourceRead {
  const changed = statSync(path).mtimeMs;
  const before = known.get(path);
  if (before?.changed === changed) return before.read;
  const read = readFrontMatter(path, productFile(path), COLLECTIONS[collection].schema);
  if (read.source) read.source.isProducts = true;
  known.set(path, { changed, read });
  return read;
}

/** The file that each page of a collection is made from: the tester's own where there is one, or else the product's. */
export function textFiles(collection: TextCollection, folder: string): Map<string, string> {
  const { pattern } = COLLECTIONS[collection];
  return new Map(
    [textsFolder(), folder].flatMap((place) =>
      globSync(pattern, { cwd: place }).map((name) => [entryId(name), join(place, name)] as const),
    ),
  );
}
