import type { ShownFigure } from '../shared/shown-figure.ts';

/** From which day all figures of a line are, so that it is said once; undefined where they differ. */
export function sharedDay(figures: ReadonlyArray<ShownFigure | undefined>): string | undefined {
  const days = new Set(figures.flatMap((it) => (it?.shown ? [it.carried] : [])));
  return days.size === 1 ? [...days][0] : undefined;
}

/** A figure without the day that its line tells already. */
export function undated<T extends ShownFigure>(it: T, told: string | undefined): T {
  if (it.carried === undefined || it.carried !== told) return it;
  const { carried: _told, ...rest } = it;
  return rest as T;
}
