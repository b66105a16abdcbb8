import { expect, test } from 'vitest';
import { EXPOSURE_METHODS } from '../../../src/measure/exposure/methods.ts';
import { EXPOSURE_METRICS } from '../../../src/measure/exposure/metrics.ts';

test('each metric is there once, with a name of its own and a known method', () => {
  expect(new Set(EXPOSURE_METRICS.map((it) => it.id)).size).toBe(EXPOSURE_METRICS.length);
  expect(new Set(EXPOSURE_METRICS.map((it) => it.name)).size).toBe(EXPOSURE_METRICS.length);
  const methods = EXPOSURE_METHODS.map((it) => it.id);
  expect([...new Set(EXPOSURE_METRICS.map((it) => it.method))].toSorted()).toEqual(methods.toSorted());
  expect([...new Set(EXPOSURE_METRICS.map((it) => it.unit))].toSorted()).toEqual(['%', '1', 'dB(A)', 's']);
});
