import type { ListPlace } from './edit.ts';

/**
 * Where in a list with dates a new one goes, so that the list keeps the order that the hand gave it: the newest first, or
 * the newest last, as lists with one item grow.
 *
 * @param dates `YYYY-MM-DD`, in the order of the file
 */
export function placeByDate(dates: readonly string[], date: string): ListPlace {
  const [first = '', last = ''] = [dates[0], dates.at(-1)];
  const at = dates.findIndex((it) => (first > last ? it < date : it > date));
  return at < 0 ? 'end' : at;
}
