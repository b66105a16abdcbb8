import { readdirSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Line, Section } from './report.ts';

const MB = 1_000_000;
const KB = 1000;
/** MB, of a thousand panels. */
const MOST_OUTPUT = 130;
const OUTPUT_PANELS = 1000;
/** KB a panel. */
const MOST_DATA = 30;
/** KB, of the heaviest. */
const MOST_CALCULATION = 70;
const CALCULATION = 'calculation pages';
/** KB, of the fullest page of a panel's files. */
const MOST_FILES_PAGE = 62;
const FILES_PAGES = 'pages of files';

/** What the output is made of, by the paths of its files. */
const PARTS: ReadonlyArray<readonly [name: string, path: RegExp]> = [
  ['panels’ pages', /^panels\/[^/]+\/index\.html$/],
  [CALCULATION, /^panels\/[^/]+\/methodology\/index\.html$/],
  [FILES_PAGES, /^panels\/[^/]+\/files\/index\.html$/],
  ['files from the bench, with what is made of them', /^panels\/[^/]+\/files\//],
  ['panels.json', /^data\/panels\.json$/],
  ['panels.csv', /^data\/panels\.csv$/],
  ['files to compare with', /^data\/compare\//],
  ['other data files', /^data\//],
  ['search index', /^pagefind\//],
  ['styles, scripts, typefaces, pictures', /^_astro\//],
  ['all other pages', /./],
];

/** How large the whole output is, and what it is made of. */
export function outputWeight(site: string, panels: number): Section {
  const sizes = new Map<string, number>();
  const heaviest = { [CALCULATION]: 0, [FILES_PAGES]: 0 };
  for (const entry of readdirSync(site, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    const [part = ''] = PARTS.find(([, path]) => path.test(relative(site, file).replaceAll('\\', '/'))) ?? [];
    const { size } = statSync(file);
    sizes.set(part, (sizes.get(part) ?? 0) + size);
    if (part === CALCULATION || part === FILES_PAGES) heaviest[part] = Math.max(heaviest[part], size / KB);
  }
  const total = [...sizes.values()].reduce((sum, it) => sum + it, 0);
  const most = (MOST_OUTPUT * panels) / OUTPUT_PANELS;
  const data = (sizes.get('panels.json') ?? 0) / KB / panels;
  const lines: Line[] = PARTS.map(([name]) => ({
    what: `  ${name}`,
    measured: `${((sizes.get(name) ?? 0) / MB).toFixed(1)} MB`,
    against: `${((sizes.get(name) ?? 0) / KB / panels).toFixed(1)} KB a panel`,
  }));
  return {
    title: `Output, ${panels} panels`,
    lines: [
      {
        what: 'whole output',
        measured: `${(total / MB).toFixed(1)} MB`,
        against: `${(total / KB / panels).toFixed(1)} KB a panel`,
        ratio: total / MB / most,
        // A small guide has what all guides have in common too.
        ...(panels >= OUTPUT_PANELS && { budget: `${most} MB`, isWithin: total / MB <= most }),
      },
      ...lines,
      {
        what: 'panels.json',
        measured: `${data.toFixed(1)} KB a panel`,
        ratio: data / MOST_DATA,
        budget: `${MOST_DATA} KB`,
        isWithin: data <= MOST_DATA,
      },
      heaviestLine('calculation page', heaviest[CALCULATION], MOST_CALCULATION),
      ...(heaviest[FILES_PAGES] > 0 ? [heaviestLine('page of files', heaviest[FILES_PAGES], MOST_FILES_PAGE)] : []),
    ],
  };
}

function heaviestLine(what: string, heaviest: number, most: number): Line {
  return {
    what: `the heaviest ${what}`,
    measured: `${heaviest.toFixed(1)} KB`,
    ratio: heaviest / most,
    budget: `${most} KB`,
    isWithin: heaviest <= most,
  };
}
