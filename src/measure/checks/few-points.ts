import type { Check } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    'grid-few-points': { count: number; fewest: number };
  }
}

/** Fewer points than this are no picture of a field: the middle alone is a third above the usual mean. Our own choice. */
export const FEWEST_POINTS = 4;

/** A grid of so few points that its mean says more of them than of the field. */
export const fewPoints: Check = {
  id: 'few-points',
  run: ({ gridPoints }) => {
    // Places, read or not: a grid that is being read is not small.
    const count = gridPoints.length;
    if (count >= FEWEST_POINTS || gridPoints.every((it) => it === null)) return [];
    return [
      {
        severity: 'doubt',
        finding: { code: 'grid-few-points', count, fewest: FEWEST_POINTS },
        concerns: ['mean-irradiance'],
        at: ['session', 'grid', 'rows'],
      },
    ];
  },
};
