/**
 * Two distances, cm, no farther apart than this are one: for rankings, comparisons, changes between sessions, and claims.
 * Our own choice: half of what a distance is commonly set to within, so that what it moves is small beside the line that
 * each budget has for the setting. By the inverse square, the steepest fall there is, it is 1.3 % at 15 cm.
 */
export const SAME_DISTANCE_CM = 0.1;

/** Takes the binary dust off a difference: 15.1 - 15 is a hair more than 0.1. */
const DUST = 1e-9;

/** True where two distances, cm, are one within `SAME_DISTANCE_CM`. */
export function sameDistance(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME_DISTANCE_CM + DUST;
}

/**
 * Puts distances into groups of which any two members are one: from the nearest up, each group takes what is one with
 * its nearest member. "One" alone would not do: of 30.0, 30.1 and 30.2 cm, the first and the last are two.
 *
 * @returns the nearest member of its group, by distance, cm
 */
export function distanceGroups(distances: Iterable<number>): ReadonlyMap<number, number> {
  const groups = new Map<number, number>();
  let nearest: number | undefined;
  for (const distance of [...new Set(distances)].toSorted((a, b) => a - b)) {
    if (nearest === undefined || !sameDistance(distance, nearest)) nearest = distance;
    groups.set(distance, nearest);
  }
  return groups;
}
