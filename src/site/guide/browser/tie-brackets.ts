/**
 * Brackets in the margin of a ranking that join what the readings can't tell apart. No DOM.
 *
 * A tie is between two panels, and is not handed on: the first can tie with the second and the second with the third while
 * the first and the third are apart. So a bracket stands for rows that all tie with one another, each with each, and that
 * follow one another. Each such run that lies in no longer one has a bracket; runs that share rows stand in lanes side by
 * side. What no bracket shows is handed back to be said in words: ties over a row between that ties with neither, and the
 * ties of a row whose runs would need more lanes than there is room for.
 */

/** How a row stands in a bracket: which lane it is drawn in, and whether the bracket begins or ends with the row. */
export interface BracketPart {
  lane: number;
  isFirst: boolean;
  isLast: boolean;
}

export interface TiedRow {
  parts: BracketPart[];
  /** Panels that it ties with and no bracket joins it to, in the order of the ranking. */
  others: string[];
}

/** Lanes that have room in the margin. */
export const MOST_LANES = 3;

/**
 * @param order panels by rank
 * @param tiedWith who ties with a panel; a tie holds both ways
 */
export function tieBrackets(
  order: readonly string[],
  tiedWith: (panel: string) => readonly string[],
): ReadonlyMap<string, TiedRow> {
  const ties = order.map((it) => new Set(tiedWith(it)));
  const isTie = (one: number, other: number) => ties[one]?.has(order[other] ?? '') ?? false;
  const drawn = inLanes(runsOf(order.length, isTie));
  return new Map(
    order.map((panel, row) => {
      const own = drawn.filter(({ from, to }) => from <= row && row <= to);
      const isJoined = (other: number) => own.some(({ from, to }) => from <= other && other <= to);
      return [
        panel,
        {
          parts: own.map(({ lane, from, to }) => ({ lane, isFirst: row === from, isLast: row === to })),
          others: order.filter((_, other) => isTie(row, other) && !isJoined(other)),
        },
      ];
    }),
  );
}

interface Run {
  from: number;
  to: number;
}

/** The longest runs of rows of which each ties with each; none lies in another. */
function runsOf(count: number, isTie: (one: number, other: number) => boolean): Run[] {
  const runs: Run[] = [];
  let from = 0;
  for (let to = 0; to < count; to++) {
    // The run that ends with this row begins behind the last row that does not tie with it.
    let start = to;
    while (start > from && isTie(start - 1, to)) start--;
    const before = runs.at(-1);
    if (start < to) {
      if (before && before.from === start && before.to === to - 1) before.to = to;
      else runs.push({ from: start, to });
    }
    from = start;
  }
  return runs;
}

/** Runs in the first lane that is free; those that find none are left out. A lane keeps a row free between two brackets. */
function inLanes(runs: readonly Run[]): Array<Run & { lane: number }> {
  const ends: number[] = [];
  return runs.flatMap((run) => {
    const free = ends.findIndex((end) => end < run.from);
    const lane = free === -1 ? ends.length : free;
    if (lane >= MOST_LANES) return [];
    ends[lane] = run.to;
    return [{ ...run, lane }];
  });
}
