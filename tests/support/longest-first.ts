import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * Starts the files that take longest first, so that no processor waits for one of them at the end. Vitest knows how long
 * files took only where it keeps a cache, which a fresh checkout has not.
 *
 * @param longest ends of their paths, the longest first
 */
export function longestFirst(longest: readonly string[]): typeof BaseSequencer {
  const placeOf = ({ moduleId }: TestSpecification): number => {
    const place = longest.findIndex((it) => moduleId.endsWith(it));
    return place < 0 ? longest.length : place;
  };
  return class extends BaseSequencer {
    override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
      const sorted = await super.sort(files);
      return sorted.toSorted((a, b) => placeOf(a) - placeOf(b));
    }
  };
}
