/** What a built guide's bytes are made of, for the benchmark and for the test that holds the demonstration to a bound. */
import { readdirSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';

/** A kind of file, by its path from the guide's top. */
export interface OutputPart {
  name: string;
  path: RegExp;
  /** There is one of it for each panel, or a row or more in it. */
  growsWithPanels: boolean;
}

const part = (name: string, path: RegExp, growsWithPanels = true): OutputPart => ({ name, path, growsWithPanels });

/** The heaviest of these pages stand for themselves in the benchmark. */
export const CALCULATION = 'calculation pages';
export const FILES_PAGES = 'pages of meters’ files';

/** In this order: a file counts to the first that its path meets. */
export const OUTPUT_PARTS: readonly OutputPart[] = [
  part('panels’ pages', /^panels\/[^/]+\/index\.html$/),
  part(CALCULATION, /^panels\/[^/]+\/methodology\/index\.html$/),
  part(FILES_PAGES, /^panels\/[^/]+\/files\/index\.html$/),
  part('meters’ files, with what is made of them', /^panels\/[^/]+\/files\//),
  part('panels.json', /^data\/panels\.json$/),
  part('panels.csv', /^data\/panels\.csv$/),
  part('table of figures', /^data\/tables\/figures\.csv$/),
  part('other tables', /^data\/tables\//),
  part('files to compare with', /^data\/compare\//),
  part('panels for the bench', /^data\/bench\//),
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
