import { globSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { builtPage } from './built-page.ts';
import type { Line, Section } from './report.ts';

/** Bytes; a KB is 1,000 of them. */
interface Weight {
  plain: number;
  gzip: number;
  brotli: number;
}

const KB = 1000;
const MOST_PAGE = 30;
const MOST_FIRST_VIEW = 40;
const MOST_TYPE = 85;
const MOST_SCRIPT = 15;

/** How heavy the guide's first view is, and its scripts; each file compressed by itself, as hosts send them. */
export function pageWeight(site: string, panels: number): Section {
  const guide = builtPage(site, 'index.html');
  const search = builtPage(site, 'search/index.html');
  const file = (address: string) => readFileSync(join(site, address));
  const html = weigh([Buffer.from(guide.html)]);
  const css = weigh(guide.styles.map(file));
  const own = weigh([...new Set([...guide.scripts, ...search.scripts])].map(file));
  if (css.plain === 0 || own.plain === 0) throw new Error('the built guide has no style sheet or no script');
  return {
    title: `First view of the guide, ${panels} panels`,
    lines: [
      judged('HTML and CSS', add(html, css), MOST_FIRST_VIEW),
      judged('  HTML with its picture', html, MOST_PAGE),
      line('  CSS', css),
      judged('scripts of the guide and of search', own, MOST_SCRIPT),
      typeLine(site),
      line('  the index’s reader, loaded by a search', weigh([file('pagefind/pagefind.js')])),
    ],
  };
}

/** The typefaces, which are compressed by themselves. */
function typeLine(site: string): Line {
  const bytes = globSync('_astro/*.woff2', { cwd: site }).reduce((sum, it) => sum + statSync(join(site, it)).size, 0);
  return {
    what: 'typefaces',
    measured: kilobytes(bytes),
    ratio: bytes / KB / MOST_TYPE,
    budget: `${MOST_TYPE} KB`,
    isWithin: bytes <= MOST_TYPE * KB,
  };
}

function weigh(files: readonly Buffer[]): Weight {
  const total = (size: (it: Buffer) => number) => files.reduce((sum, it) => sum + size(it), 0);
  return {
    plain: total((it) => it.length),
    gzip: total((it) => gzipSync(it, { level: 9 }).length),
    brotli: total((it) => brotliCompressSync(it).length),
  };
}

function add(a: Weight, b: Weight): Weight {
  return { plain: a.plain + b.plain, gzip: a.gzip + b.gzip, brotli: a.brotli + b.brotli };
}

const kilobytes = (bytes: number) => `${(bytes / KB).toFixed(1)} KB`;

function line(what: string, { plain, gzip, brotli }: Weight): Line {
  return {
    what,
    measured: `${kilobytes(gzip)} gzip`,
    against: `${kilobytes(brotli)} brotli, ${kilobytes(plain)} plain`,
  };
}

/** By gzip, the heavier of the two: every host sends that much at least. */
function judged(what: string, weight: Weight, most: number): Line {
  return {
    ...line(what, weight),
    ratio: weight.gzip / KB / most,
    budget: `${most} KB`,
    isWithin: weight.gzip <= most * KB,
  };
}
