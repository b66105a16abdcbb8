/** Simulated readings past the edges, against the light of one LED by hand. */
import { describe, expect, it } from 'vitest';
import { DEMO } from './demo-specs.ts';
import { type Bench, type BeyondPlace, STEADY_BENCH, simulateSession } from './simulate-panel.ts';

const { truth } = Object.values(DEMO)[0] as (typeof DEMO)[string];
/** One Lambertian LED of 10 W in the middle of a field of 4 by 2 cm. */
const LAMP = {
  ...truth,
  source: {
    ...truth.source,
    width: 4,
    height: 2,
    columns: 1,
    rows: 1,
    ledSize: 1,
    layout: 'dual' as const,
    halfAngle: 60,
    power: { red: 5, nearInfrared: 5 },
    together: 1,
    spread: 0,
  },
};
const IDEAL: Bench = {
  ...STEADY_BENCH,
  distanceSetting: 0,
  irradiance: { floor: 0.1, resolution: 0.001, calibration: 0, repeatability: 0, receiver: 1 },
};
const read = (beyond: BeyondPlace[], part: Partial<Bench> = {}) =>
  simulateSession(LAMP, { ...IDEAL, beyond, ...part }, 5).readings.beyond;

describe('readings past the edges', () => {
  it('are E = P z² / (π r⁴) of a Lambertian LED, with the place counted from the edge of the field', () => {
    const by = (aside: number) => (10_000 * 15.24 ** 2) / (Math.PI * (15.24 ** 2 + aside ** 2) ** 2);
    const places: Array<[BeyondPlace['edge'], number]> = [
      ['left', 2 + 8],
      ['right', 2 + 20],
      ['top', 1 + 8],
      ['bottom', 1 + 40],
    ];
    const shown = read([
      { edge: 'left', past: 8 },
      { edge: 'right', past: 20 },
      { edge: 'top', past: 8 },
      { edge: 'bottom', past: 40 },
    ]);
    places.forEach(([edge, aside], i) => {
      expect(shown?.[i]?.edge).toBe(edge);
      expect(shown?.[i]?.on[0]?.value).toBeCloseTo(by(aside), 2);
    });
  });

  it('hold the room’s light with the panel on and off', () => {
    const [dark] = read([{ edge: 'left', past: 8, off: true }]) ?? [];
    const [lit] = read([{ edge: 'left', past: 8, off: true }], { room: 0.5 }) ?? [];
    expect((lit?.on[0]?.value ?? 0) - (dark?.on[0]?.value ?? 0)).toBeCloseTo(0.5, 2);
    expect(lit?.off).toEqual({ value: 0.5, below: false });
    expect(dark?.off).toEqual({ value: 0.1, below: true });
  });

  it('lose oblique light by the receiver’s exponent: a further power of the cosine', () => {
    const [full] = read([{ edge: 'left', past: 20 }]) ?? [];
    const [less] = read([{ edge: 'left', past: 20 }], { irradiance: { ...IDEAL.irradiance, receiver: 2 } }) ?? [];
    const cosine = 15.24 / Math.hypot(15.24, 22);
    expect((less?.on[0]?.value ?? 0) / (full?.on[0]?.value ?? 1)).toBeCloseTo(cosine, 3);
  });

  it('leave every other reading as it is without them', () => {
    const bench = { ...STEADY_BENCH, distances: [10, 30] };
    const { beyond, ...others } = simulateSession(
      truth,
      { ...bench, beyond: [{ edge: 'top', past: 8, repeats: 3 }], room: 0.1, placing: 0.1 },
      9,
    ).readings;
    expect(beyond?.[0]?.on).toHaveLength(3);
    expect(others).toEqual(simulateSession(truth, bench, 9).readings);
  });
});
