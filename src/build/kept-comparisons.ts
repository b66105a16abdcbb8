import { join } from 'node:path';
import { type KeptComparisons, keptComparisons } from '../ledger/comparisons.ts';
import { keepMap, keptMap } from './kept-map.ts';

const NAME = 'comparisons';

/** Ranks and step-ups from one build to the next: another price moves those of its own size class alone. */
export function comparisonsOf(cache: string): KeptComparisons & { keep(): void } {
  const file = join(cache, NAME);
  const comparisons = keptComparisons(keptMap(file));
  return { ...comparisons, keep: () => keepMap(file, comparisons.results()) };
}
