import fc from 'fast-check';
import { expect, test } from 'vitest';
import { costOrder } from '../../../src/measure/money/cost-order.ts';
import { RUNS } from '../make.ts';

const cost = fc.oneof(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.constantFrom(0, 1, 1e-300, 1e300, Number.POSITIVE_INFINITY),
);

test('costs come out in order, each with whose it is, trial after trial', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40 }).chain((count) => {
        const trial = fc.array(cost, { minLength: count, maxLength: count });
        return fc.array(trial, { minLength: 1, maxLength: 3 });
      }),
      (trials) => {
        const inOrder = costOrder(trials[0]?.length ?? 0);
        for (const trial of trials) {
          const { costs, order } = inOrder(Float64Array.from(trial));
          expect([...costs]).toEqual(trial.toSorted((a, b) => a - b));
          expect([...order].toSorted((a, b) => a - b)).toEqual(trial.map((_, i) => i));
          expect([...order].map((it) => trial[it])).toEqual([...costs]);
        }
      },
    ),
    RUNS,
  );
});
