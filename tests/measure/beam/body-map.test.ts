import { describe, expect, test } from 'vitest';
import { lambertianExponent } from '../../../src/measure/beam/beam.ts';
import { BODY_WIDTH, bodyMap } from '../../../src/measure/beam/body-map.ts';
import { PATTERNS } from '../../../src/measure/beam/drive.ts';
import { cosineWeights } from '../../support/cosine-weights.ts';
import { knownEmitter, lightOf, lightSource } from './make.ts';

const source = lightSource();
const panel = (exponent: number) => ({
  emitter: knownEmitter(source),
  field: { width: source.width, height: source.height },
  weights: [...cosineWeights(exponent)],
  drive: PATTERNS.map(() => 0),
  power: 60,
});

describe('what reaches a person', () => {
  test('the independent simulator finds the same at every cell', () => {
    const light = lightOf(source);
    const body = bodyMap(panel(lambertianExponent(30)), 30, 172);
    expect([body.columns, body.rows]).toEqual([15, 58]);
    let sum = 0;
    let even = 0;
    const values = Array.from(body.values, (_, i) =>
      light(body.x[i % 15] as number, body.y[Math.floor(i / 15)] as number, 30),
    );
    for (const value of values) sum += value;
    const mean = sum / values.length;
    for (const value of values) even += value >= 0.8 * mean ? 1 : 0;
    // A power between those of the basis is spread over four of them.
    expect(Math.abs(body.mean / mean - 1)).toBeLessThan(1e-3);
    expect(Math.abs(body.evenShare - even / values.length)).toBeLessThan(0.01);
    body.values.forEach((value, i) => {
      expect(Math.abs(value - (values[i] as number))).toBeLessThan(2e-3 * mean + 2e-3 * value);
    });
  });

  test('the figure covers the person: cells end at head, feet and shoulders', () => {
    const { x, y } = bodyMap(panel(1), 30, 172);
    expect((x[0] as number) - BODY_WIDTH / 2 / 15).toBeCloseTo(-BODY_WIDTH / 2, 10);
    expect((y[0] as number) + 86 / 58).toBeCloseTo(86, 10);
  });

  test('from further away the light is weaker and more even', () => {
    const [near, far] = [20, 150].map((distance) => bodyMap(panel(lambertianExponent(30)), distance, 172));
    expect(far?.mean).toBeLessThan(near?.mean ?? 0);
    expect(far?.evenShare).toBeGreaterThan(near?.evenShare ?? 1);
    expect(near?.evenShare).toBeLessThan(0.5);
  });

  test('very far away all of the body is lit alike', () => {
    expect(bodyMap(panel(1), 2000, 172).evenShare).toBe(1);
  });

  test.each([0, -170, 400, Number.NaN])('a person of %d cm is refused', (height) => {
    expect(() => bodyMap(panel(1), 30, height)).toThrow(RangeError);
  });
});
