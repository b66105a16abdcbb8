import { describe, expect, test } from 'vitest';
import { beamOrder } from '../../../src/measure/optics/beam.ts';
import { type Emitter, emitterTerms } from '../../../src/measure/optics/emitter.ts';
import {
  HIGHEST_X,
  LOWEST_X,
  logAt,
  orderTable,
  quantityAt,
  slopeAt,
  tablePlace,
} from '../../../src/measure/optics/order-table.ts';
import { planeModel } from '../../../src/measure/optics/plane-model.ts';
import { points } from './make.ts';

const DISTANCES = [10, 15.24, 30, 60, 120];

describe('values between the orders of a table', () => {
  const whole: Emitter = { kind: 'continuous', beyond: 0.6 };
  const leds: Emitter = { kind: 'leds', columns: 10, rows: 21, ledSize: 1 };
  test.each([
    ['continuous', whole, { width: 8, height: 12 }, 5e-5],
    ['continuous', whole, { width: 28, height: 61 }, 5e-5],
    ['continuous', whole, { width: 45, height: 180 }, 5e-5],
    ['LEDs', leds, { width: 28, height: 61 }, 2e-4],
  ] as const)('%s, %o: as promised against working them out afresh', (_, emitter, field, bound) => {
    const spots = [...points(field, 3, 3), { x: 0, y: 0 }];
    const model = planeModel(emitterTerms(emitter, field), field, spots);
    const size = spots.length + 1;
    const out = new Float64Array(size);
    const table = orderTable(size * DISTANCES.length, (of, all) => {
      DISTANCES.forEach((distance, i) => {
        model.fill(of, distance, out);
        all.set(out, i * size);
      });
    });
    let worst = 0;
    for (let x = LOWEST_X; x <= HIGHEST_X; x += 0.0191) {
      DISTANCES.forEach((distance, i) => {
        model.values(Math.exp(x), distance).forEach((value, q) => {
          worst = Math.max(worst, Math.abs(quantityAt(table, i * size + q, Math.exp(x)) / value - 1));
        });
      });
    }
    expect(worst).toBeLessThan(bound);
  });
});

describe('a table of known functions', () => {
  const table = orderTable(2, ({ order }, out) => {
    out[0] = order ** 1.5;
    out[1] = (order + 1) / (order + 3);
  });

  test('values and slopes', () => {
    for (const angle of [5, 17, 33, 60, 84]) {
      const m = beamOrder(angle);
      expect(Math.abs(quantityAt(table, 0, m) / m ** 1.5 - 1)).toBeLessThan(1e-9);
      expect(Math.abs((quantityAt(table, 1, m) * (m + 3)) / (m + 1) - 1)).toBeLessThan(1e-5);
      expect(slopeAt(table, 0, Math.log(m))).toBeCloseTo(1.5, 8);
      expect(slopeAt(table, 1, Math.log(m))).toBeCloseTo((2 * m) / ((m + 1) * (m + 3)), 3);
    }
  });

  test('beyond its ends a table stays at them', () => {
    for (const [beyond, end] of [
      [LOWEST_X - 2, LOWEST_X],
      [HIGHEST_X + 2, HIGHEST_X],
    ] as const) {
      expect(logAt(table, 0, tablePlace(beyond))).toBeCloseTo(1.5 * end, 9);
    }
  });
});
