import { defineCollection } from 'astro:content';
import { z } from 'zod';
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
    schema: (mayHaveGaps(name) ? unread(schema) : schema) as (typeof COLLECTIONS)[Name]['schema'],
  });
}

/** Drafts and instruments may have gaps, which the checker knows and the schema does not. */
const mayHaveGaps = (name: CollectionName) => name === 'panels' || name === 'instruments';

/** For editors all that the schema says; Astro has nothing to look at that the checker has not. */
const unread = (schema: z.ZodType) => z.any().meta(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }));

export const collections = {
  guide: collection('guide'),
  instruments: collection('instruments'),
  standards: collection('standards'),
  makers: collection('makers'),
  panels: collection('panels'),
  methods: collection('methods'),
  cautions: collection('cautions'),
};
