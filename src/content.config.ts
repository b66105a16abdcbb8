import { defineCollection } from 'astro:content';
import { notesLoader } from './build/notes-loader.ts';
import { textsLoader } from './build/texts-loader.ts';
import { COLLECTIONS, type CollectionName } from './content/schema/collections.ts';
import { liveLedger } from './ledger/load-ledger.ts';

/**
 * One Astro collection for each kind of content, over the checker's own schemas, which editors get from here too. Pages
 * take the bodies from them, and everything else from the ledger.
 */
function collection<Name extends CollectionName>(name: Name) {
  const { schema } = COLLECTIONS[name];
  // Bodies alone are Astro's. A build reads the content once; while the tester writes, it is followed elsewhere.
  const loader =
    name === 'methods' || name === 'cautions'
      ? textsLoader(name)
      : name === 'panels'
        ? notesLoader(import.meta.env.PROD ? undefined : liveLedger)
        : { name: 'schema-alone', load: async () => {} };
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
