import { codeHash } from '../content/read/code-hash.ts';
import { estimatePanel } from '../measure/beam/estimate.ts';
import type { OpticsInput } from '../measure/beam/optics-input.ts';
import { type PackedResult, packResult } from './optics-pack.ts';
import { estimateInThreads } from './optics-threads.ts';
import { keyOf, resultStore } from './result-store.ts';

/** Everything that `estimatePanel` may run, and the form that its results are kept in. */
const CALCULATION = ['src/measure', 'src/ledger/optics-pack.ts'];

/**
 * Results of the optics model: a panel that was not measured again has the same light, and a build that only changes prices
 * need not fit a thousand beams.
 */
const store = resultStore<PackedResult>('optics', () => codeHash(CALCULATION));

/**
 * What comes of some inputs, under their names: from an earlier build where it is known, and worked out otherwise, on all
 * processors. What is alike is worked out once.
 */
export function workedOut(inputs: ReadonlyMap<string, OpticsInput>): ReadonlyMap<string, PackedResult> {
  const wanted = [...inputs].map(([name, input]) => ({ name, input, key: keyOf(input) }));
  const missing = new Map<string, OpticsInput>();
  for (const { key, input } of wanted) if (!store.get(key)) missing.set(key, input);
  const found = estimateInThreads([...missing.values()]);
  [...missing].forEach(([key, input], i) => {
    // What no thread has worked out is worked out here, where its fault can be told.
    store.set(key, found[i] ?? packResult(estimatePanel(input)));
  });
  return new Map(
    wanted.flatMap(({ name, key }) => {
      const result = store.get(key);
      return result ? [[name, result] as const] : [];
    }),
  );
}
