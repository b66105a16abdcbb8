import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { SLUG } from '../schema/fields.ts';
import type { Problem } from '../schema/problem.ts';

/**
 * Files that look like content but lie where nothing reads them; without a word they would be lost. Raw files
 * beside a panel's index are welcome.
 */
export function strayFiles(folder: string, shownAs: string): Problem[] {
  const problems: Problem[] = [];
  const stray = (path: string, found: string, wanted: string) =>
    problems.push({ file: `${shownAs}/${path}`, field: '', found, wanted });

  for (const kind of ['instruments', 'makers', 'methods', 'panels', 'standards']) {
    for (const item of list(join(folder, kind))) {
      const path = `${kind}/${item.name}`;
      if (isSystems(item.name)) continue;
      if (kind === 'panels') {
        if (!item.isDirectory()) stray(path, 'a file', 'a folder for each panel, with index.md in it');
        else if (!SLUG.test(item.name)) {
          stray(
            path,
            `the folder name "${item.name}"`,
            'lower-case letters, digits and single hyphens: it is part of the address',
          );
        } else if (!list(join(folder, path)).some((it) => /^index\.mdx?$/.test(it.name))) {
          stray(path, 'a folder without index.md', 'index.md or index.mdx');
        }
        continue;
      }
      const ending = kind === 'methods' ? '.mdx' : '.yaml';
      if (!item.name.endsWith(ending)) stray(path, `"${item.name}"`, `files that end in ${ending}`);
    }
  }
  const folders = ['instruments', 'makers', 'methods', 'others', 'panels', 'standards'];
  const known = new Set(['guide.yaml', 'corrections.yaml', 'cautions.mdx', 'addresses.txt', ...folders]);
  for (const item of list(folder)) {
    if (folders.includes(item.name) && item.isFile()) stray(item.name, 'a file', 'a folder');
    if (known.has(item.name) || isSystems(item.name)) continue;
    stray(item.name, `"${item.name}"`, `one of: ${[...known].join(', ')}`);
  }
  return problems;
}

/** What systems put into folders by themselves, and nobody sees there. */
const isSystems = (name: string) => name.startsWith('.') || /^(?:thumbs\.db|desktop\.ini)$/i.test(name);

function list(folder: string) {
  try {
    return readdirSync(folder, { withFileTypes: true }).toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
  } catch {
    // A folder that is not there holds nothing; that something is missing is said by the rules.
    return [];
  }
}
