import { relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Loader } from 'astro/loaders';
import { loadLedger } from '../ledger/load-ledger.ts';

/**
 * The testers' notes for a build, from the content that has been read and checked already: Astro's own loader would
 * read, parse and validate every panel once more, and pass thousands of readings through its store. Entries hold
 * the body alone; everything else of a panel comes from the ledger.
 */
export function notesLoader(): Loader {
  return {
    name: 'checked-notes',
    load: async ({ store, renderMarkdown, config }) => {
      const root = fileURLToPath(config.root);
      for (const { id, source } of loadLedger().content.panels.values()) {
        const path = resolve(source.path);
        const entry = { id, data: {}, filePath: relative(root, path).split(sep).join('/') };
        // What is compiled, not rendered, is the bundler's, which reads the file itself.
        if (path.endsWith('.mdx')) store.set({ ...entry, deferredRender: true });
        else {
          // With an empty front matter of its own: a body may begin with a rule, which looks like one.
          const rendered = await renderMarkdown(`---\n---\n${source.body}`, { fileURL: pathToFileURL(path) });
          store.set({ ...entry, rendered, assetImports: rendered.metadata?.imagePaths });
        }
      }
    },
  };
}
