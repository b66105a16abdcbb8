import { expect, test } from 'vitest';
import { modelledOver } from '../../../src/measure/beam/field-map.ts';
import { BASIS_EXPONENTS } from '../../../src/measure/beam/profile-basis.ts';

/** One small LED of 1 W whose beam is a single power of the cosine. */
const model = (k: number) => ({
  emitter: { kind: 'continuous' as const, beyond: 0 },
  field: { width: 0.02, height: 0.02 },
  weights: BASIS_EXPONENTS.map((_, i) => (i === k ? 1 : 0)),
  drive: [],
  power: 1,
});

test('from afar a small field is a point: (m + 1) P cos^(m + 1) / (2 π r²), by the inverse square', () => {
  const distance = 30;
  BASIS_EXPONENTS.forEach(({ exponent }, k) => {
    const [x, y] = [
      [0, 12],
      [5, 0],
    ] as const;
    const found = modelledOver(model(k), distance, x, y);
    const expected = y.flatMap((up) =>
      x.map((across) => {
        const r2 = across ** 2 + up ** 2 + distance ** 2;
        const cosine = distance / Math.sqrt(r2);
        return (1000 * (exponent + 1) * cosine ** (exponent + 1)) / (2 * Math.PI * r2);
      }),
    );
    // What is less than a millionth of a mW/cm² is no light that anybody reads.
    for (const [i, value] of expected.entries())
      expect(Math.abs((found[i] as number) - value)).toBeLessThan(5e-4 * Math.max(value, 1e-6));
  });
});
