import { defineCollection } from 'astro:content';
import { resolve } from 'node:path';
import { glob } from 'astro/loaders';
import { notesLoader } from './build/notes-loader.ts';
import { textsLoader } from './build/texts-loader.ts';
import { COLLECTIONS, type CollectionName, entryId } from './content/schema/collections.ts';
import { contentFolder } from './ledger/load-ledger.ts';

/**
 * One Astro collection for each kind of content, over the checker's own schemas, which editors get from here too. Pages
 * take the bodies from them, and everything else from the ledger.
 */
function collection<Name extends CollectionName>(name: Name) {
  const { pattern, schema } = COLLECTIONS[name];
  // While the tester writes, files change one by one, and Astro watches them itself. A build takes bodies alone.
  const inBuild = () => (name === 'panels' ? notesLoader() : { name: 'schema-alone', load: async () => {} });
  const loader =
    name === 'methods' || name === 'cautions'
      ? textsLoader(name)
      : import.meta.env.PROD
        ? inBuild()
        : glob({ pattern, base: resolve(contentFolder()), generateId: ({ entry }) => entryId(entry) });
  return defineCollection({
    loader,
    schema: schema as (typeof COLLECTIONS)[Name]['schema'],
  });
}

export const collections = {
  guide: collection('guide'),
  instruments: collection('instruments'),
  makers: collection('makers'),
  panels: collection('panels'),
  methods: collection('methods'),
  cautions: collection('cautions'),
};
