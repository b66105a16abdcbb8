import { describe, expect, test } from 'vitest';
import { packResult, unpackResult } from '../../src/ledger/optics-pack.ts';
import { estimateOnce, forgetOptics, withOpticsAhead } from '../../src/ledger/optics-store.ts';
import { estimateInThreads } from '../../src/ledger/optics-threads.ts';
import { estimatePanel } from '../../src/measure/beam/estimate.ts';
import type { OpticsInput } from '../../src/measure/beam/optics-input.ts';
import { exactBench, lightSource, opticsInput } from '../measure/beam/make.ts';

const bench = exactBench(lightSource(), { grid: [3, 3] });
const input = { ...opticsInput({ ...bench, beamAngle: 60 }), mains: { value: 150, budget: [] } };

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

describe('estimateOnce', () => {
  test('gives the same as the calculation itself, the first time and again', () => {
    const fresh = estimatePanel(input);
    expect(estimateOnce(input)).toEqual(fresh);
    expect(estimateOnce(input)).toEqual(fresh);
  });

  test('takes another seed for another input', () => {
    const other = { ...input, seed: input.seed + 1 };
    expect(estimateOnce(other)).toEqual(estimatePanel(other));
    expect(estimateOnce(other)).not.toEqual(estimateOnce(input));
  });
});

describe('many at a time', () => {
  const inputs = Array.from({ length: 7 }, (_, i) => ({ ...input, seed: 7000 + i }));

  test('threads give what the calculation itself gives, in the order of what was asked', () => {
    const results = estimateInThreads(inputs, 2);
    expect(results.map((it) => it && unpackResult(it))).toEqual(inputs.map(estimatePanel));
  });

  test('a fault in a thread leaves that one out, for the one who asked to meet', () => {
    const faulty = inputs.with(3, { ...input, layout: { ...input.layout, distance: Number.NaN } });
    const results = estimateInThreads(faulty, 2);
    expect(results.flatMap((it, i) => (it ? [] : [i]))).toEqual([3]);
  });

  test('few are not worth a thread', () => {
    expect(estimateInThreads(inputs.slice(0, 5), 2)).toEqual(Array(5).fill(undefined));
    expect(estimateInThreads(inputs, 1)).toEqual(Array(7).fill(undefined));
  });

  test('what is made of them is made with their results, once more only where those were missing', () => {
    forgetOptics();
    const known = estimateOnce(inputs[0] as OpticsInput);
    const made: number[] = [];
    const found = withOpticsAhead([0, 1, 2, 3, 4, 5, 6, 6], (i) => {
      made.push(i);
      return estimateOnce(inputs[i] as OpticsInput).estimates?.emitted.value;
    });
    expect(found).toEqual(
      [...inputs, inputs[6] as OpticsInput].map((it) => estimatePanel(it).estimates?.emitted.value),
    );
    expect(found[0]).toBe(known.estimates?.emitted.value);
    expect(made).toEqual([0, 1, 2, 3, 4, 5, 6, 6, 1, 2, 3, 4, 5, 6, 6]);
  });
});
