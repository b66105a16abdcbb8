/** How far a run has come, and where to read next. No DOM. */
import { counting, type Run } from '../run.ts';
import type { Place } from './places.ts';

/** The readings of a place that count, as written. */
export const readAt = (run: Run, { path }: Pick<Place, 'path'>): string[] =>
  counting(run, path).map((it) => it.written);

/**
 * Where to read next after something was entered: in the grid, round by round until each point has as many readings as
 * are wanted; else the next place that has none; else the next one.
 *
 * @param at index of the place that was read
 * @param rounds readings that are wanted at each point of the grid
 */
export function nextPlace(all: readonly Place[], run: Run, at: number, rounds: number): number {
  const ahead = [...all.keys()].slice(at + 1);
  const behind = [...all.keys()].slice(0, at + 1);
  const lacks = (i: number, wanted: number) => readAt(run, all[i] as Place).length < wanted;
  const here = all[at];
  if (here?.step === 'grid') {
    const inGrid = [...ahead, ...behind].filter((i) => all[i]?.step === 'grid');
    const fewest = Math.min(...inGrid.map((i) => readAt(run, all[i] as Place).length));
    const found = fewest < rounds ? inGrid.find((i) => lacks(i, fewest + 1)) : undefined;
    if (found !== undefined) return found;
  }
  return ahead.find((i) => lacks(i, 1)) ?? Math.min(at + 1, all.length - 1);
}

/** How far a run is: places with a reading, and all. */
export function progressOf(run: Run, all: readonly Place[]): { read: number; of: number } {
  return { read: all.filter((it) => readAt(run, it).length > 0).length, of: all.length };
}
