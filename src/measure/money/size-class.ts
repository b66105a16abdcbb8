/** One class; the last has no upper area. Classes are ordered, smallest first. */
export interface SizeClass {
  id: string;
  name: string;
  /** cm2, still in the class. */
  upToArea?: number | undefined;
}

/**
 * The first class whose upper area is not exceeded. An area on the border belongs to the smaller class.
 *
 * @param area LED area, cm2
 */
export function sizeClassOf<T extends SizeClass>(area: number, classes: readonly T[]): T | undefined {
  return classes.find((it) => it.upToArea === undefined || area <= it.upToArea);
}
