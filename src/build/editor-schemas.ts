import { existsSync, globSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { z } from 'zod';
import { productFolder } from '../content/read/product-folder.ts';
import { COLLECTIONS } from '../content/schema/collections.ts';

/** The first line of a YAML file that tells an editor its schema. */
const POINTER = /^#\s*yaml-language-server:\s*\$schema=(\S+)/m;

/**
 * The folder that the files of a content folder point editors to for their schemas; undefined where guide.yaml points
 * nowhere, or to the web.
 */
export function schemaFolder(content: string): string | undefined {
  const guide = join(content, 'guide.yaml');
  if (!existsSync(guide)) return undefined;
  const [, pointer] = POINTER.exec(readFileSync(guide, 'utf8')) ?? [];
  if (!pointer?.endsWith('/guide.schema.json') || /^[a-z]+:\/\//i.test(pointer)) return undefined;
  return dirname(resolve(content, pointer));
}

/**
 * Writes JSON Schemas of all kinds of content where the files point to, and which file is of which kind, as editors with
 * Astro's extension ask for front matter. In a checkout of the product Astro does it itself.
 *
 * @returns the folder; undefined where nothing was to be written
 */
export function writeEditorSchemas(content: string): string | undefined {
  const folder = schemaFolder(content);
  if (folder === undefined || folder === join(productFolder(), '.astro', 'collections')) return undefined;
  mkdirSync(folder, { recursive: true });
  for (const [name, { schema }] of Object.entries(COLLECTIONS)) {
    put(join(folder, `${name}.schema.json`), z.toJSONSchema(schema, { unrepresentable: 'any', io: 'input' }));
  }
  put(join(folder, 'collections.json'), {
    collections: Object.keys(COLLECTIONS).map((name) => ({ hasSchema: true, name })),
    // Editors ask by the address in small letters.
    entries: Object.fromEntries(
      Object.entries(COLLECTIONS).flatMap(([name, { pattern }]) =>
        globSync(pattern, { cwd: content })
          .map((path) => pathToFileURL(resolve(content, path.split(sep).join('/'))).href.toLowerCase())
          .toSorted()
          .map((address) => [address, name]),
      ),
    ),
  });
  return folder;
}

/** The same beside other work, which does not fail where these can't be written. */
export function tryEditorSchemas(content: string): void {
  try {
    writeEditorSchemas(content);
  } catch {
    // The `schema` command says why.
  }
}

/** Writes what has changed: an editor reads a schema anew when its file is touched. */
function put(file: string, data: object): void {
  const text = JSON.stringify(data, null, 2);
  if (!existsSync(file) || readFileSync(file, 'utf8') !== text) writeFileSync(file, text);
}
