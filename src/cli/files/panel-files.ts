import { globSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { parse } from 'yaml';
import { openContent } from '../../content/edit/content-text.ts';
import { isBlock } from '../../content/schema/block.ts';
import { COLLECTIONS, entryId } from '../../content/schema/collections.ts';
import { readText } from './changes.ts';

/** A panel's file as it lies on the disk, whether or not there is anything wrong elsewhere. */
export interface PanelFile {
  slug: string;
  /** In the content folder, with forward slashes. */
  path: string;
  text: string;
  /** Maker and model, as pages name it; the folder’s name where one of them can’t be read. */
  name: string;
  model: string | undefined;
  status: unknown;
}

/**
 * All panels of a content folder, by name. Other than for a build, a fault in one file keeps nobody from the others.
 *
 * @throws EditError where a file can't be read as text
 */
export function panelFiles(folder: string): PanelFile[] {
  const makers = new Map(
    globSync('makers/*.yaml', { cwd: folder }).map((path) => [
      entryId(path.split(sep).join('/')),
      field(
        readYaml(() => readFileSync(join(folder, path), 'utf8')),
        'name',
      ),
    ]),
  );
  return globSync(COLLECTIONS.panels.pattern, { cwd: folder })
    .map((found): PanelFile => {
      const path = found.split(sep).join('/');
      const slug = entryId(path);
      const text = readText(folder, path);
      const data = readYaml(() => openContent(text, path).yaml);
      const model = field(data, 'model');
      const maker = makers.get(field(data, 'maker') ?? '');
      return {
        slug,
        path,
        text,
        name: maker && model ? `${maker} ${model}` : slug,
        model,
        status: isBlock(data) && data.status,
      };
    })
    .toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
}

/** Data of YAML; undefined where it has a fault, of which an edit of that file will tell. */
function readYaml(text: () => string): unknown {
  try {
    return parse(text(), { logLevel: 'silent' });
  } catch {
    return undefined;
  }
}

function field(data: unknown, key: string): string | undefined {
  const value = isBlock(data) ? data[key] : undefined;
  return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined;
}
