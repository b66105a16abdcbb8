import { describe, expect, test } from 'vitest';
import { RETINA_LIMITS, type RetinaView, retinaResults } from '../../../src/measure/exposure/retina.ts';
import { retinalWeight } from '../../../src/measure/exposure/retinal-weight.ts';
import {
  AVERAGED_OVER,
  emitterSolidAngle,
  litSolidAngle,
  projectedSolidAngle,
  sourceAngle,
} from '../../../src/measure/exposure/source-view.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { figure, line } from '../make.ts';

describe('weights for the retina', () => {
  // 10^-0.3 and 10^-0.48 by another program.
  test.each([
    [660, 1],
    [700, 1],
    [850, 0.501187],
    [940, 0.331131],
    [1100, 0.2],
    [1175, 0.0632456],
    [1300, 0.02],
    [1401, 0],
    [450, 0],
  ])('%d nm: %d', (nm, weight) => expect(retinalWeight(nm)).toBeCloseTo(weight, 6));

  test('have no steps where their pieces meet, but the half per cent that is the standard’s own', () => {
    for (const nm of [700, 1050, 1150, 1200]) {
      expect(retinalWeight(nm + 1e-6) / retinalWeight(nm)).toBeCloseTo(1, 2);
    }
  });
});

/** Midpoints over a field: the second road to a solid angle. */
function sum(width: number, height: number, distance: number, of: (square: number) => number, n = 300): number {
  let all = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const [x, y] = [((i + 0.5) / n - 0.5) * width, ((j + 0.5) / n - 0.5) * height];
      all += of(x * x + y * y + distance * distance);
    }
  }
  return all / n ** 2;
}

describe('how a source looks', () => {
  test('a rectangle fills the angle that a sum over its parts has', () => {
    for (const [width, height, distance] of [
      [20, 60, 15.24],
      [5, 60, 40],
      [100, 100, 10],
    ] as const) {
      const square = (it: number) => (distance * distance * width * height) / it ** 2;
      expect(projectedSolidAngle({ width, height, distance })).toBeCloseTo(sum(width, height, distance, square), 3);
    }
    // View factor 0.521879, from a quadrature in another program; half a world at contact.
    expect(projectedSolidAngle({ width: 20, height: 60, distance: 15.24 }) / Math.PI).toBeCloseTo(0.521879, 6);
    expect(projectedSolidAngle({ width: 1e6, height: 1e6, distance: 1 })).toBeCloseTo(Math.PI, 4);
  });

  test('emitters that cover all of the field fill a little more, and small ones count as 11 mrad', () => {
    const field = { width: 20, height: 60, distance: 15.24 };
    const diameter = Math.sqrt((4 * 20 * 60) / (Math.PI * 1000));
    expect(litSolidAngle(field, { count: 1000, diameter })).toBeGreaterThan(projectedSolidAngle(field));
    expect(litSolidAngle(field, { count: 100, diameter: 0.3 })).toBeCloseTo(0.01229, 4);
    const cosine = (square: number) => field.distance / Math.sqrt(square);
    expect(litSolidAngle(field, { count: 7, diameter: 1e-3 })).toBeCloseTo(
      7 * AVERAGED_OVER * sum(20, 60, 15.24, cosine),
      6,
    );
    expect(emitterSolidAngle(15.24, 0.3)).toBeCloseTo(3.0434e-4, 8);
    expect(emitterSolidAngle(100, 0.3)).toBe(AVERAGED_OVER);
  });

  test('its angle is the mean of the sides over the distance, from 11 to 100 mrad', () => {
    expect(sourceAngle({ width: 20, height: 60, distance: 15.24 })).toBe(0.1);
    expect(sourceAngle({ width: 4, height: 6, distance: 100 })).toBeCloseTo(0.05, 12);
    expect(sourceAngle({ width: 0.1, height: 0.1, distance: 100 })).toBe(0.011);
  });
});

const view = (more: Partial<RetinaView>): RetinaView => ({
  width: figure(20, [line('w', 0.02)], 'field-width', 'cm'),
  height: figure(60, [line('h', 0.02)], 'field-height', 'cm'),
  distance: 15.24,
  ...more,
});
const light = (irradiance: number, weight: number) => ({
  irradiance: figure(irradiance, [line('e', 0.02 * irradiance)], 'infrared-sum', 'mW/cm²'),
  weight: figure(weight, [line('r', 0.002 * weight)], 'retinal-hazard', '1'),
});
const valuesOf = (it: RetinaView) =>
  retinaResults('p/d', it).map(({ figure: one }) => (isFigure(one) ? one.value : one));

test('the worked example of the method’s page', () => {
  const emitters = { diameter: 0.3, count: 200, nearInfrared: 100 };
  const infrared = light(40, 10 ** -0.3);
  // From a sum over the parts in another program.
  expect(valuesOf(view({ 'near-infrared': infrared }))).toEqual([expect.closeTo(0.20379, 4)]);
  expect(valuesOf(view({ 'near-infrared': infrared, emitters }))).toEqual([
    expect.closeTo(27.19, 1),
    expect.closeTo(1097.9, 0),
  ]);
  expect(RETINA_LIMITS.combined).toBeCloseTo(28117.07, 2);
});

test('bounds are bounds, with the errors of what they are made of', () => {
  const [least, most] = retinaResults(
    'p/d',
    view({ 'near-infrared': light(40, 0.5), emitters: { diameter: 0.3, count: 100, nearInfrared: 100 } }),
  );
  if (!isFigure(least?.figure) || !isFigure(most?.figure)) throw new Error('no figure');
  expect([least.figure.bound, most.figure.bound]).toEqual(['above', 'below']);
  // 2 % of the irradiance, 0.2 % of the weight, and twice 0.1 / sqrt 3 of the diameter.
  const relative = (most.figure.standardUncertainty ?? 0) / most.figure.value;
  expect(relative).toBeCloseTo(Math.hypot(0.02, 0.002, 0.2 / Math.sqrt(3)), 3);
  expect(least.figure.notes).toContainEqual({ code: 'retina-from-emitters', count: 100 });
});

test('with both channels alone the gap stays, and the other bound stands beside it', () => {
  const results = retinaResults('p/d', view({ combined: light(80, 0.75) }));
  expect(results.map((it) => [it.id, isFigure(it.figure)])).toEqual([
    ['retinal-hazard', false],
    ['retina-seen', true],
  ]);
});

/** Intensities along an angle, of beams that are none of one family; all brightest straight ahead. */
const BEAMS: ReadonlyArray<(cos: number) => number> = [
  (cos) => cos,
  (cos) => cos ** 20,
  (cos) => cos ** 80 + 0.1 * cos,
  (cos) => (cos > Math.cos(0.5) ? 1 : 0.02),
];

test('the brightest emitter of simulated panels lies between the bounds, however unlike they are', () => {
  const { uniform: random } = seededRandom(11);
  for (let panel = 0; panel < 160; panel++) {
    const beam = BEAMS[panel % BEAMS.length] as (cos: number) => number;
    const [columns, rows] = [4 + Math.floor(random() * 8), 6 + Math.floor(random() * 14)];
    const pitch = 1.5 + 3 * random();
    const [width, height] = [columns * pitch, rows * pitch];
    const distance = 10 + 40 * random();
    const diameter = 0.05 + random() * 0.6;
    const uneven = random() * 0.8;
    // Seen from before one of the emitters about the middle, where the light is strongest.
    const [ex, ey] = [(Math.floor(columns / 2) + 0.5) * pitch, (Math.floor(rows / 2) + 0.5) * pitch];
    let all = 0;
    let brightest = 0;
    for (let i = 0; i < columns; i++) {
      for (let j = 0; j < rows; j++) {
        const square = ((i + 0.5) * pitch - ex) ** 2 + ((j + 0.5) * pitch - ey) ** 2 + distance ** 2;
        const cos = distance / Math.sqrt(square);
        const irradiance = ((1 - uneven * random()) * beam(cos) * cos) / square;
        all += irradiance;
        const solid = Math.max((Math.PI / 4) * (diameter ** 2 / square), AVERAGED_OVER);
        brightest = Math.max(brightest, irradiance / cos / solid);
      }
    }
    const field = { width, height, distance };
    const least = all / Math.min(projectedSolidAngle(field), litSolidAngle(field, { count: columns * rows, diameter }));
    const most = all / emitterSolidAngle(distance, diameter);
    expect(brightest / least, `${panel}`).toBeGreaterThan(0.999);
    expect(most / brightest, `${panel}`).toBeGreaterThan(0.999);
  }
});
