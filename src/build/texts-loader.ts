import { relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Loader } from 'astro/loaders';
import { type TextCollection, textFiles, textsFolder } from '../content/read/product-texts.ts';
import { contentFolder } from '../ledger/load-ledger.ts';

/**
 * The pages of methods or of cautions: the product's, but those whose place a file of the tester's takes. Entries hold
 * the body's place alone, which the bundler compiles; everything else comes from the ledger. While the tester writes,
 * a file that comes or goes changes which of the two stands.
 */
export function textsLoader(collection: TextCollection): Loader {
  return {
    name: `texts-${collection}`,
    load: async ({ store, config, watcher }) => {
      const root = fileURLToPath(config.root);
      const fill = () => {
        store.clear();
        for (const [id, path] of textFiles(collection, contentFolder())) {
          const filePath = relative(root, resolve(path)).split(sep).join('/');
          store.set({ id, data: {}, filePath, deferredRender: true });
        }
      };
      fill();
      const folders = [textsFolder(), resolve(contentFolder())];
      const isOne = (path: string) => path.endsWith('.mdx') && folders.some((it) => resolve(path).startsWith(it + sep));
      for (const event of ['add', 'unlink'] as const) watcher?.on(event, (path) => isOne(path) && fill());
      watcher?.add(textsFolder());
    },
  };
}
