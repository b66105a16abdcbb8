/** What a built guide's bytes are made of, and what they may come to: for the benchmark, and for the tests of the demonstration. */
import { readdirSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';

/** A kind of file, by its path from the guide's top. */
export interface OutputPart {
  name: string;
  path: RegExp;
  /** There is one of it for each panel, or a row or more in it. */
  growsWithPanels: boolean;
  /** KB a panel that it may come to in the demonstration: what it was when it was last made lighter, and three in a hundred more. */
  most?: number;
}

/** MB that a guide of a thousand panels may come to. */
export const MOST_OUTPUT = 130;
/** KB that the data of a panel may come to, the fullest calculation page, and the fullest page of a panel's files. */
export const MOST_DATA = 30;
export const MOST_CALCULATION = 70;
export const MOST_FILES_PAGE = 65;

const part = (name: string, path: RegExp, growsWithPanels = true, most?: number): OutputPart => ({
  name,
  path,
  growsWithPanels,
  ...(most !== undefined && { most }),
});

/** What grows with panels, and what it may come to. */
const bound = (name: string, most: number, path: RegExp) => part(name, path, true, most);

/** The heaviest of these pages stand for themselves in the benchmark. */
export const CALCULATION = 'calculation pages';
export const FILES_PAGES = 'pages of meters’ files';

/** In this order: a file counts to the first that its path meets. */
export const OUTPUT_PARTS: readonly OutputPart[] = [
  bound('panels’ pages', 52.1, /^panels\/[^/]+\/index\.html$/),
  bound(CALCULATION, 49.4, /^panels\/[^/]+\/methodology\/index\.html$/),
  part(FILES_PAGES, /^panels\/[^/]+\/files\/index\.html$/),
  part('meters’ files, with what is made of them', /^panels\/[^/]+\/files\//),
  bound('panels.json', 20, /^data\/panels\.json$/),
  bound('panels.csv', 5.1, /^data\/panels\.csv$/),
  bound('table of figures', 11.5, /^data\/tables\/figures\.csv$/),
  part('other tables', /^data\/tables\//),
  bound('files to compare with', 6.1, /^data\/compare\//),
  bound('panels for the bench', 2.55, /^data\/bench\//),
  part('other data files', /^data\//),
  part('search index', /^pagefind\/(?:fragment|index|filter)\/|\.pf_meta$/),
  part('guide, lists and plots', /^(?:index|(?:frame|emitted|plots|panels|compare|plan|changes)\/index)\.html$/),
  part('photos', /^photos\//),
  part('cards', /^cards\//),
  part('the search itself', /^pagefind\//, false),
  part('styles, scripts, typefaces', /^_astro\//, false),
  part('methods', /^methods\//, false),
  part('bench', /^bench\//, false),
  part('all other pages and files', /./, false),
];

/** Bytes of a part, and of its heaviest file. */
export interface PartWeight extends OutputPart {
  bytes: number;
  heaviest: number;
}

/** The weight of every part of a built guide. */
export function outputParts(site: string): PartWeight[] {
  const weights = OUTPUT_PARTS.map((it): PartWeight => ({ ...it, bytes: 0, heaviest: 0 }));
  for (const entry of readdirSync(site, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    const path = relative(site, file).replaceAll('\\', '/');
    const own = weights.find((it) => it.path.test(path));
    if (!own) continue;
    const { size } = statSync(file);
    own.bytes += size;
    own.heaviest = Math.max(own.heaviest, size);
  }
  return weights;
}
