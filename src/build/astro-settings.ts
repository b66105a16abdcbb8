import { join, relative } from 'node:path';
import { productFolder } from '../content/read/product-folder.ts';
import { astroRoot } from './astro-root.ts';

/** What Astro is told of places: the folder that it works in, and the product's configuration, named from there. */
export function astroSettings(): { root: string; configFile: string } {
  const root = astroRoot();
  return { root, configFile: relative(root, join(productFolder(), 'astro.config.mjs')) };
}
