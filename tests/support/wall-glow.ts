/** What a panel throws on a wall before it, LED by LED: the picture that a camera would take of the wall. */
import sharp, { type Sharp } from 'sharp';
import type { DrawnPanel } from './photo-scenes.ts';

const SCALE = 5;
const WIDTH = 480;
const HEIGHT = 720;
/** LEDs of the outer columns shine by so much more: a faint row down each side. */
const OUTER = 1.5;
/** Share of the brightest point at which the picture is half as bright as it gets. */
const HALF = 8;

/** Dark, red, pale: as a camera shows deep red that it can only just hold. */
const STOPS: Array<[at: number, red: number, green: number, blue: number]> = [
  [0, 18, 12, 14],
  [0.25, 96, 12, 24],
  [0.5, 190, 26, 40],
  [0.75, 226, 58, 58],
  [1, 252, 142, 122],
];

/** Lengths in cm; `halfAngle` is where a LED's beam has half of its strength, in degrees. */
export function wallGlow(
  { field, columns, rows }: DrawnPanel,
  { distance, halfAngle }: { distance: number; halfAngle: number },
): Sharp {
  const power = -Math.log(2) / Math.log(Math.cos((halfAngle * Math.PI) / 180)) + 3;
  const light = new Float64Array(WIDTH * HEIGHT);
  for (let column = 0; column < columns; column++) {
    const x = ((column + 0.5) / columns - 0.5) * field.width;
    const drive = column === 0 || column === columns - 1 ? OUTER : 1;
    for (let row = 0; row < rows; row++) {
      // Every second LED's light can't be seen.
      if ((row + column) % 2 === 1) continue;
      const y = ((row + 0.5) / rows - 0.5) * field.height;
      for (let py = 0; py < HEIGHT; py++) {
        const dy = (py - HEIGHT / 2) / SCALE - y;
        for (let px = 0; px < WIDTH; px++) {
          const dx = (px - WIDTH / 2) / SCALE - x;
          const cosine = distance / Math.sqrt(dx * dx + dy * dy + distance * distance);
          light[py * WIDTH + px] = (light[py * WIDTH + px] ?? 0) + drive * cosine ** power;
        }
      }
    }
  }
  const most = light.reduce((a, b) => Math.max(a, b), 0);
  const bytes = new Uint8Array(3 * light.length);
  for (const [i, value] of light.entries()) bytes.set(colourAt(value / most), 3 * i);
  const raw = { width: WIDTH, height: HEIGHT, channels: 3 } as const;
  return sharp(bytes, { raw }).resize({ width: 2 * WIDTH, kernel: 'cubic' });
}

function colourAt(share: number): number[] {
  const tone = (share / (share + HALF)) * (1 + HALF);
  const above = STOPS.findIndex(([at], i) => i > 0 && at >= tone);
  const upper = above < 0 ? STOPS.length - 1 : above;
  const [from, to] = [STOPS[upper - 1], STOPS[upper]];
  if (!from || !to) return [0, 0, 0];
  const part = (tone - from[0]) / (to[0] - from[0]);
  return [1, 2, 3].map((i) => Math.round((from[i] ?? 0) + part * ((to[i] ?? 0) - (from[i] ?? 0))));
}
