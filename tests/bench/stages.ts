/**
 * Times the stages of a build that are ours, each for the first time in a fresh process, as a build does:
 *
 *     node tests/bench/stages.ts CONTENT SITE [afresh]
 *
 * and prints them as JSON. SITE is a built site; its search index is written anew. `afresh` leaves aside the fits that
 * earlier builds have kept.
 */
import { performance } from 'node:perf_hooks';
import { indexPages } from '../../src/build/search-index.ts';
import { readContent } from '../../src/content/read/read-content.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { forgetResults } from '../../src/ledger/result-store.ts';
import { today } from './content.ts';

/** Seconds. */
export interface Stages {
  read: number;
  measure: number;
  search: number;
}

async function stages(folder: string, site: string): Promise<Stages> {
  const start = performance.now();
  const { content, problems } = readContent({ folder, today });
  if (!content) throw new Error(`the generated content has ${problems.length} problems`);
  const read = performance.now();
  buildLedger(content, { today });
  const measured = performance.now();
  await indexPages(site);
  const searched = performance.now();
  return { read: (read - start) / 1000, measure: (measured - read) / 1000, search: (searched - measured) / 1000 };
}

if (import.meta.main) {
  const [folder = '', site = '', afresh] = process.argv.slice(2);
  if (afresh) forgetResults();
  console.log(JSON.stringify(await stages(folder, site)));
}
