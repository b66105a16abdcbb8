import { placeTable } from '../shared/browser/place-table.ts';

/** What has places in the lists of a file: for each list its places, in the order in which they were first asked for. */
export type UsedPlaces = ReadonlyArray<readonly number[]>;

/** What stands in the lists, by their places. */
export type PlaceLists = ReadonlyArray<readonly unknown[]>;

interface NotedTable {
  list: unknown[];
  placeOf(it: unknown): number;
  used: Set<number>;
}

/**
 * The lists of a file that have what many of its pieces refer to, each once. A piece's text holds places in them, and
 * these hang on the pieces before it: one that is kept from an earlier file holds as long as all that it refers to comes
 * to the same places again.
 */
export function sharedPlaces() {
  const tables: NotedTable[] = [];
  /** Of what stood in other lists, by these: where it stands now. */
  const moved = new WeakMap<PlaceLists, Array<Map<number, number>>>();
  return {
    /** Another list, in which what is called alike stands once. Entries of an earlier list must refer to earlier ones alone. */
    table<T>(nameOf: (it: T) => string) {
      const { list, placeOf } = placeTable(nameOf);
      const used = new Set<number>();
      tables.push({ list, placeOf: (it) => placeOf(it as T), used });
      return {
        list,
        placeOf: (it: T): number => {
          const place = placeOf(it);
          used.add(place);
          return place;
        },
      };
    },

    /** What stands in all lists by now. */
    lists: (): PlaceLists => tables.map(({ list }) => list),

    /** Makes something, and tells what it has asked for. */
    noting(make: () => string): { text: string; used: UsedPlaces } {
      for (const { used } of tables) used.clear();
      const text = make();
      return { text, used: tables.map(({ used }) => [...used]) };
    },

    /**
     * Gives what an earlier piece has asked for its places in these lists, as making it anew would have.
     *
     * @param before the lists of its file
     * @returns whether all of them are the same; where one is not, the piece has to be made anew
     */
    areKept(used: UsedPlaces, before: PlaceLists): boolean {
      const known = moved.get(before) ?? tables.map(() => new Map<number, number>());
      moved.set(before, known);
      return tables.every(({ placeOf }, i) =>
        used[i]?.every((place) => {
          const now = known[i]?.get(place) ?? placeOf(before[i]?.[place]);
          known[i]?.set(place, now);
          return now === place;
        }),
      );
    },
  };
}
export type SharedPlaces = ReturnType<typeof sharedPlaces>;
