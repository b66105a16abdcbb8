import { describe, expect, test } from 'vitest';
import { angularCoefficients, angularRows, POWERS } from '../../../src/measure/beam/angular-sums.ts';
import { lambertianExponent } from '../../../src/measure/beam/beam.ts';
import { panelSums } from '../../../src/measure/beam/panel-sums.ts';
import { BASIS } from '../../../src/measure/beam/profile-basis.ts';
import { type AngularResponse, angularError } from '../../../src/measure/instrument/angular-response.ts';
import { anyLight, cosineBeam } from '../../support/any-beam.ts';
import { cosineWeights } from '../../support/cosine-weights.ts';

const RESPONSES: AngularResponse[] = [
  { kind: 'f2', f2: 0.03 },
  {
    kind: 'angles',
    points: [
      { angle: 30, error: 0.01 },
      { angle: 60, error: 0.05 },
      { angle: 80, error: 0.12 },
    ],
  },
];

/** The error at an angle as the coefficients give it. */
function matchedError(coefficients: readonly number[], degrees: number): number {
  const cosine = Math.cos((degrees * Math.PI) / 180);
  return coefficients.reduce((sum, c, i) => sum + c * (1 - cosine ** (POWERS[i] ?? Number.NaN)), 0);
}

describe.each(RESPONSES)('a meter’s error at oblique light ($kind)', (response) => {
  test('is matched at the angles from which light comes', () => {
    const coefficients = angularCoefficients(response);
    for (let angle = 0; angle <= 75; angle += 5) {
      const wanted = angularError(response, angle);
      expect(Math.abs(matchedError(coefficients, angle) - wanted)).toBeLessThan(0.006);
    }
  });

  test.each([15, 30, 55])('moves each reading as it does in a sum over single LEDs, half angle %d°', (halfAngle) => {
    const source = { width: 24, height: 40, columns: 9, rows: 15, ledSize: 1, power: 1, spread: 0, seed: 1 };
    const light = anyLight({ ...source, intensity: cosineBeam(halfAngle) });
    const { readings } = panelSums({
      field: { width: 24, height: 40 },
      emitter: { kind: 'leds', columns: 9, rows: 15, ledSize: 1 },
      distance: 15.24,
      grid: { shape: { columns: 3, rows: 3, inset: 2.54 }, accepted: [0, 4] },
      beyond: [
        { edge: 'right', past: 8 },
        { edge: 'top', past: 30 },
      ],
      targets: [],
    });
    const weights = cosineWeights(lambertianExponent(halfAngle));
    const rows = angularRows(readings.base, response);
    const sum = (of: Float64Array, row: number) =>
      weights.reduce((total, it, k) => total + it * (of[row * BASIS + k] as number), 0);
    const spots = [
      [-(12 - 2.54), 20 - 2.54],
      [0, 0],
      [12 + 8, 0],
      [0, 20 + 30],
    ] as const;
    spots.forEach(([x, y], row) => {
      const plain = light.at(x, y, 15.24);
      const wanted = light.at(x, y, 15.24, (angle) => angularError(response, angle));
      // Far out a narrow beam has next to nothing: what counts is a thousandth of what the middle gets.
      const room = 1e-3 * light.at(0, 0, 15.24);
      expect(Math.abs(sum(readings.base, row) - plain)).toBeLessThan(0.003 * plain + room);
      expect(Math.abs(sum(rows, row) - wanted)).toBeLessThan(0.004 * plain + room);
    });
  });
});
