import { describe, expect, test } from 'vitest';
import { packResult, unpackResult } from '../../src/ledger/optics-pack.ts';
import { estimateOnce } from '../../src/ledger/optics-store.ts';
import { estimatePanel } from '../../src/measure/optics/estimate.ts';
import { exactBench, lightSource, opticsInput } from '../measure/optics/make.ts';

const bench = exactBench(lightSource(), { grid: [3, 3] });
const input = { ...opticsInput({ ...bench, beamAngle: 60 }), mains: { value: 150, budget: [] } };

describe('a result that is kept', () => {
  test('comes back number for number', () => {
    const result = estimatePanel(input);
    expect(result.estimates?.efficiency).toBeDefined();
    expect(unpackResult(structuredClone(packResult(result)))).toEqual(result);
  });

  test('has the words of each budget line once', () => {
    const packed = packResult(estimatePanel(input));
    expect(new Set(packed.lines.map((it) => it.key)).size).toBe(packed.lines.length);
    expect(packed.lines.length).toBeGreaterThan(5);
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
