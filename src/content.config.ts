import { defineCollection } from 'astro:content';
import type { contentSource } from './build/content-source.ts';
import type { COLLECTIONS, CollectionName } from './content/schema/collections.ts';

const shared = globalThis as { panelLedgerSource?: typeof contentSource };
// A build hands over what it has loaded already.
const { schemaOf, loaderOf } = shared.panelLedgerSource ?? (await import('./build/content-source.ts')).contentSource;

/**
 * One Astro collection for each kind of content, over the checker's own schemas, which editors get from here too. Pages
 * take the bodies from them, and everything else from the ledger.
 */
function collection<Name extends CollectionName>(name: Name) {
  return defineCollection({
    loader: loaderOf(name, import.meta.env.PROD),
    schema: schemaOf(name) as (typeof COLLECTIONS)[Name]['schema'],
  });
}

export const collections = {
  guide: collection('guide'),
  instruments: collection('instruments'),
  standards: collection('standards'),
  makers: collection('makers'),
  panels: collection('panels'),
  methods: collection('methods'),
  corrections: collection('corrections'),
  cautions: collection('cautions'),
};
