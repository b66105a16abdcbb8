import { type FigureOrGap, isFigure } from '../../../measure/figure.ts';

/** A 95 % interval drawn to the scale of its page: positions from 0 to 100. */
export interface ErrorBar {
  from: number;
  to: number;
  at: number;
}

/**
 * Places the intervals of one column, of all tables of a page together, on a common scale from zero, so that readers
 * see how far apart values really are.
 */
export function errorBars(figures: ReadonlyArray<FigureOrGap | undefined>): Array<ErrorBar | undefined> {
  const highest = Math.max(0, ...figures.map((it) => (isFigure(it) && it.interval95 ? it.interval95[1] : 0)));
  if (highest === 0) return figures.map(() => undefined);
  const place = (value: number) => Math.round((1000 * value) / highest) / 10;
  return figures.map((it) =>
    isFigure(it) && it.interval95
      ? { from: place(it.interval95[0]), to: place(it.interval95[1]), at: place(it.value) }
      : undefined,
  );
}
