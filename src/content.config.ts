import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import type { contentSource } from './build/content-source.ts';
import type { CollectionName, COLLECTIONS as Collections } from './content/schema/collections.ts';

const shared = globalThis as { panelLedgerSource?: typeof contentSource };
// A build hands over what it has loaded; while the tester writes, the files are followed.
const { COLLECTIONS, entryId, contentFolder, checkedLoader } =
  shared.panelLedgerSource ?? (await import('./build/content-source.ts')).contentSource;

/**
 * One Astro collection for each kind of content, over the checker's own schemas, which editors get from here too. Pages
 * take the bodies from them, and everything else from the ledger.
 */
function collection<Name extends CollectionName>(name: Name) {
  const { pattern, schema } = COLLECTIONS[name];
  // While the tester writes, files change one by one, and Astro watches them itself.
  const loader = import.meta.env.PROD
    ? checkedLoader(name)
    : glob({ pattern, base: contentFolder(), generateId: ({ entry }) => entryId(entry) });
  return defineCollection({
    loader,
    schema: schema as (typeof Collections)[Name]['schema'],
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
