import { afterAll, describe, expect, test } from 'vitest';
import { packResult, unpackResult } from '../../src/ledger/optics-pack.ts';
import { workedOut } from '../../src/ledger/optics-store.ts';
import { estimateInThreads } from '../../src/ledger/optics-threads.ts';
import { forgetResults, keyOf, releaseResults } from '../../src/ledger/result-store.ts';
import { estimatePanel } from '../../src/measure/beam/estimate.ts';
import type { OpticsInput } from '../../src/measure/beam/optics-input.ts';
import { exactBench, lightSource, opticsInput } from '../measure/beam/make.ts';

const bench = exactBench(lightSource(), { grid: [3, 3] });
const input = { ...opticsInput({ ...bench, beamAngle: 60 }), mains: { value: 150, budget: [] } };

// The next test file of this worker has what is kept on the disk again.
afterAll(releaseResults);

describe('a result that is kept', () => {
  test('comes back number for number', () => {
    const result = estimatePanel(input);
    expect(result.estimates?.efficiency).toBeDefined();
    expect(unpackResult(structuredClone(packResult(result)))).toEqual(result);
  });

  test('has each error source once', () => {
    const packed = packResult(estimatePanel(input));
    const keys = packed.estimates ? packed.sources.map((it) => it.key) : [];
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.length).toBeGreaterThan(5);
  });

  test('comes back too where the beam is withheld', () => {
    const withheld = estimatePanel(opticsInput(exactBench(lightSource(), {})));
    expect(withheld.estimates).toBeUndefined();
    expect(unpackResult(packResult(withheld))).toEqual(withheld);
  });
});

describe('what comes of some inputs', () => {
  const resultsOf = (inputs: Record<string, OpticsInput>) =>
    Object.fromEntries([...workedOut(new Map(Object.entries(inputs)))].map(([name, it]) => [name, unpackResult(it)]));

  test('is what the calculation itself gives, the first time and again', () => {
    forgetResults();
    const fresh = estimatePanel(input);
    expect(resultsOf({ here: input })).toEqual({ here: fresh });
    expect(resultsOf({ there: input })).toEqual({ there: fresh });
  });

  test('another seed is another input', () => {
    const other = { ...input, seed: input.seed + 1 };
    const { one, two } = resultsOf({ one: input, two: other });
    expect(two).toEqual(estimatePanel(other));
    expect(two).not.toEqual(one);
  });

  test('has one name, however the engine holds its numbers', () => {
    const held = { ...input, seed: 0.5 };
    held.seed = input.seed;
    expect(held).toEqual(input);
    expect(keyOf(held)).toBe(keyOf(input));
    for (const other of [Number.POSITIVE_INFINITY, Number.NaN, -0, 0, null])
      expect(keyOf({ ...input, seed: other as number }), `${other}`).not.toBe(keyOf(input));
    const [nothing, none] = [0, -0].map((seed) => keyOf({ ...input, seed }));
    expect(none).not.toBe(nothing);
  });

  test('is worked out once for each input, and not again where it is known', () => {
    forgetResults();
    const inputs = new Map(['a', 'b', 'c'].map((name) => [name, name === 'c' ? { ...input, seed: 17 } : input]));
    const first = workedOut(inputs);
    expect(first.get('a')).toBe(first.get('b'));
    expect(first.get('c')).not.toBe(first.get('a'));
    for (const [name, result] of workedOut(inputs)) expect(result, name).toBe(first.get(name));
  });

  test('a fault is met by the one who asked', () => {
    const faulty = { ...input, layout: { ...input.layout, distance: Number.NaN } };
    expect(() => workedOut(new Map([['faulty', faulty]]))).toThrow(RangeError);
  });
});

describe('many at a time', () => {
  const inputs = Array.from({ length: 7 }, (_, i) => ({ ...input, seed: 7000 + i }));
  const direct: Array<ReturnType<typeof estimatePanel> | undefined> = inputs.map(estimatePanel);

  test('threads give what the calculation itself gives, in the order of what was asked; what is faulty is left out, for the one who asked to meet', () => {
    const faulty = inputs.with(3, { ...input, layout: { ...input.layout, distance: Number.NaN } });
    const results = estimateInThreads(faulty, 2);
    expect(results.map((it) => it && unpackResult(it))).toEqual(direct.with(3, undefined));
  });

  test('few are not worth a thread', () => {
    expect(estimateInThreads(inputs.slice(0, 5), 2)).toEqual(Array(5).fill(undefined));
    expect(estimateInThreads(inputs, 1)).toEqual(Array(7).fill(undefined));
  });

  test('all have their results, under their names', () => {
    forgetResults();
    const results = workedOut(new Map(inputs.map((it) => [`seed ${it.seed}`, it])));
    expect([...results].map(([name, it]) => [name, unpackResult(it)])).toEqual(
      inputs.map((it, i) => [`seed ${it.seed}`, direct[i]]),
    );
  });
});
