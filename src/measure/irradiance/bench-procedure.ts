/**
 * What each version of the bench procedure makes of the readings inside the LED field: versions with one name read the
 * grid, the peak, the draw, the fields and the sound alike, so the figures of these mean the same and panels read
 * under either are ranked and compared together. Version 2 only adds readings past the edges.
 */
const NINE_POINT: Readonly<Record<number, string>> = {
  1: 'nine-point@1',
  2: 'nine-point@1',
};

/** Versions of the bench procedure that exist, oldest first. */
export function procedureVersions(table = NINE_POINT): number[] {
  return Object.keys(table)
    .map(Number)
    .toSorted((a, b) => a - b);
}

/**
 * The name of the way in which the grid is read under a version of the bench procedure.
 *
 * @throws RangeError for a version that does not exist; the checker lets none of these in
 */
export function ninePointBasis(version: number, table = NINE_POINT): string {
  const basis = Object.hasOwn(table, version) ? table[version] : undefined;
  if (basis === undefined) {
    throw new RangeError(
      `no version ${version} of the bench procedure: there are ${procedureVersions(table).join(' and ')}`,
    );
  }
  return basis;
}

/** Whether nine-point figures read under two versions of the bench procedure can be ranked and compared together. */
export function areNinePointAlike(one: number, other: number, table = NINE_POINT): boolean {
  return ninePointBasis(one, table) === ninePointBasis(other, table);
}

/** Versions that read the grid as the given one does, oldest first. */
export function versionsAlike(version: number, table = NINE_POINT): number[] {
  return procedureVersions(table).filter((it) => areNinePointAlike(it, version, table));
}

/** From this version on the procedure asks for readings past the edges. */
export const ASKS_BEYOND_FROM = 2;
/** Places that it asks for past one side edge, and past the top or bottom edge. */
export const BEYOND_PLACES_EACH = 3;

/** Under what a session was measured; only panels measured alike are ranked together. */
export interface Conditions {
  /** cm */
  distance: number;
  methodVersion: number;
  /** The guide's own distance, under a version of the procedure that reads the grid as the guide's does. */
  isReference: boolean;
}
