import type { Loader } from 'astro/loaders';
import { z } from 'zod';
import { COLLECTIONS, type CollectionName } from '../content/schema/collections.ts';
import { liveLedger } from '../ledger/load-ledger.ts';
import { notesLoader } from './notes-loader.ts';
import { textsLoader } from './texts-loader.ts';

/** What Astro's collections are made of. */
export const contentSource = { loaderOf, schemaOf };

/** Bodies alone are Astro's. A build reads the content once; while the tester writes, it is followed elsewhere. */
function loaderOf(name: CollectionName, isBuild: boolean): Loader {
  if (name === 'methods' || name === 'cautions') return textsLoader(name);
  if (name === 'panels') return notesLoader(isBuild ? undefined : liveLedger);
  return { name: 'schema-alone', load: async () => {} };
}

/** What editors get; drafts and instruments may have gaps, which the checker knows and the schema does not. */
function schemaOf(name: CollectionName): z.ZodType {
  const { schema } = COLLECTIONS[name];
  return name === 'panels' || name === 'instruments' ? unread(schema) : schema;
}

/** For editors all that the schema says; Astro has nothing to look at that the checker has not. */
const unread = (schema: z.ZodType) => z.any().meta(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }));

const shared = globalThis as { panelLedgerSource?: typeof contentSource };

/**
 * Hands it over to `content.config.ts`, which Astro loads by way of the bundler: each of the two hundred files behind it
 * would be compiled a second time, which was a tenth of a build.
 */
export function handOver(): void {
  shared.panelLedgerSource = contentSource;
}
