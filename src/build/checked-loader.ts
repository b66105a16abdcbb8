import { relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Loader } from 'astro/loaders';
import type { CollectionName } from '../content/schema/collections.ts';
import { loadLedger } from '../ledger/load-ledger.ts';

/**
 * The entries of a collection for a build, from the content that has been read and checked already: Astro's own loader
 * would read, parse and validate every file once more, and pass all that stands in it through its store. Entries hold
 * the body alone; everything else comes from the ledger.
 */
export function checkedLoader(name: CollectionName): Loader {
  return {
    name: 'checked-content',
    load: async ({ store, renderMarkdown, config }) => {
      const root = fileURLToPath(config.root);
      for (const { id, source } of entriesOf(name)) {
        const path = resolve(source.file);
        const entry = { id, data: {}, filePath: relative(root, path).split(sep).join('/') };
        // What is compiled, not rendered, is the bundler's, which reads the file itself.
        if (path.endsWith('.mdx')) store.set({ ...entry, deferredRender: true });
        else if (path.endsWith('.md')) {
          // With an empty front matter of its own: a body may begin with a rule, which looks like one.
          const rendered = await renderMarkdown(`---\n---\n${source.body}`, { fileURL: pathToFileURL(path) });
          store.set({ ...entry, rendered, assetImports: rendered.metadata?.imagePaths });
        } else store.set(entry);
      }
    },
  };
}

function entriesOf(name: CollectionName) {
  const { content } = loadLedger();
  return name === 'guide' || name === 'cautions' ? [content[name]] : [...content[name].values()];
}
