import { globSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** A kind of page, and the heaviest page of that kind in a built site. */
export interface PageType {
  name: string;
  /** Its address from the site's top. */
  path: string;
}

/** Where the pages of each kind lie in a built site. Pages that lead on or stand for what is gone come last. */
const TYPES: ReadonlyArray<readonly [name: string, files: string, of?: (html: string) => boolean]> = [
  ['guide', 'index.html'],
  ['panel', 'panels/*/index.html', isItself],
  ['calculation', 'panels/*/methodology/index.html', isItself],
  ['files', 'panels/*/files/index.html', isItself],
  ['panels', 'panels/index.html'],
  ['compare', 'compare/index.html'],
  ['plan', 'plan/index.html'],
  ['plots', 'plots/index.html'],
  ['methods', 'methods/index.html'],
  ['method', 'methods/*/index.html', isItself],
  ['instruments', 'instruments/index.html'],
  ['cautions', 'cautions/index.html'],
  ['search', 'search/index.html'],
  ['emitted', 'emitted/index.html'],
  ['frame', 'frame/index.html'],
  ['changes', 'changes/index.html'],
  ['data', 'data/index.html'],
  ['agreement', 'agreement/index.html'],
  ['cards', 'cards/index.html'],
  ['card', 'cards/*/price-per-watt.html'],
  ['bench', 'bench/index.html'],
  ['bench sheet', 'bench/sheet/index.html'],
  ['not found', '404.html'],
  ['moved', 'panels/*/index.html', isMoved],
  ['withdrawn', 'panels/*/index.html', isWithdrawn],
];

/** What names stand in the list of the kinds of pages. */
export const PAGE_TYPES = TYPES.map(([name]) => name);

/** The heaviest page of each kind that a built site has. */
export function paintPages(site: string): PageType[] {
  return TYPES.flatMap(([name, files, isOne = () => true]) => {
    const [heaviest] = globSync(files, { cwd: site })
      .filter((it) => isOne(readFileSync(join(site, it), 'utf8')))
      .map((file) => ({ file, size: statSync(join(site, file)).size }))
      .sort((a, b) => b.size - a.size || (a.file < b.file ? -1 : 1));
    if (!heaviest) return [];
    return [{ name, path: `/${heaviest.file.replaceAll('\\', '/').replace(/(^|\/)index\.html$/, '$1')}` }];
  });
}

function isMoved(html: string): boolean {
  return /<meta http-equiv="refresh"/.test(html);
}

function isWithdrawn(html: string): boolean {
  return /<title>Withdrawn: /.test(html);
}

function isItself(html: string): boolean {
  return !isMoved(html) && !isWithdrawn(html);
}
