import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lambertianExponent } from '../../../src/measure/beam/beam.ts';
import { type Emitter, emitterParts, type Field, placeLeds } from '../../../src/measure/beam/emitter.ts';
import { planeMap } from '../../../src/measure/beam/plane-map.ts';
import { gridSpots, peakCandidates } from '../../../src/measure/beam/plane-spots.ts';
import { planeValues } from '../../references/plane-values.ts';
import { truthOf } from '../../support/light-source.ts';
import { oneExponent } from '../../support/one-exponent.ts';
import { RUNS } from '../make.ts';
import { integral, randomNumbers } from '../random-numbers.ts';
import { knownEmitter, lightOf, lightSource, points, SIX_INCHES } from './make.ts';

const WHOLE = { kind: 'continuous', beyond: 0 } as const;
const NINE = { columns: 3, rows: 3, inset: 2.54 };

/**
 * Mean over a rectangle of the light of the same rectangle, mW/cm² for 1 W: the integral over all pairs of places
 * depends on their difference alone, and how often a difference (u, v) occurs is (w - |u|)(h - |v|).
 */
function meanByDifferences({ width, height }: Field, exponent: number, distance: number): number {
  const kernel = (u: number, v: number) =>
    distance ** (exponent + 1) / (u * u + v * v + distance ** 2) ** ((exponent + 3) / 2);
  const sum = integral(
    (u) => (width - u) * integral((v) => (height - v) * kernel(u, v), 0, height, 400),
    0,
    width,
    400,
  );
  return (1000 * (exponent + 1) * 4 * sum) / (2 * Math.PI * (width * height) ** 2);
}

describe('mean over the field', () => {
  test.each([
    [10, 10, 60],
    [28, 61, 30],
    [40, 150, 10],
    [20, 60, 78],
    [28, 61, 6],
  ])('%d cm × %d cm, half angle %d°: the integral over differences', (width, height, angle) => {
    const field = { width, height };
    for (const distance of [8, SIX_INCHES, 60]) {
      const exponent = lambertianExponent(angle);
      const { mean } = planeValues(WHOLE, field, exponent, 1, distance);
      expect(Math.abs(mean / meanByDifferences(field, exponent, distance) - 1)).toBeLessThan(2e-6);
    }
  });

  test.each([60, 30, 15])('half angle %d°: brute force over pairs of places', (angle) => {
    const field = { width: 20, height: 32 };
    const exponent = lambertianExponent(angle);
    const across = Array.from({ length: 40 }, (_, i) => 20 * ((i + 0.5) / 40 - 0.5));
    const down = Array.from({ length: 64 }, (_, i) => 32 * ((i + 0.5) / 64 - 0.5));
    let sum = 0;
    for (const x of across) {
      for (const y of down) {
        for (const p of across) {
          for (const q of down) {
            sum += ((x - p) ** 2 + (y - q) ** 2 + SIX_INCHES ** 2) ** (-(exponent + 3) / 2);
          }
        }
      }
    }
    const mean = (1000 * (exponent + 1) * SIX_INCHES ** (exponent + 1) * sum) / (2 * Math.PI * (40 * 64) ** 2);
    expect(Math.abs(planeValues(WHOLE, field, exponent, 1, SIX_INCHES).mean / mean - 1)).toBeLessThan(1e-3);
  });

  test.each([60, 45, 30, 15])('half angle %d°: the independent simulator', (halfAngle) => {
    const source = lightSource({ halfAngle });
    const truth = truthOf(source, SIX_INCHES, 1, 120);
    const found = planeValues(knownEmitter(source), source, lambertianExponent(halfAngle), 60, SIX_INCHES, NINE);
    expect(Math.abs(found.mean / truth.meanOverField - 1)).toBeLessThan(2e-4);
    expect(Math.abs(found.capture / truth.capture - 1)).toBeLessThan(2e-4);
    const light = lightOf(source);
    const nine = points(source, 3, 3).reduce((sum, { x, y }) => sum + light(x, y, SIX_INCHES), 0) / 9;
    expect(Math.abs((found.gridMean ?? 0) / nine - 1)).toBeLessThan(1e-6);
    expect(found.samplingBias).toBeCloseTo(nine / truth.meanOverField, 3);
  });
});

describe('counted rays', () => {
  test.each([
    [10, 10, 60],
    [28, 61, 30],
    [40, 150, 12],
  ])('%d cm × %d cm, half angle %d°: capture and mean within 1 %%', (width, height, angle) => {
    const numbers = randomNumbers(width + angle);
    const exponent = lambertianExponent(angle);
    const rays = 400_000;
    let hits = 0;
    for (let i = 0; i < rays; i++) {
      // Intensity as cos^m: the cosine is the (m + 1)-th root of a uniform number.
      const cosine = numbers.uniform() ** (1 / (exponent + 1));
      const aside = (SIX_INCHES * Math.sqrt(1 - cosine ** 2)) / cosine;
      const turn = 2 * Math.PI * numbers.uniform();
      const x = width * (numbers.uniform() - 0.5) + aside * Math.cos(turn);
      const y = height * (numbers.uniform() - 0.5) + aside * Math.sin(turn);
      if (Math.abs(x) <= width / 2 && Math.abs(y) <= height / 2) hits++;
    }
    const { capture, mean, through } = planeValues(WHOLE, { width, height }, exponent, 50, SIX_INCHES);
    expect(Math.abs(capture / (hits / rays) - 1)).toBeLessThan(0.01);
    expect(Math.abs(mean / ((50_000 * hits) / rays / (width * height)) - 1)).toBeLessThan(0.01);
    expect(through).toBeCloseTo(50 * capture, 10);
  });
});

describe('what the nine points say', () => {
  // LEDs 2 cm apart, the outer ones on the edges.
  const panels = [
    [10, 10],
    [20, 60],
    [40, 150],
  ].flatMap(([width = 0, height = 0]) =>
    [10, 15, 20, 30, 45, 60].map((angle) => {
      const emitter: Emitter = { kind: 'leds', columns: width / 2 + 1, rows: height / 2 + 1, ledSize: 0 };
      return {
        width,
        height,
        angle,
        ...planeValues(emitter, { width, height }, lambertianExponent(angle), 1, SIX_INCHES, NINE),
      };
    }),
  );

  test('from 26 % under the true mean to 13 % over it', () => {
    const bias = panels.map((it) => it.samplingBias ?? Number.NaN);
    expect(Math.min(...bias)).toBeCloseTo(0.74, 2);
    expect(Math.max(...bias)).toBeCloseTo(1.13, 2);
  });

  test('the field catches a tenth of the light of a small wide panel, nine tenths of a large narrow one', () => {
    const small = panels.find((it) => it.width === 10 && it.angle === 60);
    const large = panels.find((it) => it.width === 40 && it.angle === 10);
    expect(small?.capture).toBeCloseTo(0.1, 1);
    expect(large?.capture).toBeCloseTo(0.9, 1);
    for (const { capture } of panels) {
      expect(capture).toBeGreaterThanOrEqual(small?.capture ?? 1);
      expect(capture).toBeLessThanOrEqual(large?.capture ?? 0);
    }
  });

  test('the points lie an inch inside, row by row from the top left', () => {
    expect(gridSpots(NINE, { width: 25.08, height: 45.08 })).toEqual(
      [20, 0, -20].flatMap((y) => [-10, 0, 10].map((x) => ({ x: expect.closeTo(x, 10), y: expect.closeTo(y, 10) }))),
    );
    expect(gridSpots(NINE, { width: 5, height: 45 })).toBeUndefined();
    expect(() => planeValues(WHOLE, { width: 5, height: 45 }, 1, 1, 15, NINE)).toThrow(RangeError);
  });
});

describe('peak and minimum', () => {
  const emitters: Emitter[] = [
    WHOLE,
    { kind: 'leds', columns: 9, rows: 20, ledSize: 1 },
    { kind: 'leds', columns: 10, rows: 21, ledSize: 1, staggered: true },
    {
      kind: 'leds',
      columns: 10,
      rows: 20,
      ledSize: 1,
      groups: [
        { name: 'red', share: 1 },
        { name: 'near-infrared', share: 2 },
      ],
      pattern: 'blocks',
    },
  ];
  const field = { width: 28, height: 61 };

  test.each(emitters)('no place of a fine raster is beyond them: %o', (emitter) => {
    for (const angle of [8, 20, 60]) {
      for (const distance of [4, SIX_INCHES, 50]) {
        const { peak, minimum, mean } = planeValues(emitter, field, lambertianExponent(angle), 10, distance);
        const raster = { ...field, columns: 57, rows: 123 };
        const { values } = planeMap(
          emitterParts(emitter, field),
          oneExponent(lambertianExponent(angle), 10),
          distance,
          raster,
        );
        const [highest, lowest] = [Math.max(...values), Math.min(...values)];
        expect(highest).toBeLessThanOrEqual(peak.value * (1 + 1e-5));
        expect(lowest).toBeGreaterThanOrEqual(minimum.value * (1 - 1e-5));
        expect(mean).toBeLessThan(peak.value);
        expect(mean).toBeGreaterThan(minimum.value);
        expect(Math.abs(peak.x)).toBeLessThanOrEqual(field.width / 2);
        expect(Math.abs(minimum.y)).toBeLessThanOrEqual(field.height / 2);
      }
    }
  });

  test('the peak of an even panel is at one of the few candidates', () => {
    for (const emitter of emitters.slice(0, 3)) {
      for (const angle of [8, 20, 60]) {
        for (const distance of [10, SIX_INCHES, 50]) {
          const { peak } = planeValues(emitter, field, lambertianExponent(angle), 10, distance);
          const best = peakCandidates(emitter, field).map(({ x, y }) => {
            const point = { width: 1e-6, height: 1e-6, columns: 1, rows: 1, x, y };
            return planeMap(emitterParts(emitter, field), oneExponent(lambertianExponent(angle), 10), distance, point)
              .values[0] as number;
          });
          expect(Math.max(...best) / peak.value).toBeGreaterThan(0.995);
        }
      }
    }
  });

  test('a panel brighter in its lower half has its peak there', () => {
    const blocks = emitters[3] as Emitter;
    expect(planeValues(blocks, field, lambertianExponent(20), 10, SIX_INCHES).peak.y).toBeLessThan(-3);
  });
});

test('capture falls with the distance and stays a share', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 60, noNaN: true }),
      fc.double({ min: 5, max: 180, noNaN: true }),
      fc.double({ min: 6, max: 78, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      (width, height, angle, distance) => {
        const at = (z: number) => planeValues(WHOLE, { width, height }, lambertianExponent(angle), 3, z).capture;
        expect(at(distance)).toBeGreaterThan(0);
        expect(at(distance)).toBeLessThan(1);
        expect(at(1.2 * distance)).toBeLessThan(at(distance));
      },
    ),
    RUNS,
  );
});

test('LEDs close together are as good as a continuous field that reaches half a pitch past their centres', () => {
  const field = { width: 20, height: 40 };
  const leds: Emitter = { kind: 'leds', columns: 21, rows: 41, ledSize: 0 };
  const whole: Emitter = { kind: 'continuous', beyond: 0.5 };
  for (const angle of [15, 30, 60]) {
    const [a, b] = [leds, whole].map((it) => planeValues(it, field, lambertianExponent(angle), 1, SIX_INCHES, NINE));
    expect(Math.abs((a?.mean ?? 0) / (b?.mean ?? 1) - 1)).toBeLessThan(1e-3);
    expect(Math.abs((a?.samplingBias ?? 0) / (b?.samplingBias ?? 1) - 1)).toBeLessThan(1e-3);
  }
  expect(placeLeds(leds as Emitter & { kind: 'leds' }, field)).toHaveLength(861);
});
