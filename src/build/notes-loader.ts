import { relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Loader } from 'astro/loaders';
import { ContentError } from '../content/read/problem-list.ts';
import { type Loaded, loadLedger } from '../ledger/load-ledger.ts';
import { compiledNotes, type ProgramOrder, programOrder } from './program/program-order.ts';

/** What Astro knows the loader by. */
export const NOTES = 'checked-notes';

/** On the global object, as the ledger is: Astro bundles a copy of this module. */
const shared = globalThis as { panelLedgerNotes?: Loaded['content']['panels'] };

/** True where the notes that pages have are those of this content. */
export function areRendered({ content }: Loaded): boolean {
  return shared.panelLedgerNotes === content.panels;
}

/**
 * Those of the testers' notes that Astro has to make something of, from the content that has been read and checked
 * already: its own loader would read, parse and validate every panel once more, and pass thousands of readings through
 * its store. Entries hold the body alone; everything else of a panel comes from the ledger, plain notes too. Notes that
 * are there as they should be are left alone.
 *
 * @param load gives the content; a build's where it is left out
 */
export function notesLoader(load: () => Loaded = loadLedger): Loader {
  return {
    name: NOTES,
    load: async ({ store, renderMarkdown, config, generateDigest }) => {
      const notes = notesOf(load);
      if (!notes) return;
      const root = fileURLToPath(config.root);
      const ids = new Set(notes.map((it) => it.id));
      for (const id of store.keys()) if (!ids.has(id)) store.delete(id);
      for (const { id, path: given, body } of notes) {
        const path = resolve(given);
        const digest = generateDigest(`${path}\n${body}`);
        if (store.get(id)?.digest === digest) continue;
        const entry = { id, data: {}, digest, filePath: relative(root, path).split(sep).join('/') };
        // What is compiled, not rendered, is the bundler's, which reads the file itself.
        if (path.endsWith('.mdx')) store.set({ ...entry, deferredRender: true });
        else {
          // With an empty front matter of its own: a body may begin with a rule, which looks like one.
          const rendered = await renderMarkdown(`---\n---\n${body}`, { fileURL: pathToFileURL(path) });
          store.set({ ...entry, rendered, assetImports: rendered.metadata?.imagePaths });
        }
      }
    },
  };
}

/** Undefined where there is no content to speak of; whoever follows it has told why, and asks again. */
function notesOf(load: () => Loaded): ProgramOrder['notes'] | undefined {
  const order = programOrder();
  if (order) return order.notes;
  try {
    const loaded = load();
    shared.panelLedgerNotes = loaded.content.panels;
    return compiledNotes(loaded);
  } catch (error) {
    if (error instanceof ContentError && load !== loadLedger) return undefined;
    throw error;
  }
}
