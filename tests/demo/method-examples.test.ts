/**
 * The worked examples of the pages on corrected figures, from the light of the LEDs summed by tests/support: nothing
 * of src/measure is used. Panel A has one lobe, panel B a narrow and a wide one; their grids are as good as equal.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { channelIrradiance, type LightSource, lambertianExponent, placeLeds } from '../support/light-source.ts';
import { beyondPlace, gridPoints } from '../support/simulate-panel.ts';

const page = (id: string) => readFileSync(`src/texts/methods/${id}.mdx`, 'utf8');

/** 20 x 40 cm, 8 x 16 LEDs of 1.3 cm, 1 W in all; the beam is given apart. */
const FIELD: LightSource = {
  width: 20,
  height: 40,
  columns: 8,
  rows: 16,
  ledSize: 1.3,
  layout: 'dual',
  halfAngle: 30,
  power: { red: 0.5, nearInfrared: 0.5 },
  together: 1,
  spread: 0,
  seed: 1,
};
const LEDS = placeLeds(FIELD);
const AREA = FIELD.width * FIELD.height;
const REFERENCE = 15.24;

/** A lens: half angle of each lobe, degrees, and the power in it, W. */
type Lens = ReadonlyArray<readonly [halfAngle: number, power: number]>;
const A: Lens = [[30, 76.1]];
const B: Lens = [
  [22.5, 38],
  [60, 52],
];

const light = (lens: Lens, x: number, y: number, distance = REFERENCE): number =>
  lens.reduce((sum, [halfAngle, power]) => {
    const { red, nearInfrared } = channelIrradiance(LEDS, lambertianExponent(halfAngle), { x, y, distance });
    return sum + power * (red + nearInfrared);
  }, 0);
const mean = (values: readonly number[]) => values.reduce((sum, it) => sum + it, 0) / values.length;
const emitted = (lens: Lens) => lens.reduce((sum, [, power]) => sum + power, 0);
const nine = (lens: Lens) =>
  gridPoints(FIELD, { columns: 3, rows: 3 }, 2.54)
    .flat()
    .map(({ x, y }) => light(lens, x, y));
const past = (lens: Lens, edge: 'right' | 'top') =>
  [8, 20, 40].map((cm) => {
    const { x, y } = beyondPlace(FIELD, edge, cm);
    return light(lens, x, y);
  });

/** Over the LED-area rectangle: the midpoint rule for the mean, and a raster for the peak. */
function frame(lens: Lens, distance = REFERENCE): { mean: number; peak: number } {
  const cells = (count: number, length: number, offset: number) =>
    Array.from({ length: count }, (_, i) => length * ((i + offset) / count - 0.5));
  const over = (n: number, offset: number) =>
    cells(n, FIELD.width, offset).flatMap((x) =>
      cells(n, FIELD.height, offset).map((y) => light(lens, x, y, distance)),
    );
  return { mean: mean(over(40, 0.5)), peak: Math.max(...over(20, 0)) };
}
const common = (lens: Lens) => (mean(nine(lens)) * AREA) / 1000;

const row = (...cells: string[]) => `| ${cells.join(' | ')} |`;
const fixed = (values: readonly number[], decimals: number) => values.map((it) => it.toFixed(decimals)).join(', ');

describe('emitted power', () => {
  const text = page('emitted-power');
  test('two panels with one grid, and different light past the edges', () => {
    const kinds = (lens: Lens) => {
      const it = nine(lens);
      return fixed([it[0], it[1], it[3], it[4]] as number[], 1);
    };
    expect(text).toContain(row('corner, short side, long side, centre of the grid', kinds(A), kinds(B)));
    expect(text).toContain(row('mean of the nine points', mean(nine(A)).toFixed(1), mean(nine(B)).toFixed(1)));
    expect(text).toContain(`${common(A).toFixed(1)} W | ${common(B).toFixed(1)} W |`);
    const told = (lens: Lens, edge: 'right' | 'top') => {
      const [near, ...far] = past(lens, edge) as [number, number, number];
      return `${near.toFixed(1)}, ${fixed(far, 2)}`;
    };
    expect(text).toContain(row('8, 20 and 40 cm past the long edge', told(A, 'right'), told(B, 'right')));
    expect(text).toContain(row('8, 20 and 40 cm past the short edge', told(A, 'top'), told(B, 'top')));
    expect(text).toContain(row('emitted power', `${emitted(A).toFixed(1)} W`, `${emitted(B).toFixed(1)} W`));
    expect(text).toContain(`B gives off ${(100 * (emitted(B) / emitted(A) - 1)).toFixed(0)} % more light`);
  });
});

describe('beam half-angle', () => {
  const text = page('beam-half-angle');
  test('the grids differ by 3 % at most', () => {
    const [a, b] = [nine(A), nine(B)];
    const differences = a.map((it, i) => Math.abs((b[i] as number) / it - 1));
    const most = Math.ceil(100 * Math.max(...differences) - 0.5);
    expect(text).toContain(`differ by ${most} % at most`);
    expect(text).toContain(
      `A gives ${past(A, 'right')[1]?.toFixed(1)} mW/cm² and B ${past(B, 'right')[1]?.toFixed(1)} mW/cm²`,
    );
  });

  test('the two lobes fall to a half at 26°', () => {
    const intensity = (degrees: number) =>
      B.reduce((sum, [halfAngle, power]) => {
        const m = lambertianExponent(halfAngle);
        return sum + ((power * (m + 1)) / (2 * Math.PI)) * Math.cos((degrees * Math.PI) / 180) ** m;
      }, 0);
    let [low, high] = [0, 90];
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (intensity(middle) > intensity(0) / 2) low = middle;
      else high = middle;
    }
    expect(text).toContain(`falls to a half at ${low.toFixed(0)}°`);
  });
});

test('sampling bias', () => {
  const text = page('sampling-bias');
  const bias = (lens: Lens) => `−${(-100 * (mean(nine(lens)) / frame(lens).mean - 1)).toFixed(1)} %`;
  expect(text).toContain(`${frame(A).mean.toFixed(1)} mW/cm² for A and ${frame(B).mean.toFixed(1)} mW/cm² for B`);
  expect(text).toContain(`50.0/56.6 − 1 = ${bias(A)}, and ${bias(B)}`);
});

test('capture', () => {
  const text = page('capture');
  for (const lens of [A, B]) {
    const inside = (frame(lens).mean * AREA) / 1000;
    expect(text).toContain(`${frame(lens).mean.toFixed(1)} × 800/1000 = ${inside.toFixed(1)} W`);
    expect(text).toContain(`: ${((100 * inside) / emitted(lens)).toFixed(1)} %.`);
  }
});

test('efficiency and price on the emitted power', () => {
  const share = (watts: number) => `${watts.toFixed(1)}/160 = ${((100 * watts) / 160).toFixed(1)} %`;
  expect(page('efficiency-emitted')).toContain(
    row('efficiency on the emitted power', share(emitted(A)), share(emitted(B))),
  );
  const text = page('price-per-emitted-watt');
  const lenses: Array<[string, Lens]> = [
    ['one lobe, 15°', [[15, 76.1]]],
    ['one lobe, 30°', A],
    ['one lobe, 60°', [[60, 76.1]]],
    ['two lobes, 22.5° and 60°', B],
  ];
  for (const [name, lens] of lenses) {
    const euros = (watts: number) => Number((480 / watts).toFixed(2));
    const cells =
      text
        .split('\n')
        .find((it) => it.startsWith(`| ${name} |`))
        ?.split(' | ') ?? [];
    expect(cells[1], name).toBe(`${common(lens).toFixed(1)} W`);
    // Calculated from the power before it was rounded, or after.
    expect(Number(cells[2]?.split(' ')[0])).toBeCloseTo(euros(common(lens)), 1);
    expect(cells[3]).toBe(`${emitted(lens).toFixed(1)} W`);
    expect(Number(cells[4]?.split(' ')[0])).toBeCloseTo(euros(emitted(lens)), 2);
  }
});

test('the table by distance', () => {
  const text = page('distance-table');
  for (const [label, distance] of [
    ['15.24 cm (6 in)', REFERENCE],
    ['30 cm (11.8 in)', 30],
    ['60 cm (23.6 in)', 60],
  ] as const) {
    const told = (lens: Lens) => {
      const it = frame(lens, distance);
      return fixed([it.mean, it.peak], 1);
    };
    const seconds = (1000 / frame(A, distance).mean).toFixed(1);
    expect(text).toContain(row(label, told(A), told(B), `${seconds} s`));
  }
  const carried = frame(A).mean * (REFERENCE / 30) ** 2;
  expect(text).toContain(`A’s mean at 15.24 cm ${carried.toFixed(1)} mW/cm² at 30 cm`);
  expect(carried / frame(A, 30).mean).toBeLessThan(0.5);
});
