import { distance } from 'fastest-levenshtein';

/**
 * The candidate nearest to a misspelt word, or undefined when none is near enough to be the likely slip
 * (more than about a third of the letters differ). Case does not count.
 */
export function nearest(word: string, candidates: readonly string[]): string | undefined {
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const d = distance(word.toLowerCase(), candidate.toLowerCase());
    if (d < bestDistance) {
      best = candidate;
      bestDistance = d;
    }
  }
  return bestDistance <= Math.max(1, Math.floor(word.length / 3)) ? best : undefined;
}
