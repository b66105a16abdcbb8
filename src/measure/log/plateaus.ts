import { type Hover, hovers } from './hovers.ts';
import { sampleScatter, type TimeSeries } from './series.ts';

/** Points of a grid, found in one log. */
export interface PlateauSearch {
  /** As many as were looked for, where they could be told from the rest; in the order of time. */
  points: readonly Hover[] | undefined;
  /** All stretches at which the sensor was held still and lit. */
  found: readonly Hover[];
  /** Those among them that are no points: shorter than the others. */
  left: readonly Hover[];
}

/** Share of the highest stretch under which the sensor was covered or off the panel. Our own choice. */
export const DARK_SHARE = 0.05;
/** How many times longer the shortest point has to be than what is left out. Our own choice. */
const CLEARLY_LONGER = 1.5;
/** Stretches closer together than this, s, and alike, are one: a disturbance in between. */
const ONE_STRETCH = 0.3;
/** How alike. */
const ALIKE = 0.01;

/**
 * Looks for the points of a grid that was logged in one go: as many stretches as there are points, each held still for two
 * seconds or more. Where more were found, the longest are the points if they are clearly longer than the rest. Where they can't be
 * told from the rest, or too few were found, there are no points: two neighbours that read alike may have become one.
 */
export function plateaus(series: TimeSeries, wanted: number): PlateauSearch {
  const all = joined(hovers(series, sampleScatter(series)));
  const highest = Math.max(...all.map((it) => it.mean));
  const found = all.filter((it) => it.mean > DARK_SHARE * highest);
  if (found.length < wanted) return { points: undefined, found, left: [] };
  const byLength = found.toSorted((a, b) => length(b) - length(a));
  const points = new Set(byLength.slice(0, wanted));
  const [shortest, longestLeft] = [byLength[wanted - 1], byLength[wanted]];
  if (shortest && longestLeft && length(shortest) < CLEARLY_LONGER * length(longestLeft)) {
    return { points: undefined, found, left: [] };
  }
  return {
    points: found.filter((it) => points.has(it)),
    found,
    left: found.filter((it) => !points.has(it)),
  };
}

function joined(all: readonly Hover[]): Hover[] {
  const result: Hover[] = [];
  for (const next of all) {
    const before = result[result.length - 1];
    const isOne =
      before && next.from - before.to < ONE_STRETCH && Math.abs(next.mean - before.mean) < ALIKE * before.mean;
    if (!isOne) result.push(next);
    else {
      const longer = length(before) >= length(next) ? before : next;
      result[result.length - 1] = { ...longer, from: before.from, to: next.to };
    }
  }
  return result;
}

const length = ({ from, to }: Hover) => to - from;
