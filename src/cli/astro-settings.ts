import { join, relative, resolve } from 'node:path';
import { productFolder } from '../content/read/product-folder.ts';

/**
 * What Astro is told of places: it works in the guide's folder, by the product's configuration. Its types name the file
 * from that folder.
 */
export function astroSettings(): { root: string; configFile: string } {
  const root = resolve('.');
  return { root, configFile: relative(root, join(productFolder(), 'astro.config.mjs')) };
}
