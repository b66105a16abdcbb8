import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import { COLLECTIONS, type CollectionName, entryId } from './ledger/collections.ts';
import { contentFolder } from './ledger/load-ledger.ts';

/** One Astro collection for each kind of content, over the checker's own schemas; pages take the bodies from them. */
function collection<Name extends CollectionName>(name: Name) {
  const { pattern, schema } = COLLECTIONS[name];
  return defineCollection({
    loader: glob({ pattern, base: contentFolder(), generateId: ({ entry }) => entryId(entry) }),
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
