/** Panels as they might be, drawn at random: the stock that generate-content.ts writes down. */
import { randomNormal } from 'd3-random';
import { uniformSource } from './light-source.ts';
import { type PanelTruth, roundTo } from './simulate-panel.ts';

/** Ranges of each size class: field in cm, emitted power in W a cm², price in EUR per emitted W. */
export const CLASSES = [
  {
    id: 'palm',
    upToArea: 200,
    width: [8, 11],
    height: [11, 17],
    leds: [4, 7],
    density: [0.05, 0.065],
    price: [3.5, 6],
  },
  {
    id: 'desk',
    upToArea: 700,
    width: [16, 22],
    height: [22, 31],
    leds: [6, 9],
    density: [0.055, 0.08],
    price: [3.5, 6],
  },
  {
    id: 'torso',
    upToArea: 2000,
    width: [20, 29],
    height: [46, 67],
    leds: [8, 18],
    density: [0.06, 0.1],
    price: [3, 5],
  },
  { id: 'full-length', width: [34, 44], height: [110, 165], leds: [10, 30], density: [0.055, 0.09], price: [2.2, 4.2] },
] as const;

export type SizeClass = (typeof CLASSES)[number];

/** Draws that a panel is made from. */
export interface Dice {
  between(range: readonly [number, number]): number;
  normal(): number;
  one<T>(of: readonly T[]): T;
  chance(share: number): boolean;
}

/** The draws that belong to a seed. */
export function dice(seed: number): Dice {
  const uniform = uniformSource(seed);
  return {
    between: ([from, to]) => from + (to - from) * uniform(),
    normal: randomNormal.source(uniform)(0, 1),
    one: (of) => of[Math.floor(uniform() * of.length)] as (typeof of)[number],
    chance: (share) => uniform() < share,
  };
}

/** A panel of a size class; `seed` is the spread of its LEDs. */
export function drawPanel(draw: Dice, kind: SizeClass, seed: number): PanelTruth {
  const width = roundTo(draw.between(kind.width), 0.1);
  const height = roundTo(draw.between(kind.height), 0.1);
  const emitted = width * height * draw.between(kind.density);
  const red = draw.between([0.45, 0.55]);
  const halfAngle = draw.one([15, 22.5, 30, 30, 45]);
  const mains = draw.chance(0.08);
  return {
    source: {
      width,
      height,
      columns: kind.leds[0],
      rows: kind.leds[1],
      ledSize: 1,
      layout: draw.one(['alternate', 'dual']),
      halfAngle,
      power: { red: emitted * red, nearInfrared: emitted * (1 - red) },
      together: draw.between([0.92, 0.98]),
      spread: 0.03,
      ...(draw.chance(0.1) && { hotMiddle: 0.4 }),
      seed,
    },
    electrics: {
      die: { red: draw.between([0.46, 0.54]), nearInfrared: draw.between([0.43, 0.49]) },
      driver: draw.between([0.84, 0.91]),
      fans: emitted * draw.between([0, 0.12]),
      standby: draw.between([0.1, 1.5]),
    },
    wavelengths: {
      red: { peak: 660 + 3 * draw.normal(), fwhm: 17 },
      nearInfrared: { peak: 850 + 4 * draw.normal(), fwhm: 34 },
    },
    flicker: mains ? { percent: draw.between([10, 45]), frequency: 100 } : { percent: draw.between([0.3, 3]) },
    magnetic: { room: 0.05, panel: draw.between([0.05, 2]) },
    electric: { room: 4, panel: draw.between([10, 60]) },
    radio: { room: 0.005, panel: draw.chance(0.2) ? 0.03 : 0.001 },
    sound: { room: 32, panel: draw.between([20, 53]) },
  };
}
