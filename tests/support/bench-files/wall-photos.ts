import jpeg from 'jpeg-js';
import type { Corners } from '../../../src/measure/wall/homography.ts';
import { randomNumbers } from '../../measure/random-numbers.ts';
import { DEMO } from '../demo-specs.ts';
import { channelIrradiance, type LightSource, lambertianExponent, placeLeds } from '../light-source.ts';
import type { GeneratedFile } from './generated-file.ts';
import { type LightAt, photograph } from './photograph.ts';

/** A photo of the wall that a panel of the demonstration lights. */
interface Scene {
  panel: string;
  /** From the panel to the wall, and sides of the marked rectangle, that of the LED field, cm. */
  distance: number;
  size: { width: number; height: number };
  /** Pixels of the picture, and where the rectangle's corners lie in it. */
  picture: { width: number; height: number };
  corners: Corners;
  seed: number;
  /** What the panel's guard takes away, by the place across in cm. */
  guard?: (x: number) => number;
}

/** Corners stand in the panels' front matter too. */
const SCENES: readonly Scene[] = [
  {
    panel: 'ruddlestone-r150',
    distance: 15.24,
    size: { width: 30.48, height: 50.8 },
    picture: { width: 480, height: 640 },
    corners: [
      [42, 38],
      [431, 52],
      [440, 588],
      [34, 602],
    ],
    seed: 61,
  },
  {
    panel: 'ostrel-vagg',
    distance: 30,
    size: { width: 28, height: 60 },
    picture: { width: 480, height: 640 },
    corners: [
      [61, 24],
      [420, 30],
      [437, 610],
      [48, 596],
    ],
    seed: 62,
    // Bars of the guard, 6 cm apart: their shadows are soft at the wall.
    guard: (x) => 1 - 0.025 * (1 + Math.cos((2 * Math.PI * x) / 6)),
  },
  {
    panel: 'quennick-tope',
    distance: 15.24,
    size: { width: 40, height: 150 },
    picture: { width: 360, height: 800 },
    corners: [
      [62, 20],
      [300, 26],
      [312, 776],
      [50, 782],
    ],
    seed: 63,
  },
];

/** Light on the wall is worked out this far apart, cm, and straight lines are drawn between. */
const STEP = 1.5;

/** The red light on the wall, of 1 where it is brightest; what is near-infrared a camera does not see. */
function wallLight({ distance, size }: Scene, source: LightSource): LightAt {
  const margin = 30;
  // A camera sees the red ones alone.
  const leds = placeLeds(source).filter(({ power }) => power.red > 0);
  const exponent = lambertianExponent(source.halfAngle);
  const columns = Math.ceil((size.width + 2 * margin) / STEP) + 1;
  const rows = Math.ceil((size.height + 2 * margin) / STEP) + 1;
  const values = Float64Array.from({ length: columns * rows }, (_, i) => {
    const x = (i % columns) * STEP - margin - size.width / 2;
    const y = size.height / 2 + margin - Math.floor(i / columns) * STEP;
    return channelIrradiance(leds, exponent, { x, y, distance }).red;
  });
  const most = Math.max(...values);
  return (x, y) => {
    const [i, j] = [(x + margin) / STEP, (y + margin) / STEP].map((it, k) =>
      Math.min((k === 0 ? columns : rows) - 1.001, Math.max(0, it)),
    ) as [number, number];
    const [left, top] = [Math.floor(i), Math.floor(j)];
    const valueAt = (dx: number, dy: number) => values[(top + dy) * columns + left + dx] ?? 0;
    const [a, b] = [i - left, j - top];
    const light =
      (valueAt(0, 0) * (1 - a) + valueAt(1, 0) * a) * (1 - b) + (valueAt(0, 1) * (1 - a) + valueAt(1, 1) * a) * b;
    const share = (0.84 * light) / most;
    return [share, 0.05 * share, 0.1 * share];
  };
}

/** Photos of the wall as a telephone takes them: a tone curve of its own, darker corners, noise. */
export function wallPhotos(): GeneratedFile[] {
  return SCENES.map((scene) => {
    const { panel, size, picture, corners, seed, guard = () => 1 } = scene;
    const spec = DEMO[panel];
    if (!spec) throw new Error(`no panel ${panel}`);
    const light = wallLight(scene, spec.truth.source);
    const { data } = photograph(
      (x, y) => {
        const [red, green, blue] = light(x, y);
        const left = guard(x);
        return [red * left, green * left, blue * left];
      },
      { ...picture, corners, size, exponent: 1.08, vignette: 0.06, noise: 0.003, numbers: randomNumbers(seed) },
    );
    const rgba = new Uint8Array(4 * picture.width * picture.height).fill(255);
    for (let i = 0; i < picture.width * picture.height; i += 1) {
      for (let channel = 0; channel < 3; channel += 1) rgba[4 * i + channel] = data[3 * i + channel] ?? 0;
    }
    return { panel, name: 'wall.jpg', bytes: jpeg.encode({ ...picture, data: rgba }, 88).data };
  });
}
