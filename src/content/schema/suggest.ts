import { distance } from 'fastest-levenshtein';

/**
 * The candidate nearest to a misspelt word, or undefined when none is near enough to be the likely slip
 * (more than about a third of the letters differ). Case does not count.
 */
export function nearest(word: string, candidates: readonly string[]): string | undefined {
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const d = slips(word.toLowerCase(), candidate.toLowerCase());
    if (d < bestDistance) {
      best = candidate;
      bestDistance = d;
    }
  }
  const farthest = Math.min(Math.max(1, Math.floor(word.length / 3)), word.length - 1);
  return bestDistance <= farthest ? best : undefined;
}

/** Letters to change, add or drop; letters that only stand in another order are one slip. */
function slips(word: string, candidate: string): number {
  const sorted = (text: string) => [...text].toSorted().join('');
  return word !== candidate && sorted(word) === sorted(candidate) ? 1 : distance(word, candidate);
}
