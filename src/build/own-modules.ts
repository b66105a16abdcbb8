import { dirname, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Plugin } from 'vite';

/**
 * Leaves the product's own modules out of the program that Astro bundles to render pages: a build has loaded most of them
 * already, and the pages take the very same ones. To bundle and load them all once more was a third of a build.
 *
 * @param source the folder of the code
 */
export function ownModules(source: string): Plugin {
  return {
    name: 'panel-ledger:own-modules',
    apply: 'build',
    enforce: 'pre',
    // What readers' browsers get is bundled whole.
    applyToEnvironment: ({ config }) => config.consumer === 'server',
    resolveId: {
      filter: { id: /^\.{1,2}\/.*\.ts$/ },
      handler(id, importer) {
        if (!importer) return null;
        const file = resolve(dirname(importer.replace(/\?.*$/, '')), id);
        if (!file.startsWith(source + sep)) return null;
        return { id: pathToFileURL(file).href, external: true };
      },
    },
  };
}
