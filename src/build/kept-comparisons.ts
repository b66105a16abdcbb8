import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { writeWhole } from '../content/read/write-whole.ts';
import { type ComparisonResults, type KeptComparisons, keptComparisons } from '../ledger/comparisons.ts';
import { buildStamp } from './source-stamp.ts';

const NAME = 'comparisons';

/** Ranks and step-ups from one build to the next: another price moves those of its own size class alone. */
export function comparisonsOf(cache: string): KeptComparisons & { keep(): void } {
  const file = join(cache, NAME);
  const comparisons = keptComparisons(resultsIn(file));
  return {
    ...comparisons,
    /** Keeps them for the next build; a folder that can't be written to is no reason to fail. */
    keep() {
      try {
        writeWhole(file, serialize({ code: buildStamp(), results: comparisons.results() }));
      } catch {
        // The next build works them out again.
      }
    },
  };
}

function resultsIn(file: string): ComparisonResults {
  try {
    const { code, results } = deserialize(readFileSync(file));
    if (code === buildStamp() && results instanceof Map) return results;
  } catch {
    // There is none yet, or another version of Node wrote it.
  }
  return new Map();
}
