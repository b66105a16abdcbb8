import { drawError, type Random } from '../random.ts';
import type { MainsDraw } from './optics-input.ts';
import { type Spread, spreadOf } from './spread.ts';

/** Spread of the emitted power over the mains draw: each trial of the one over the other with its errors. */
export function overMains(emitted: Float64Array, mains: MainsDraw, random: Random): Spread {
  return spreadOf(
    emitted.map((power) => {
      const error = mains.budget.reduce(
        (sum, { source, contribution }) => sum + contribution * drawError(random, source),
        0,
      );
      // A reading that is too high is one of less than it says.
      return power / Math.max(1e-3 * mains.value, mains.value - error);
    }),
  );
}
