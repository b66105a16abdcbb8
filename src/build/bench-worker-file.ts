import { createHash } from 'node:crypto';
import { existsSync, globSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { WORKER } from '../site/bench/browser/bench-offline.ts';
import { benchWorker, type KeptFiles } from '../site/bench/browser/bench-worker.ts';

/** Files whose text may name others that are needed with them. */
const NAMES_OTHERS = /\.(html|js|css|json)$/;

/** Kinds of files that a page, a script or a list of the bench loads. Other pages of the site are only led to. */
const LOADED = String.raw`[^"'\`\s()<>\\]+\.(?:js|css|json|woff2|svg|png|webp|wasm|md|mdx|yaml|txt)`;
const QUOTED = new RegExp(String.raw`["'\`](${LOADED})["'\`]|url\(\s*["']?(${LOADED})["']?\s*\)`, 'g');
/** Of a page, what it loads. */
const LOADING_TAGS = /<(?:script|link|img|source)\b[^>]*>|\bdata-load="[^"]*"/g;

/**
 * Writes the worker of the bench's pages into a built site: what it has to keep is read from the pages themselves, from
 * whatever their scripts and styles name, and from `data/bench.json`. Without such pages there is none.
 *
 * @param folder of the site, with all else in it
 */
export function writeBenchWorker(folder: string): void {
  const kept = keptFiles(folder);
  if (!kept) return;
  const file = join(folder, WORKER);
  writeFileSync(file, `// What it keeps is of this one build.\n(${benchWorker})(self, ${JSON.stringify(kept)});\n`);
}

/** What the worker of a built site keeps; undefined for a site without pages of the bench. */
export function keptFiles(folder: string): KeptFiles | undefined {
  const pages = globSync('bench/**/index.html', { cwd: folder }).map(
    (it) =>
      `/${it
        .split(sep)
        .join('/')
        .replace(/index\.html$/, '')}`,
  );
  if (pages.length === 0) return undefined;
  const files = new Map<string, string>();
  const waiting = pages.toSorted();
  for (let address = waiting.pop(); address !== undefined; address = waiting.pop()) {
    // The worker keeps all but itself: whoever names it asks for the one of today.
    if (files.has(address) || address === WORKER) continue;
    const file = fileOf(folder, address);
    const bytes = readFileSync(file);
    files.set(address, createHash('sha256').update(bytes).digest('hex'));
    if (!NAMES_OTHERS.test(file)) continue;
    waiting.push(...loadedBy(folder, address, bytes.toString('utf8'), file.endsWith('.html')));
  }
  const sorted = Object.fromEntries([...files].toSorted(([a], [b]) => (a < b ? -1 : 1)));
  const version = createHash('sha256').update(JSON.stringify(sorted)).digest('hex').slice(0, 12);
  return { version, site: siteVersion(folder) ?? version, files: sorted };
}

const fileOf = (folder: string, address: string) => join(folder, address, address.endsWith('/') ? 'index.html' : '');

/** Addresses of files that another one names and that the site has. */
function loadedBy(folder: string, address: string, text: string, isPage: boolean): string[] {
  const where = isPage ? (text.match(LOADING_TAGS) ?? []).join('\n') : text;
  return [...where.matchAll(QUOTED)].flatMap(([, quoted, styled]) => {
    const name = quoted ?? styled ?? '';
    // The bundler's lists count from the site's top.
    const found = [name, `/${name}`]
      .map((it) => new URL(it, `https://site.invalid${address}`))
      .find(({ hostname, pathname }) => hostname === 'site.invalid' && isFile(fileOf(folder, pathname)));
    return found ? [found.pathname] : [];
  });
}

const isFile = (file: string) => existsSync(file) && statSync(file).isFile();

/** The version of the site that the bench's pages show. */
function siteVersion(folder: string): string | undefined {
  const file = join(folder, 'data/bench.json');
  return existsSync(file) ? String(JSON.parse(readFileSync(file, 'utf8')).version) : undefined;
}
