import {
  cpSync,
  existsSync,
  globSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, parse, resolve, sep } from 'node:path';
import { productFolder } from '../content/read/product-folder.ts';

/** Where Astro and what it needs are installed. */
export function packagesFolder(): string {
  const require = createRequire(join(productFolder(), 'package.json'));
  return dirname(dirname(require.resolve('astro/package.json')));
}

/**
 * The folder that Astro takes for its project's, and looks for packages from: the product's checkout where a guide is kept
 * there. Elsewhere it is one among the guide's builds, so that what Astro keeps to itself lies in the guide's folder; and
 * since a guide beside the product has no packages of its own, they are linked into it.
 */
export function astroRoot(): string {
  if (resolve('.') === productFolder()) return productFolder();
  const root = resolve('.build', 'astro');
  mkdirSync(root, { recursive: true });
  // Above what is built as well, which runs to make the pages.
  const link = resolve('.build', 'node_modules');
  const packages = packagesFolder();
  // A link to what has been moved leads nowhere, and would count as missing.
  if (lstatSync(link, { throwIfNoEntry: false })?.isSymbolicLink()) rmSync(link);
  if (!isFoundFrom(root, packages) && !existsSync(link)) symlinkSync(packages, link, 'junction');
  return root;
}

/**
 * The code that Astro makes pages from. It takes a file for one of the project's own where the two lie below one folder
 * other than the disk's top; for a guide that shares not even that with the product, the code is copied beside its root.
 */
export function sourceFolder(): string {
  const [product, root] = [join(productFolder(), 'src'), astroRoot()];
  if (topOf(product) === topOf(root)) return product;
  const copy = join(root, 'src');
  const paths = globSync('**/*', { cwd: product }).filter((it) => statSync(join(product, it)).isFile());
  for (const path of globSync('**/*', { cwd: copy })) {
    if (!existsSync(join(product, path))) rmSync(join(copy, path), { recursive: true, force: true });
  }
  for (const path of paths) {
    const [from, to] = [join(product, path), join(copy, path)];
    // What has not changed is left alone: a server may be at work with it.
    if (existsSync(to) && readFileSync(to).equals(readFileSync(from))) continue;
    mkdirSync(dirname(to), { recursive: true });
    cpSync(from, to);
  }
  return copy;
}

/** The folder right below the disk's top that a path lies in. */
const topOf = (path: string) => path.slice(parse(path).root.length).split(sep)[0];

/** True where whoever looks for packages upwards from a folder comes by this one. */
function isFoundFrom(folder: string, packages: string): boolean {
  for (let at = folder; ; at = dirname(at)) {
    if (join(at, 'node_modules') === packages) return true;
    if (at === dirname(at)) return false;
  }
}
