import { expect, test } from 'vitest';
import { peaksKnownFrom } from '../../../src/measure/beam/single-leds.ts';
import { anyLight, cosineBeam } from '../../support/any-beam.ts';

const uncounted = { emitter: { kind: 'continuous', beyond: 0.9 } } as const;

test('LEDs that were counted are known at every distance', () => {
  expect(peaksKnownFrom({ emitter: { kind: 'leds', columns: 4, rows: 9, ledSize: 1 } }, 10)).toBe(0);
});

test('of others nothing is said where they may show: z tan(half angle) under 0.65 of a pitch of 4 cm', () => {
  const from = peaksKnownFrom(uncounted, 15);
  expect((from * Math.tan((15 * Math.PI) / 180)) / 4).toBeCloseTo(0.65, 12);
  expect(from).toBeGreaterThan(9.6);
  expect(from).toBeLessThan(9.8);
});

/** Brightest over dimmest place in a cell of a large panel's middle. */
function ripple(ratio: number): number {
  const [pitch, halfAngle] = [4, 15];
  const z = (ratio * pitch) / Math.tan((halfAngle * Math.PI) / 180);
  const n = 15;
  const light = anyLight({
    width: pitch * (n - 1),
    height: pitch * (n - 1),
    columns: n,
    rows: n,
    ledSize: 0,
    intensity: cosineBeam(halfAngle),
    power: 100,
    spread: 0,
    seed: 1,
  });
  return light.at(0, 0, z) / light.at(pitch / 2, pitch / 2, z);
}

test('just above that line single LEDs hardly show, and well below they do', () => {
  expect(ripple(0.65)).toBeLessThan(1.12);
  expect(ripple(0.4)).toBeGreaterThan(1.3);
});
